/** The commands of the command line. */
package org.epochrome.command;
