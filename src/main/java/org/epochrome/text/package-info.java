/** Words for people, apart from the code: messages of the engine and the command line, and where they are shown. */
package org.epochrome.text;
