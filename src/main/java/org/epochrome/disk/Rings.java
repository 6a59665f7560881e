package org.epochrome.disk;

import org.epochrome.image.Plane;

/**
 * Saturn's main rings: a flat, round, thin layer in the equator's plane, seen and lit obliquely. All lengths are in
 * equatorial radii of 60 268 km.
 *
 * <p>Edges in km from Colwell et al. 2009 (in Saturn from Cassini-Huygens, chapter 13, table 13.1) and French et al. 2017
 * (Icarus 290, 14): C 74 490 to 91 983, B to 117 516, Cassini Division to 122 053, A to 136 774, in it the Encke gap from
 * 133 423 to 133 745. Normal optical depths are typical means of their parts (Colwell et al. 2009, figures 13.3 to 13.11);
 * they scatter by some tens of per cent, {@link #DEPTH_DOUBT}.
 */
public final class Rings {
    private static final double KM = 1 / 60_268.0;
    /** Inner and outer edges of the regions within which brightness changes steadily. */
    private static final double[][] REGIONS = {
        {74_490 * KM, 91_983 * KM},
        {91_983 * KM, 117_516 * KM},
        {117_516 * KM, 122_053 * KM},
        {122_053 * KM, 133_423 * KM},
        {133_745 * KM, 136_774 * KM}
    };

    private static final double INNER = REGIONS[0][0];
    private static final double BRIGHT = REGIONS[1][0];
    /** Outer edge of the A ring. */
    public static final double OUTER = REGIONS[4][1];

    /** Radius of the outermost edge, in the planet's equatorial radii. */
    public static double outerEdge() {
        return OUTER;
    }

    /** Outer radii of parts and their normal optical depths. */
    private static final double[][] DEPTHS = {
        {INNER, 0},
        {84_000 * KM, 0.08},
        {91_983 * KM, 0.15},
        {99_000 * KM, 1.2},
        {104_100 * KM, 2.2},
        {110_000 * KM, 3.5},
        {117_516 * KM, 2.2},
        {122_053 * KM, 0.12},
        {124_600 * KM, 0.8},
        {133_423 * KM, 0.5},
        {133_745 * KM, 0},
        {OUTER, 0.55}
    };

    /** How far an optical depth may differ from what is taken here, as a part of it. */
    public static final double DEPTH_DOUBT = 0.4;
    /** Sine of an elevation below which a thin layer neither shows nor shades anything. */
    private static final double EDGE_ON = 1e-4;
    /** A ring seen closer to edge-on than this is drawn as thick as this. */
    private static final double LEAST_OPENING = 0.004;

    private Rings() {}

    /** Number of regions. */
    static int regions() {
        return REGIONS.length;
    }

    /** Inner edge of a region. */
    static double inner(int region) {
        return REGIONS[region][0];
    }

    /** Outer edge of a region. */
    static double outer(int region) {
        return REGIONS[region][1];
    }

    /** Normal optical depth at a distance from the planet's centre. */
    static double opticalDepth(double radius) {
        for (double[] part : DEPTHS) {
            if (radius < part[0]) {
                return part[1];
            }
        }
        return 0;
    }

    /**
     * Optical depth, along the rays, of all rings that light meets on its way from the Sun to a place of the visible
     * surface and on to the observer: its share {@code exp(-depth)} gets through.
     *
     * @param depth height of the surface, from {@link View#depth}
     */
    public static double slantDepth(View view, double pole, double side, double depth) {
        Globe globe = view.globe();
        double bodyX = view.bodyX(pole, depth);
        double bodyZ = view.bodyZ(pole, depth);
        double sine = Math.sin(globe.tilt());
        return crossed(bodyX, side, bodyZ, globe.sunX(), globe.sunY(), globe.sunZ())
                + crossed(bodyX, side, bodyZ, Math.cos(globe.tilt()), 0, sine);
    }

    /** Optical depth met by a ray from a point of the body in a direction. */
    private static double crossed(double x, double y, double z, double toX, double toY, double toZ) {
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
     * Walks over all of the rings that is lit and not hidden by the globe.
     *
     * @param step longest side of a facet
     */
    public static void walk(Globe globe, double step, Taker taker) {
        double sine = Math.sin(globe.tilt());
        double cosine = Math.cos(globe.tilt());
        if (Math.abs(sine) < EDGE_ON || Math.abs(globe.sunZ()) < EDGE_ON) {
            return;
        }
        View view = new View(globe, new Disk(0, 0, 1, 0, false));
        for (int region = 0; region < REGIONS.length; region++) {
            double width = outer(region) - inner(region);
            int circles = (int) Math.ceil(width / step);
            for (int i = 0; i < circles; i++) {
                double part = (i + 0.5) / circles;
                double radius = inner(region) + part * width;
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
    public static void draw(View view, Plane picture, float brightness) {
        for (int y = 0; y < picture.height(); y++) {
            for (int x = 0; x < picture.width(); x++) {
                if (seen(view, view.pole(x, y), view.side(x, y))) {
                    picture.set(x, y, Math.max(brightness, picture.at(x, y)));
                }
            }
        }
    }

    /** Whether a bright ring is seen at a place: within its edges and not behind the globe. */
    private static boolean seen(View view, double pole, double side) {
        double opening = Math.sin(view.globe().tilt());
        double towards = -pole / Math.copySign(Math.max(Math.abs(opening), LEAST_OPENING), opening);
        double radius = Math.hypot(side, towards);
        if (radius < BRIGHT || radius > OUTER) {
            return false;
        }
        double globe = view.depth(pole, side);
        return Double.isNaN(globe) || Math.cos(view.globe().tilt()) * towards > globe;
    }
}
