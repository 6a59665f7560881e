/** What is known of each body: read from one resource for each, and checked. */
package org.epochrome.ephemeris.body;
