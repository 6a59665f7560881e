/** Moons and their shadows: where they stand and how they look. */
package org.epochrome.moon;
