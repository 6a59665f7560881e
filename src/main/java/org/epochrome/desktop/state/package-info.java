/** What the window shows, as values: the draft, its history, selection, time axis, zoom. */
package org.epochrome.desktop.state;
