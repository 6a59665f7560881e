/** The disk in a frame: the view of a spheroid, its shading, and finding it by a forward model. */
package org.epochrome.disk;
