/** Turned planes of one band or of luminance, merged. */
package org.epochrome.colour.merge;
