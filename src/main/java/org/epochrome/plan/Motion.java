package org.epochrome.plan;

import java.util.List;
import java.util.stream.Stream;
import org.epochrome.plan.limit.SurfaceMotion;
import org.epochrome.plan.limit.Telescope;

/**
 * How fast the surface moves when the planet stands highest.
 *
 * @param centre at the disk's centre
 * @param fastestArcsecPerMin the fastest latitude that is seen
 * @param latitudes some latitudes that are seen, from north to south
 */
public record Motion(Rate centre, double fastestArcsecPerMin, List<Rate> latitudes) {
    /**
     * The speed of a latitude on the central meridian.
     *
     * @param latitudeDeg planetographic
     */
    public record Rate(double latitudeDeg, double arcsecPerMin, double pxPerMin, double degPerHour) {}

    public Motion {
        latitudes = List.copyOf(latitudes);
    }

    static Motion of(SurfaceMotion motion, Telescope telescope) {
        double centre = motion.centreLatitudeDeg();
        return new Motion(
                rate(motion, centre, telescope),
                motion.fastestArcsecPerMin(),
                Stream.of(60.0, 30.0, 0.0, -30.0, -60.0)
                        .filter(latitude -> Math.abs(latitude - centre) < 85)
                        .map(latitude -> rate(motion, latitude, telescope))
                        .toList());
    }

    private static Rate rate(SurfaceMotion motion, double latitudeDeg, Telescope telescope) {
        double arcsec = motion.arcsecPerMin(latitudeDeg);
        return new Rate(latitudeDeg, arcsec, arcsec / telescope.arcsecPerPx(), motion.degPerHour(latitudeDeg));
    }
}
