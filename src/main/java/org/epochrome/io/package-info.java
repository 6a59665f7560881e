/** Files in and out: pixels, times, bands, sheets. The only package that knows file libraries. */
package org.epochrome.io;
