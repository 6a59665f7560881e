/** Spread functions, smears and other filters of a plane. */
package org.epochrome.image.blur;
