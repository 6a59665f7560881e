package org.epochrome.ephemeris;

import java.time.Instant;
import java.util.Optional;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.epochrome.time.TimeScales;

/** Where the Sun and the Earth's Moon stand, and how the sky has turned. */
public final class Sky {
    private Sky() {}

    /**
     * Where the Sun appears, with aberration: from the observer, on the true equator and equinox of date (x to the equinox, z to
     * the celestial pole), km. Within 1 arcsec of DE405.
     *
     * @param site topocentric there; without it for the Earth's centre
     */
    public static Vector3D sunKm(Instant utc, Optional<Site> site) {
        double tt = TimeScales.ttDaysSinceJ2000(utc);
        EarthOrientation earth = EarthOrientation.at(tt, TimeScales.ut1DaysSinceJ2000(utc));
        Vector3D centreKm = Ephemeris.earthAu(tt).scalarMultiply(Ephemeris.AU_KM);
        Vector3D fromSun =
                site.map(s -> centreKm.add(Observer.at(s, earth).positionKm())).orElse(centreKm);
        Vector3D direction = Ephemeris.aberrated(fromSun.negate().normalize(), Ephemeris.earthVelocityKmS(tt));
        return earth.trueOfDate().componentsOf(direction).scalarMultiply(fromSun.getNorm());
    }

    /**
     * Where the Moon's centre appears, from the observer on the true equator and equinox of date, km; {@link LunarSeries}. Diurnal
     * aberration (0.3 arcsec) is left out.
     *
     * @param site topocentric there; without it for the Earth's centre
     */
    public static Vector3D moonKm(Instant utc, Optional<Site> site) {
        double tt = TimeScales.ttDaysSinceJ2000(utc);
        EarthOrientation earth = EarthOrientation.at(tt, TimeScales.ut1DaysSinceJ2000(utc));
        Vector3D centre = earth.eclipticOfDate().toIcrs(LunarSeries.get().positionKm(tt));
        Vector3D line = site.map(s -> centre.subtract(Observer.at(s, earth).positionKm()))
                .orElse(centre);
        return earth.trueOfDate().componentsOf(line);
    }

    /**
     * Apparent sidereal time, 0 to 360 degrees: the right ascension that stands on the meridian.
     *
     * @param longitudeDeg of the site, east positive
     */
    public static double siderealTimeDeg(Instant utc, double longitudeDeg) {
        EarthOrientation earth =
                EarthOrientation.at(TimeScales.ttDaysSinceJ2000(utc), TimeScales.ut1DaysSinceJ2000(utc));
        return Ephemeris.circle(Math.toDegrees(earth.apparentSiderealTimeRad()) + longitudeDeg);
    }
}
