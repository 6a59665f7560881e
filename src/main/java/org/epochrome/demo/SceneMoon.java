package org.epochrome.demo;

import java.time.Instant;
import java.util.Map;
import java.util.function.Function;

/**
 * An invented moon: a ball of even brightness that hides what lies behind it and keeps the Sun from what lies in its shadow.
 *
 * @param radius equatorial radii of the planet
 * @param brightness by the band's name; 1 is a white surface lit and seen from above
 * @param place its centre at an instant, equatorial radii from the planet's centre: x at right angles to the projected pole, to
 *     the right in an unmirrored image with the pole up, y along the projected pole, z towards the observer
 */
public record SceneMoon(double radius, Map<String, Double> brightness, Function<Instant, Place> place) {
    /**
     * Where it stands.
     *
     * @param abeam to the right, the pole up
     * @param up along the projected pole
     * @param front towards the observer
     */
    public record Place(double abeam, double up, double front) {}

    public SceneMoon {
        brightness = Map.copyOf(brightness);
    }
}
