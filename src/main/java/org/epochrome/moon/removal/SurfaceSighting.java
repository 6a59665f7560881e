package org.epochrome.moon.removal;

import org.epochrome.image.Plane;

/**
 * What one frame saw of the clouds in a window of another, as parts of the light of its even globe.
 *
 * @param clouds how much brighter they are than the even globe
 * @param doubt standard error where a companion covered them
 */
record SurfaceSighting(Plane clouds, Plane doubt) {
    /** Doubt of what is not seen. */
    static final float NOTHING = 1e3f;
}
