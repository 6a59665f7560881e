package org.epochrome.demo.scene;

/**
 * Rings along lines of sight: a thin layer of particles that scatter light once (Chandrasekhar 1960, Radiative Transfer,
 * sections 24 and 62, to first order in the albedo), lit from one face and seen from the same or the other.
 */
final class Rings {
    /** Differences of sines of elevation below which Sun and observer count as equally high. */
    private static final double SAME = 1e-6;
    /** Sine of an elevation below which a sheet without thickness is not there. */
    private static final double EDGE_ON = 1e-6;

    private final double[] inner;
    private final double[] outer;
    private final double[] depth;
    private final double[] reflectance;
    /** Part of the sunlight that each zone lets through. */
    private final double[] sunlit;

    private final View view;

    Rings(RingSystem system, View view, String band) {
        int count = system.zones().size();
        this.view = view;
        inner = new double[count];
        outer = new double[count];
        depth = new double[count];
        reflectance = new double[count];
        sunlit = new double[count];
        for (int i = 0; i < count; i++) {
            RingSystem.Zone zone = system.zones().get(i);
            Double shine = zone.reflectance().get(band);
            if (shine == null) {
                throw new IllegalArgumentException("The rings have no brightness in the band " + band + ".");
            }
            inner[i] = zone.inner();
            outer[i] = zone.outer();
            depth[i] = zone.depth();
            reflectance[i] = shine;
            sunlit[i] = StrictMath.exp(-depth[i] / Math.abs(view.sun().z()));
        }
    }

    /** The way along a ray from a point to the rings' plane, in the unit of the direction; endless if it never meets. */
    static double way(double z, double vz) {
        return Math.abs(vz) < EDGE_ON ? Double.POSITIVE_INFINITY : -z / vz;
    }

    /** Part of the light that gets through the rings where a ray crosses them. */
    double through(double x, double y, double vz) {
        int zone = zone(x, y);
        return zone < 0 || Math.abs(vz) < EDGE_ON ? 1 : StrictMath.exp(-depth[zone] / Math.abs(vz));
    }

    /** Part of the sunlight that the rings let through to a point of the globe. */
    double sunlight(double x, double y, double z) {
        Vector sun = view.sun();
        double way = way(z, sun.z());
        if (!(way > 0 && way < Double.POSITIVE_INFINITY)) {
            return 1;
        }
        int zone = zone(x + way * sun.x(), y + way * sun.y());
        return zone < 0 ? 1 : sunlit[zone];
    }

    /** Brightness of the rings at a point of their plane, seen along a ray; 0 in the globe's shadow. */
    double brightness(double x, double y, double vz) {
        int zone = zone(x, y);
        Vector sun = view.sun();
        double mu = Math.abs(vz);
        double mu0 = Math.abs(sun.z());
        if (zone < 0 || mu < EDGE_ON || mu0 < EDGE_ON || inShadow(x, y)) {
            return 0;
        }
        double tau = depth[zone];
        boolean litFace = (vz < 0) == (sun.z() > 0);
        double scattered;
        if (litFace) {
            scattered = mu0 / (mu + mu0) * (1 - StrictMath.exp(-tau * (1 / mu + 1 / mu0)));
        } else if (Math.abs(mu - mu0) < SAME) {
            scattered = tau / mu * StrictMath.exp(-tau / mu);
        } else {
            scattered = mu0 / (mu - mu0) * (StrictMath.exp(-tau / mu) - StrictMath.exp(-tau / mu0));
        }
        return 2 * reflectance[zone] * scattered;
    }

    private int zone(double x, double y) {
        double radius = Math.sqrt(x * x + y * y);
        if (inner.length == 0 || radius < inner[0] || radius >= outer[outer.length - 1]) {
            return -1;
        }
        for (int i = 0; i < inner.length; i++) {
            if (radius >= inner[i] && radius < outer[i]) {
                return i;
            }
        }
        return -1;
    }

    /** Whether the way to the Sun from a point of the rings' plane leads through the globe. */
    private boolean inShadow(double x, double y) {
        Vector sun = view.sun();
        double sz = sun.z() / view.axisRatio(); // stretched along the axis the spheroid is the unit sphere
        double a = sun.x() * sun.x() + sun.y() * sun.y() + sz * sz;
        double b = x * sun.x() + y * sun.y();
        double c = x * x + y * y - 1;
        return b < 0 && b * b > a * c;
    }
}
