package org.epochrome.session.schedule;

import java.util.Optional;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;

/**
 * What lies at a pixel.
 *
 * @param northArcsec from the disk's centre along the projected pole
 * @param sideArcsec at right angles to it, towards growing east longitude of the body
 * @param spot place on the globe; empty beside it
 */
public record FrameOrientation(double northArcsec, double sideArcsec, Optional<Spot> spot) {
    /**
     * A place on a globe.
     *
     * @param latitudeDeg planetographic
     * @param longitudeDeg planetographic, 0 to 360
     */
    public record Spot(double latitudeDeg, double longitudeDeg) {}

    public double fromCentreArcsec() {
        return Math.hypot(northArcsec, sideArcsec);
    }

    /**
     * Looks at a pixel of a picture.
     *
     * @param aspect how the body stands in it
     * @param disk where its disk lies
     * @param system that longitudes count in
     */
    public static FrameOrientation at(Aspect aspect, Disk disk, RotationSystem system, double x, double y) {
        View view = new View(Globe.of(aspect), disk);
        double pole = view.pole(x, y);
        double side = view.side(x, y);
        double radius = 0.5 * aspect.equatorialDiameterArcsec();
        double depth = view.depth(pole, side);
        return new FrameOrientation(
                radius * pole,
                radius * side,
                Double.isNaN(depth) ? Optional.empty() : Optional.of(spot(view, aspect, system, pole, side, depth)));
    }

    private static Spot spot(View view, Aspect aspect, RotationSystem system, double pole, double side, double depth) {
        double bodyX = view.bodyX(pole, depth);
        double bodyZ = view.bodyZ(pole, depth);
        double east = Math.toDegrees(View.eastOfMeridian(bodyX, side));
        double longitude = aspect.centralMeridianDeg(system) + (aspect.body().prograde() ? -east : east);
        return new Spot(Math.toDegrees(view.graphicLatitude(bodyX, side, bodyZ)), (longitude % 360 + 360) % 360);
    }

    /** How far east of the meridian that faces the observer the prime meridian lies, degrees: where a graticule starts. */
    public static double primeMeridianEastDeg(Aspect aspect, RotationSystem system) {
        double east = aspect.centralMeridianDeg(system);
        return aspect.body().prograde() ? east : -east;
    }

    /** Direction of the zenith from image up, counter-clockwise as displayed; empty without a site. */
    public static Optional<Double> zenithDeg(Aspect aspect, Disk disk) {
        return aspect.horizontal().map(h -> AtmosphericDispersion.zenithDeg(aspect, disk));
    }
}
