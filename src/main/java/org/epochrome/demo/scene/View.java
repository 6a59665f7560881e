package org.epochrome.demo.scene;

import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;

/**
 * How a camera sees a spheroid, in the body-fixed frame and in units of the equatorial radius.
 *
 * @param observer from the body's centre to the observer, as long as the distance
 * @param sun unit vector to the Sun
 * @param sunRadius angular radius of the Sun as the body sees it, radians
 * @param right unit vector to the right of the image
 * @param up unit vector to the top of the image
 * @param pixel what a pixel spans at the body's centre
 * @param axisRatio polar over equatorial radius
 */
record View(Vector observer, Vector sun, double sunRadius, Vector right, Vector up, double pixel, double axisRatio) {
    private static final double ARCSEC = Math.PI / (180 * 3600);
    /** The Sun's radius, au: 695 700 km (IAU 2015 resolution B3). */
    private static final double SUN_RADIUS_AU = 695_700 / 149_597_870.7;

    static View of(Aspect aspect, Camera camera) {
        Body body = aspect.body();
        double eastward = body.prograde() ? -1 : 1; // longitudes are counted so that the central meridian grows
        double centralMeridian = eastward * aspect.centralMeridianDeg(body.defaultSystem());
        Vector towardsObserver = Vector.towards(aspect.subEarthLatitudeCentricDeg(), centralMeridian);
        Vector towardsSun =
                Vector.towards(aspect.subSolarLatitudeCentricDeg(), eastward * aspect.subSolarLongitudeDeg());
        double distance = 1 / StrictMath.sin(0.5 * aspect.equatorialDiameterArcsec() * ARCSEC);

        // on the sky: "abeam" lies clockwise of the projected pole, as seen in an unmirrored image
        Vector abeam = new Vector(0, 0, 1).cross(towardsObserver).unit();
        Vector pole = towardsObserver.cross(abeam);
        double north = StrictMath.toRadians(camera.displayedAngleDeg(aspect.poleAngleDeg()));
        Vector abeamInImage = camera.mirrored() ? abeam.times(-1) : abeam;
        Vector right = pole.times(-StrictMath.sin(north)).plus(abeamInImage.times(StrictMath.cos(north)));
        Vector up = pole.times(StrictMath.cos(north)).plus(abeamInImage.times(StrictMath.sin(north)));

        double pixel = distance * StrictMath.tan(camera.arcsecPerPx() * ARCSEC);
        return new View(
                towardsObserver.times(distance),
                towardsSun,
                SUN_RADIUS_AU / aspect.sunDistanceAu(),
                right,
                up,
                pixel,
                body.axisRatio());
    }
}
