/** What the program says of itself: its version, what it consists of and under which licences. */
package org.epochrome.about;
