/** The planet and the time ribbon, painted. */
package org.epochrome.desktop.picture;
