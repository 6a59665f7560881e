/** The documents about the program, inside the window. */
package org.epochrome.desktop.help;
