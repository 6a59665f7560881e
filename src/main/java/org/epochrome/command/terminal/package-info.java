/** Text on the terminal: messages, progress, standard output. */
package org.epochrome.command.terminal;
