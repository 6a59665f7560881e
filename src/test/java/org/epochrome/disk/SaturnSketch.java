package org.epochrome.disk;

import java.util.Random;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;

/**
 * A plain painter of Saturn for tests: each of 5 x 5 rays per pixel is followed in space through the rings' plane and the
 * spheroid and from there to the Sun. It shares no geometry with the fit; its rings are as steps of other brightness and
 * opacity than the fit supposes.
 *
 * @param openingDeg planetocentric latitude of the observer
 * @param sunLatitudeDeg planetocentric latitude of the Sun
 * @param sunEastDeg longitude of the Sun east of the observer's meridian
 * @param x column of the centre
 * @param y row of the centre
 * @param radiusPx equatorial radius
 * @param northDeg north angle
 * @param mirrored whether the image is mirrored
 * @param turnedDeg angle by which the markings stand further east
 */
public record SaturnSketch(
        double openingDeg,
        double sunLatitudeDeg,
        double sunEastDeg,
        double x,
        double y,
        double radiusPx,
        double northDeg,
        boolean mirrored,
        double turnedDeg) {
    static final double AXIS_RATIO = 54_364 / 60_268.0;
    public static final double BLUR_PX = 1.5;
    public static final double SKY = 0.02;
    private static final double NOISE = 0.006;
    private static final int RAYS = 5;
    private static final double MINNAERT = 0.93;
    /** Outer radius in equatorial radii, brightness, normal optical depth. */
    private static final double[][] RINGS = {
        {1.2360, 0, 0},
        {1.5262, 0.12, 0.1},
        {1.75, 0.6, 1.5},
        {1.9499, 0.75, 2.4},
        {2.0252, 0.15, 0.15},
        {2.2139, 0.5, 0.6},
        {2.2192, 0, 0},
        {2.2694, 0.45, 0.5}
    };

    /** With the markings elsewhere. */
    public SaturnSketch turned(double byDeg) {
        return new SaturnSketch(
                openingDeg, sunLatitudeDeg, sunEastDeg, x, y, radiusPx, northDeg, mirrored, turnedDeg + byDeg);
    }

    public Globe globe() {
        double[] sun = sun();
        return new Globe(AXIS_RATIO, Math.toRadians(openingDeg), sun[0], sun[1], sun[2], Rings.of(Body.SATURN));
    }

    private double[] sun() {
        return direction(sunLatitudeDeg, sunEastDeg);
    }

    private static double[] direction(double latitudeDeg, double eastDeg) {
        double b = Math.toRadians(latitudeDeg);
        double l = Math.toRadians(eastDeg);
        return new double[] {Math.cos(b) * Math.cos(l), Math.cos(b) * Math.sin(l), Math.sin(b)};
    }

    /** A frame with noise. */
    public Plane frame(int width, int height, long seed) {
        Plane frame = picture(width, height);
        Random random = new Random(seed);
        for (int i = 0; i < frame.data().length; i++) {
            frame.data()[i] += (float) (SKY + NOISE * random.nextGaussian());
        }
        return frame;
    }

    /** The light above the sky. */
    public Plane picture(int width, int height) {
        Plane sharp = new Plane(width, height);
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                double sum = 0;
                for (int j = 0; j < RAYS; j++) {
                    for (int i = 0; i < RAYS; i++) {
                        double right = column - x + (i + 0.5) / RAYS - 0.5;
                        double up = y - row - (j + 0.5) / RAYS + 0.5;
                        sum += light(right / radiusPx, up / radiusPx);
                    }
                }
                sharp.set(column, row, (float) (sum / (RAYS * RAYS)));
            }
        }
        return Gaussian.blur(sharp, BLUR_PX);
    }

    /** Light from a direction, given in radii right and up of the centre. */
    private double light(double right, double up) {
        double north = Math.toRadians(northDeg);
        // North lies counter-clockwise of up; the body's east is right of it, unless the image is mirrored.
        double pole = up * Math.cos(north) - right * Math.sin(north);
        double east = (right * Math.cos(north) + up * Math.sin(north)) * (mirrored ? -1 : 1);
        double b = Math.toRadians(openingDeg);
        double[] eye = direction(openingDeg, 0);
        double[] from = {-pole * Math.sin(b), east, pole * Math.cos(b)};
        double surface = nearestHit(from, eye);
        double toPlane = -from[2] / eye[2];
        double globe = Double.isNaN(surface) ? 0 : globeLight(along(from, eye, surface), eye);
        if (!Double.isNaN(surface) && surface > toPlane) {
            return globe;
        }
        double[] at = along(from, eye, toPlane);
        double[] ring = ring(Math.hypot(at[0], at[1]));
        boolean dark = nearestHit(at, sun()) > 0;
        return globe * Math.exp(-ring[2] / Math.abs(eye[2])) + (dark ? 0 : ring[1]);
    }

    private double globeLight(double[] at, double[] eye) {
        double[] normal = {at[0], at[1], at[2] / (AXIS_RATIO * AXIS_RATIO)};
        double length = Math.sqrt(dot(normal, normal));
        double[] sun = sun();
        double incidence = dot(normal, sun) / length;
        if (incidence <= 0) {
            return 0;
        }
        double emission = Math.max(0.02, dot(normal, eye) / length);
        double latitude = Math.asin(at[2] / AXIS_RATIO);
        double east = Math.atan2(at[1], at[0]) - Math.toRadians(turnedDeg);
        double albedo = 0.8 + 0.08 * Math.cos(9 * latitude) + 0.015 * Math.sin(7 * east + 20 * latitude);
        double toPlane = -at[2] / sun[2];
        double[] crossing = along(at, sun, toPlane);
        double shade = toPlane > 0 ? Math.exp(-ring(Math.hypot(crossing[0], crossing[1]))[2] / Math.abs(sun[2])) : 1;
        return albedo * shade * Math.pow(incidence, MINNAERT) * Math.pow(emission, MINNAERT - 1);
    }

    /** Largest distance along a ray at which it meets the spheroid; NaN if it does not. */
    private static double nearestHit(double[] from, double[] to) {
        double[] p = {from[0], from[1], from[2] / AXIS_RATIO};
        double[] d = {to[0], to[1], to[2] / AXIS_RATIO};
        double a = dot(d, d);
        double b = dot(p, d) / a;
        double c = (dot(p, p) - 1) / a;
        return -b + Math.sqrt(b * b - c);
    }

    private static double[] ring(double radius) {
        for (double[] ring : RINGS) {
            if (radius < ring[0]) {
                return ring;
            }
        }
        return RINGS[0];
    }

    private static double[] along(double[] from, double[] to, double way) {
        return new double[] {from[0] + way * to[0], from[1] + way * to[1], from[2] + way * to[2]};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
