/** Reads frames with their bands and times for a session. */
package org.epochrome.io.read;
