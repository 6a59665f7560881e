/** The disk in a frame as a value: the view of a spheroid, its shading, its fit, and the removal of dispersion blur. */
package org.epochrome.disk;
