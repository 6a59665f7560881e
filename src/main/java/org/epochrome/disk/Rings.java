package org.epochrome.disk;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.body.RingFacts;
import org.epochrome.image.Plane;

/**
 * Rings of a planet: a flat, round, thin layer in the equator's plane, seen and lit obliquely. Edges and optical depths
 * are facts of the {@link Body}; all lengths are in its equatorial radii.
 */
public final class Rings {
    private static final Map<Body, Optional<Rings>> KNOWN = new ConcurrentHashMap<>();

    /** Sine of an elevation below which a thin layer neither shows nor shades anything. */
    private static final double EDGE_ON = 1e-4;
    /** A ring seen closer to edge-on than this is drawn as thick as this. */
    private static final double LEAST_OPENING = 0.004;

    private final String planet;
    private final double[] inner;
    private final double[] outer;
    private final double bright;
    /** Outer radii of parts and their normal optical depths. */
    private final double[] partsTo;

    private final double[] depths;
    private final double depthDoubt;

    private Rings(Body body, RingFacts facts) {
        planet = body.displayName();
        double km = 1 / body.equatorialRadiusKm();
        inner = facts.regions().stream().mapToDouble(r -> r.innerKm() * km).toArray();
        outer = facts.regions().stream().mapToDouble(r -> r.outerKm() * km).toArray();
        bright = facts.brightFromKm() * km;
        partsTo = facts.depths().stream().mapToDouble(d -> d.toKm() * km).toArray();
        depths = facts.depths().stream().mapToDouble(RingFacts.Depth::normal).toArray();
        depthDoubt = facts.depthDoubt();
    }

    /** The rings of a body, if it has some that show; one and the same object for a body. */
    public static Optional<Rings> of(Body body) {
        return KNOWN.computeIfAbsent(body, b -> b.rings().map(facts -> new Rings(b, facts)));
    }

    /** The name of their planet, for people. */
    public String planet() {
        return planet;
    }

    /** Number of regions within which brightness changes steadily. */
    int regions() {
        return inner.length;
    }

    /** Inner edge of a region. */
    double inner(int region) {
        return inner[region];
    }

    /** Outer edge of a region. */
    double outer(int region) {
        return outer[region];
    }

    /** Radius of the outermost edge. */
    public double outerEdge() {
        return outer[outer.length - 1];
    }

    /** How far an optical depth may differ from what is taken here, as a part of it. */
    public double depthDoubt() {
        return depthDoubt;
    }

    /** Normal optical depth at a distance from the planet's centre. */
    double opticalDepth(double radius) {
        for (int i = 0; i < partsTo.length; i++) {
            if (radius < partsTo[i]) {
                return depths[i];
            }
        }
        return 0;
    }

    /**
     * Optical depth, along the rays, of all rings that light meets on its way from the Sun to a place of the visible
     * surface and on to the observer: its share {@code exp(-depth)} gets through. None for a globe without rings.
     *
     * @param depth height of the surface, from {@link View#depth}
     */
    public static double slantDepth(View view, double pole, double side, double depth) {
        Globe globe = view.globe();
        if (globe.rings().isEmpty()) {
            return 0;
        }
        Rings rings = globe.rings().get();
        double bodyX = view.bodyX(pole, depth);
        double bodyZ = view.bodyZ(pole, depth);
        double sine = Math.sin(globe.tilt());
        return rings.crossed(bodyX, side, bodyZ, globe.sunX(), globe.sunY(), globe.sunZ())
                + rings.crossed(bodyX, side, bodyZ, Math.cos(globe.tilt()), 0, sine);
    }

    /** Optical depth met by a ray from a point of the body in a direction. */
    private double crossed(double x, double y, double z, double toX, double toY, double toZ) {
        if (Math.abs(toZ) < EDGE_ON || z * toZ >= 0) {
            return 0;
        }
        double way = -z / toZ;
        double alongX = x + way * toX;
        double alongY = y + way * toY;
        return opticalDepth(Math.sqrt(alongX * alongX + alongY * alongY)) / Math.abs(toZ);
    }

    /** Whether the globe keeps the Sun from a point of the rings' plane. */
    static boolean inShadow(Globe globe, double bodyX, double bodyY) {
        double z = globe.sunZ() / globe.axisRatio();
        double a = globe.sunX() * globe.sunX() + globe.sunY() * globe.sunY() + z * z;
        double b = bodyX * globe.sunX() + bodyY * globe.sunY();
        double c = bodyX * bodyX + bodyY * bodyY - 1;
        return b < 0 && b * b > a * c;
    }

    /** Takes the facets of the rings. */
    @FunctionalInterface
    public interface Taker {
        /**
         * A facet that is lit and not hidden.
         *
         * @param region number of its region
         * @param part where in the region, 0 at the inner edge, 1 at the outer
         * @param pole place on the sky axes
         * @param side the same
         * @param area on the sky, squared radii
         */
        void take(int region, double part, double pole, double side, double area);
    }

    /**
     * Walks over all of a globe's rings that is lit and not hidden by it.
     *
     * @param step longest side of a facet
     */
    public static void walk(Globe globe, double step, Taker taker) {
        double sine = Math.sin(globe.tilt());
        double cosine = Math.cos(globe.tilt());
        if (globe.rings().isEmpty() || Math.abs(sine) < EDGE_ON || Math.abs(globe.sunZ()) < EDGE_ON) {
            return;
        }
        Rings rings = globe.rings().get();
        View view = new View(globe, new Disk(0, 0, 1, 0, false));
        for (int region = 0; region < rings.regions(); region++) {
            double width = rings.outer(region) - rings.inner(region);
            int circles = (int) Math.ceil(width / step);
            for (int i = 0; i < circles; i++) {
                double part = (i + 0.5) / circles;
                double radius = rings.inner(region) + part * width;
                int facets = (int) Math.ceil(2 * Math.PI * radius / step);
                double area = width / circles * radius * 2 * Math.PI / facets * Math.abs(sine);
                for (int j = 0; j < facets; j++) {
                    double angle = 2 * Math.PI * (j + 0.5) / facets;
                    double bodyX = radius * Math.cos(angle);
                    double side = radius * Math.sin(angle);
                    double pole = -sine * bodyX;
                    boolean near = Math.abs(pole) <= 1 && Math.abs(side) <= 1;
                    boolean hidden = near && view.depth(pole, side) > cosine * bodyX;
                    if (!hidden && !inShadow(globe, bodyX, side)) {
                        taker.take(region, part, pole, side, area);
                    }
                }
            }
        }
    }

    /** Rough brightness of the rings as a part of the globe's, for the size of the whole patch in a frame. */
    public void draw(View view, Plane picture, float brightness) {
        for (int y = 0; y < picture.height(); y++) {
            for (int x = 0; x < picture.width(); x++) {
                if (seen(view, view.pole(x, y), view.side(x, y))) {
                    picture.set(x, y, Math.max(brightness, picture.at(x, y)));
                }
            }
        }
    }

    /** Whether a bright ring is seen at a place: within its edges and not behind the globe. */
    private boolean seen(View view, double pole, double side) {
        double opening = Math.sin(view.globe().tilt());
        double towards = -pole / Math.copySign(Math.max(Math.abs(opening), LEAST_OPENING), opening);
        double radius = Math.hypot(side, towards);
        if (radius < bright || radius > outerEdge()) {
            return false;
        }
        double globe = view.depth(pole, side);
        return Double.isNaN(globe) || Math.cos(view.globe().tilt()) * towards > globe;
    }
}
