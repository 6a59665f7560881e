/** The verdict on the result, in the window. */
package org.epochrome.desktop.verdict;
