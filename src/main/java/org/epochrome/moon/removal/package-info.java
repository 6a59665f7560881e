/** Taking moons and shadows out of frames, and laying them where they stand at the epoch. */
package org.epochrome.moon.removal;
