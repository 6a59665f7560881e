/** Frames as a session takes them in. */
package org.epochrome.io.read;
