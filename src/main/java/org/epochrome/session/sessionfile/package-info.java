/** Sessions as files, and as command lines. */
package org.epochrome.session.sessionfile;
