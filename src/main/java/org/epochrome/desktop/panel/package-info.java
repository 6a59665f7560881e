/** The pages at the side of the window. */
package org.epochrome.desktop.panel;
