/** The disks in all frames of a session: place, size, north and mirroring. */
package org.epochrome.session.locate;
