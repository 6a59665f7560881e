package org.epochrome.demo.scene;

import org.epochrome.demo.world.AlbedoMap;

/**
 * A spheroid along lines of sight: the ray's first point on the surface, its latitude and longitude, and Minnaert's
 * reflectance there under the true direction of the Sun.
 */
final class Globe {
    /** Below it Minnaert's law with k below 1 runs off to infinity, so it is held there (common practice, no source). */
    private static final double LEAST_EMISSION_COSINE = 0.03;

    private final View view;
    private final AlbedoMap albedo;
    private final Power law;
    private final double stretch;

    Globe(View view, AlbedoMap albedo, double minnaertK) {
        this.view = view;
        this.albedo = albedo;
        this.law = new Power(minnaertK - 1);
        this.stretch = 1 / view.axisRatio();
    }

    /**
     * The way along a ray from a point near the globe to where it first meets the surface; NaN if it passes by.
     *
     * @param p a point of the ray, equatorial radii
     * @param v its direction away from the observer, a unit vector
     */
    double way(Vector p, Vector v) {
        // stretched along the axis the spheroid is the unit sphere
        double sz = p.z() * stretch;
        double wz = v.z() * stretch;
        double a = v.x() * v.x() + v.y() * v.y() + wz * wz;
        double b = p.x() * v.x() + p.y() * v.y() + sz * wz;
        double c = p.x() * p.x() + p.y() * p.y() + sz * sz - 1;
        double discriminant = b * b - a * c;
        return discriminant > 0 ? -(b + Math.sqrt(discriminant)) / a : Double.NaN;
    }

    /** Brightness of a point of the surface seen along a ray. */
    double brightness(Vector p, Vector v) {
        double nz = p.z() * stretch * stretch;
        double normal = Math.sqrt(p.x() * p.x() + p.y() * p.y() + nz * nz);
        Vector s = view.sun();
        double mu0 = (p.x() * s.x() + p.y() * s.y() + nz * s.z()) / normal;
        if (!(mu0 > 0)) {
            return 0;
        }
        double mu = Math.max(-(p.x() * v.x() + p.y() * v.y() + nz * v.z()) / normal, LEAST_EMISSION_COSINE);
        return reflected(p.x(), p.y(), nz, mu0, mu);
    }

    /**
     * A method of its own, and of numbers only: the compiler then takes the vectors of a ray apart, which else fill the heap.
     *
     * @param nz of the normal, which has the point's x and y
     */
    private double reflected(double x, double y, double nz, double mu0, double mu) {
        double latitude = Angle.of(nz, Math.sqrt(x * x + y * y));
        double longitude = Angle.of(y, x);
        // mu0^k mu^(k-1), with a single power
        return albedo.at(latitude, longitude) * mu0 * law.of(mu0 * mu);
    }
}
