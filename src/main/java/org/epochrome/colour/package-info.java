/** Colour values: spaces, gains, white balance, tone. */
package org.epochrome.colour;
