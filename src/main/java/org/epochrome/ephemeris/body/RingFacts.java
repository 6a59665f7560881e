package org.epochrome.ephemeris.body;

import java.util.ArrayList;
import java.util.List;

/**
 * The rings of a planet: flat, round and thin, in its equator's plane.
 *
 * @param regions within which brightness changes steadily, from the inside
 * @param brightFromKm inner edge of the bright ones
 * @param depths normal optical depths, from the inside
 * @param depthDoubt how far an optical depth may differ from what is given, as a part of it
 */
public record RingFacts(List<Region> regions, double brightFromKm, List<Depth> depths, double depthDoubt) {

    /**
     * Between two edges.
     *
     * @param innerKm radius of the inner edge
     * @param outerKm radius of the outer edge
     */
    public record Region(double innerKm, double outerKm) {}

    /**
     * Optical depth of a part that begins where the one before it ends.
     *
     * @param toKm its outer radius
     * @param normal its optical depth along the planet's axis
     */
    public record Depth(double toKm, double normal) {}

    public RingFacts {
        regions = List.copyOf(regions);
        depths = List.copyOf(depths);
    }

    static RingFacts of(FactsFile file) {
        List<Region> regions = new ArrayList<>();
        for (double[] pair : file.pairs("rings.regionsKm")) {
            regions.add(new Region(pair[0], pair[1]));
        }
        List<Depth> depths = new ArrayList<>();
        for (double[] pair : file.pairs("rings.depthsToKm")) {
            depths.add(new Depth(pair[0], pair[1]));
        }
        return new RingFacts(regions, file.positive("rings.brightFromKm"), depths, file.positive("rings.depthDoubt"));
    }

    /** Radius of the outermost edge. */
    public double outerKm() {
        return regions.get(regions.size() - 1).outerKm();
    }
}
