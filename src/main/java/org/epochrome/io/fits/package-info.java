/** FITS images and tables, read and written. */
package org.epochrome.io.fits;
