/** The window: starts JavaFX and ties view and control together. */
package org.epochrome.desktop;
