package org.epochrome.demo.scene;

import java.time.Instant;
import java.util.Map;
import java.util.function.Function;

/**
 * An invented moon: a ball that scatters light as dust does, hides what lies behind it, and keeps the Sun from what lies in its
 * shadow.
 *
 * @param radius equatorial radii of the planet
 * @param brightness by the band's name: what its full disk has; 1 for a white surface lit and seen from above
 * @param course its centre at an instant
 */
public record SceneMoon(double radius, Map<String, Double> brightness, Function<Instant, Place> course) {
    /**
     * Where it stands, equatorial radii.
     *
     * @param abeam where it is seen against the planet's centre, at right angles to the projected pole: to the right where an
     *     unmirrored picture has the pole up
     * @param up the same along the projected pole
     * @param front how much nearer it is than the planet's centre; negative behind it
     */
    public record Place(double abeam, double up, double front) {}

    public SceneMoon {
        brightness = Map.copyOf(brightness);
        if (!(radius > 0)) {
            throw new IllegalArgumentException("A moon has a size, not a radius of " + radius + ".");
        }
    }

    double brightness(String band) {
        Double shine = brightness.get(band);
        if (shine == null) {
            throw new IllegalArgumentException("The moon has no brightness in the band " + band + ".");
        }
        return shine;
    }

    /** How far from the planet's centre it is seen at most, its own size included. */
    double reach(Instant instant) {
        Place place = course.apply(instant);
        return Math.sqrt(place.abeam() * place.abeam() + place.up() * place.up()) + radius;
    }
}
