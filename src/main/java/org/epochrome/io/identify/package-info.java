/** What a frame is: its time, band and encoding, from headers, file names and sheets. */
package org.epochrome.io.identify;
