/** A quick picture of a session while it is edited. */
package org.epochrome.session.preview;
