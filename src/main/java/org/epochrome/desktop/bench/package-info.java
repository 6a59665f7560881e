/** What the desktop shows and does, without a window: the state, its history, work in the background, layouts. */
package org.epochrome.desktop.bench;
