/** Pages of the side about frames: what each is, and edits of many at once. */
package org.epochrome.desktop.frames;
