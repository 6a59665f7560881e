/** What the window does, without a window: editing, opening, saving, adding frames, preferences. */
package org.epochrome.desktop.control;
