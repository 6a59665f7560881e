/** Unsaved sessions, written down in case of a crash. */
package org.epochrome.desktop.recovery;
