/** The command line: a thin face of the session. */
package org.epochrome.command;
