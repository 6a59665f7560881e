package org.epochrome.demo;

import java.util.List;

/**
 * The brightness of a spheroid along lines of sight: the ray's first point on the surface, its latitude and longitude,
 * and Minnaert's reflectance there under the true direction of the Sun. The first of the layers a line of sight can
 * meet, after moons; the sky behind it is black.
 */
final class Globe {
    /** Below it Minnaert's law with k below 1 runs off to infinity, so it is held there (common practice, no source). */
    private static final double LEAST_EMISSION_COSINE = 0.03;

    private final View view;
    private final AlbedoMap albedo;
    private final double minnaertK;
    private final double stretch;
    private final List<Ball> balls;

    Globe(View view, AlbedoMap albedo, double minnaertK, List<Ball> balls) {
        this.view = view;
        this.albedo = albedo;
        this.minnaertK = minnaertK;
        this.stretch = 1 / view.axisRatio();
        this.balls = balls;
    }

    /**
     * Brightness seen along the ray through a point of the image plane through the body's centre.
     *
     * @param right of the body's centre, equatorial radii
     * @param up of the body's centre, equatorial radii
     */
    double brightness(double right, double up) {
        Vector r = view.right();
        Vector u = view.up();
        Vector o = view.observer();
        double px = right * r.x() + up * u.x();
        double py = right * r.y() + up * u.y();
        double pz = right * r.z() + up * u.z();
        double vx = px - o.x();
        double vy = py - o.y();
        double vz = pz - o.z();
        double length = Math.sqrt(vx * vx + vy * vy + vz * vz);
        vx /= length;
        vy /= length;
        vz /= length;

        // stretched along the axis the spheroid is the unit sphere
        double sz = pz * stretch;
        double wz = vz * stretch;
        double a = vx * vx + vy * vy + wz * wz;
        double b = px * vx + py * vy + sz * wz;
        double c = px * px + py * py + sz * sz - 1;
        double discriminant = b * b - a * c;
        boolean sky = !(discriminant > 0);
        double t = sky ? Double.POSITIVE_INFINITY : -(b + Math.sqrt(discriminant)) / a;
        for (Ball ball : balls) {
            if (ball.hides(px, py, pz, vx, vy, vz, t)) {
                return ball.brightness();
            }
        }
        if (sky) {
            return 0;
        }
        double x = px + t * vx;
        double y = py + t * vy;
        double z = pz + t * vz;

        double nz = z * stretch * stretch;
        double normal = Math.sqrt(x * x + y * y + nz * nz);
        Vector s = view.sun();
        double mu0 = (x * s.x() + y * s.y() + nz * s.z()) / normal;
        if (!(mu0 > 0)) {
            return 0;
        }
        double mu = Math.max(-(x * vx + y * vy + nz * vz) / normal, LEAST_EMISSION_COSINE);
        double latitude = StrictMath.atan2(nz, Math.sqrt(x * x + y * y));
        double longitude = StrictMath.atan2(y, x);
        double sunlight = 1;
        for (Ball ball : balls) {
            sunlight *= ball.sunlight(x, y, z, s);
        }
        // mu0^k mu^(k-1), with a single power
        return sunlight * albedo.at(latitude, longitude) * mu0 * StrictMath.pow(mu0 * mu, minnaertK - 1);
    }
}
