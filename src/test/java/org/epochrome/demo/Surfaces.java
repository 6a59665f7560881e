package org.epochrome.demo;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Body;

/** Invented surfaces, each painted once for all tests: that takes as long as a session of small frames. */
public final class Surfaces {
    private static final Map<Body, Surface> PAINTED = new ConcurrentHashMap<>();

    private Surfaces() {}

    /** The Jupiter of the demo. */
    public static Surface jupiter() {
        return PAINTED.computeIfAbsent(Body.JUPITER, body -> Surface.invented(body, 156));
    }

    /** The Mars of the demo. */
    public static Surface mars() {
        return PAINTED.computeIfAbsent(Body.MARS, body -> Surface.invented(body, 314));
    }
}
