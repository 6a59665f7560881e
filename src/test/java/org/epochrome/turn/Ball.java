package org.epochrome.turn;

import org.epochrome.disk.Disk;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;

/**
 * A round, lit ball with one round spot, drawn by its own closed form: orthographic, Minnaert's law, every pixel the mean
 * of 16 places, on the limb of 400, then blurred. Shares nothing with what it checks but the blur.
 *
 * @param disk where it lies
 * @param tiltDeg latitude below the observer
 * @param sunEastDeg longitude of the Sun east of the middle meridian; it stands over the same latitude as the observer
 * @param minnaert exponent
 * @param spotLatitudeDeg of the spot
 * @param spotEastDeg longitude of the spot east of the middle meridian
 * @param spotStrength relative brightening in its middle; it fades like a Gaussian of 4 degrees
 * @param blurPx of the camera
 */
record Ball(
        Disk disk,
        double tiltDeg,
        double sunEastDeg,
        double minnaert,
        double spotLatitudeDeg,
        double spotEastDeg,
        double spotStrength,
        double blurPx) {
    private static final int FINE = 4;
    private static final int FINE_ON_LIMB = 20;
    private static final double SPOT_DEG = 4;

    Plane picture(int width, int height) {
        Plane plane = new Plane(width, height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double fromLimbPx = Math.hypot(x - disk.x(), y - disk.y()) - disk.equatorialRadiusPx();
                plane.set(x, y, (float) mean(x, y, Math.abs(fromLimbPx) < 1.5 ? FINE_ON_LIMB : FINE));
            }
        }
        return Gaussian.blur(plane, blurPx);
    }

    private double mean(int x, int y, int fine) {
        double sum = 0;
        for (int j = 0; j < fine; j++) {
            for (int i = 0; i < fine; i++) {
                sum += brightness(x + (i + 0.5) / fine - 0.5, y + (j + 0.5) / fine - 0.5);
            }
        }
        return sum / (fine * fine);
    }

    private double brightness(double x, double y) {
        // Undo the camera: mirror, then turn north up; east of the ball is right then.
        double right = (x - disk.x()) / disk.equatorialRadiusPx();
        double up = (disk.y() - y) / disk.equatorialRadiusPx();
        double north = Math.toRadians(disk.northAngleDeg());
        double east = right * Math.cos(north) + up * Math.sin(north);
        double upright = up * Math.cos(north) - right * Math.sin(north);
        if (disk.mirrored()) {
            east = -east;
        }
        double emission = Math.sqrt(1 - east * east - upright * upright);
        if (Double.isNaN(emission)) {
            return 0;
        }
        double tilt = Math.toRadians(tiltDeg);
        double z = emission * Math.sin(tilt) + upright * Math.cos(tilt);
        double front = emission * Math.cos(tilt) - upright * Math.sin(tilt);
        double incidence = along(front, east, z, sunEastDeg, tiltDeg);
        if (incidence <= 0) {
            return 0;
        }
        double fromSpotDeg =
                Math.toDegrees(Math.acos(Math.min(1, along(front, east, z, spotEastDeg, spotLatitudeDeg))));
        double albedo = 1 + spotStrength * Math.exp(-0.5 * fromSpotDeg * fromSpotDeg / (SPOT_DEG * SPOT_DEG));
        return albedo * Math.pow(incidence, minnaert) * Math.pow(Math.max(emission, 0.02), minnaert - 1);
    }

    /** Cosine of the angle between a point of the unit sphere and a direction given by longitude and latitude. */
    private static double along(double front, double east, double z, double eastDeg, double latitudeDeg) {
        double lon = Math.toRadians(eastDeg);
        double lat = Math.toRadians(latitudeDeg);
        return Math.cos(lat) * (front * Math.cos(lon) + east * Math.sin(lon)) + z * Math.sin(lat);
    }

    /** Column of the spot's middle. */
    double spotX() {
        double north = Math.toRadians(disk.northAngleDeg());
        return disk.x() + disk.equatorialRadiusPx() * (spotEast() * Math.cos(north) - spotUpright() * Math.sin(north));
    }

    /** Row of the spot's middle. */
    double spotY() {
        double north = Math.toRadians(disk.northAngleDeg());
        return disk.y() - disk.equatorialRadiusPx() * (spotEast() * Math.sin(north) + spotUpright() * Math.cos(north));
    }

    private double spotEast() {
        double east = Math.cos(Math.toRadians(spotLatitudeDeg)) * Math.sin(Math.toRadians(spotEastDeg));
        return disk.mirrored() ? -east : east;
    }

    private double spotUpright() {
        double lat = Math.toRadians(spotLatitudeDeg);
        double tilt = Math.toRadians(tiltDeg);
        return Math.sin(lat) * Math.cos(tilt) - Math.cos(lat) * Math.cos(Math.toRadians(spotEastDeg)) * Math.sin(tilt);
    }
}
