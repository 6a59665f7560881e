/** Moons and their shadows: where they stand, found in frames, taken out, and laid where they stand at the epoch. */
package org.epochrome.moon;
