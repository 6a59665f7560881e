package org.epochrome.demo.scene;

import java.util.List;
import java.util.Map;

/**
 * Flat rings in the plane of a planet's equator.
 *
 * @param zones from the innermost to the outermost; between them nothing
 */
public record RingSystem(List<Zone> zones) {
    /** No rings at all. */
    public static final RingSystem NONE = new RingSystem(List.of());

    private static final double SATURN_RADIUS_KM = 60_268;

    /**
     * An even annulus.
     *
     * @param innerKm inner edge
     * @param outerKm outer edge
     * @param depth normal optical depth
     * @param reflectance by band: brightness of an endlessly deep ring with Sun and observer at the same height, 1 for a
     *     white surface seen and lit from above
     */
    public record Zone(double innerKm, double outerKm, double depth, Map<String, Double> reflectance) {
        public Zone {
            reflectance = Map.copyOf(reflectance);
        }

        double inner() {
            return innerKm / SATURN_RADIUS_KM;
        }

        double outer() {
            return outerKm / SATURN_RADIUS_KM;
        }
    }

    public RingSystem {
        zones = List.copyOf(zones);
    }

    /**
     * Saturn's main rings. Edges in km from Colwell et al. 2009 (in Saturn from Cassini-Huygens, chapter 13, table 13.1)
     * and French et al. 2017 (Icarus 290, 14), to the km or so, from memory; optical depths are rough means of their
     * parts, colours are invented.
     */
    public static RingSystem saturn() {
        return new RingSystem(List.of(
                zone(74_490, 86_000, 0.09, 0.40),
                zone(86_000, 91_983, 0.14, 0.45),
                zone(91_983, 99_000, 1.1, 0.74),
                zone(99_000, 110_000, 2.4, 0.86),
                zone(110_000, 117_516, 2.8, 0.92),
                zone(117_516, 122_053, 0.13, 0.55),
                zone(122_053, 126_000, 0.75, 0.68),
                zone(126_000, 133_423, 0.52, 0.66),
                zone(133_745, 136_774, 0.55, 0.64)));
    }

    private static Zone zone(double innerKm, double outerKm, double depth, double reflectance) {
        return new Zone(
                innerKm,
                outerKm,
                depth,
                Map.of("R", 1.0 * reflectance, "G", 0.88 * reflectance, "B", 0.66 * reflectance));
    }

    /** Radius of the outermost edge in equatorial radii of the planet, 0 without rings. */
    double outer() {
        return zones.stream().mapToDouble(Zone::outer).max().orElse(0);
    }
}
