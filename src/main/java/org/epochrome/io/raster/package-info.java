/** TIFF and PNG images, read. */
package org.epochrome.io.raster;
