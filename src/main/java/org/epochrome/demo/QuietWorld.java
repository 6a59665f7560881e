package org.epochrome.demo;

import org.epochrome.ephemeris.Body;

final class QuietWorld {
    private QuietWorld() {}

    static Surface surface(Body body, long seed) {
        return BandedWorld.surface(seed);
    }
}
