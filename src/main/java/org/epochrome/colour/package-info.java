/** From turned planes to a picture: merge, white balance, tone. */
package org.epochrome.colour;
