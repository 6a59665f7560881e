package org.epochrome.demo;

final class DustyWorld {
    private DustyWorld() {}

    static Surface surface(long seed) {
        return BandedWorld.surface(seed);
    }
}
