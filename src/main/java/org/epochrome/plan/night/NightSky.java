package org.epochrome.plan.night;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.epochrome.atmosphere.AirMass;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.Site;
import org.epochrome.ephemeris.Sky;

/**
 * Planet, Sun and Moon over a site during a night, with half a day before and after it. The ephemerides are computed every few
 * hours and interpolated: directions within 1 arcsec, central meridians within 0.001 degrees.
 */
public final class NightSky {
    /** How far from midnight the sky is known. */
    static final Duration REACH = Duration.ofHours(26);

    private static final Duration PLANET_STEP = Duration.ofHours(4);
    private static final Duration MOON_STEP = Duration.ofHours(1);
    /** IAU WGCCRE 2015 (Archinal et al. 2018), table 4. */
    private static final double MOON_RADIUS_KM = 1737.4;

    private static final double DAY_S = 86400;
    /** The Earth's turn about its axis in a day (IERS Conventions 2010, 5.15) with precession in right ascension. */
    private static final double SIDEREAL_DEG_PER_DAY = 360.98564737;

    // what a planet's track holds after its direction
    private static final int DIAMETER = 3;
    private static final int POLAR_DIAMETER = 4;
    private static final int DISTANCE = 5;
    private static final int PHASE = 6;
    private static final int ELONGATION = 7;
    private static final int LATITUDE = 8;
    private static final int CENTRIC_LATITUDE = 9;
    private static final int POLE_EAST = 10;
    private static final int POLE_NORTH = 11;
    private static final int SUN_LATITUDE = 12;
    private static final int SUN_LONGITUDE = 13;
    private static final int FIRST_MERIDIAN = 14;

    private final Body body;
    private final Site site;
    private final Horizon horizon;
    private final List<RotationSystem> systems;
    private final Instant origin;
    private final double siderealTimeDeg;
    private final Track planet;
    private final Track sun;
    private final Track moon;

    private NightSky(Body body, Site site, Horizon horizon, Instant midnight) {
        this.body = body;
        this.site = site;
        this.horizon = horizon;
        systems = body.systems();
        origin = midnight;
        siderealTimeDeg = Sky.siderealTimeDeg(midnight, site.longitudeDeg());
        Interval known = new Interval(midnight.minus(REACH), midnight.plus(REACH));
        planet = Track.of(known, PLANET_STEP, utc -> quantities(Ephemeris.aspect(body, utc, Optional.of(site))));
        planet.unwrapped(SUN_LONGITUDE);
        for (int i = 0; i < systems.size(); i++) {
            planet.unwrapped(FIRST_MERIDIAN + i);
        }
        sun = Track.of(
                known, PLANET_STEP, utc -> Sky.sunKm(utc, Optional.of(site)).toArray());
        moon = Track.of(
                known, MOON_STEP, utc -> Sky.moonKm(utc, Optional.of(site)).toArray());
    }

    static NightSky of(Body body, Site site, Horizon horizon, Instant midnight) {
        return new NightSky(body, site, horizon, midnight);
    }

    private double[] quantities(Aspect aspect) {
        double[] q = new double[FIRST_MERIDIAN + systems.size()];
        double poleRad = Math.toRadians(aspect.poleAngleDeg());
        Vector3D direction =
                new Vector3D(Math.toRadians(aspect.rightAscensionDeg()), Math.toRadians(aspect.declinationDeg()));
        System.arraycopy(direction.toArray(), 0, q, 0, 3);
        q[DIAMETER] = aspect.equatorialDiameterArcsec();
        q[POLAR_DIAMETER] = aspect.polarDiameterArcsec();
        q[DISTANCE] = aspect.distanceAu();
        q[PHASE] = aspect.phaseAngleDeg();
        q[ELONGATION] = aspect.elongationDeg();
        q[LATITUDE] = aspect.subEarthLatitudeDeg();
        q[CENTRIC_LATITUDE] = aspect.subEarthLatitudeCentricDeg();
        q[POLE_EAST] = Math.sin(poleRad);
        q[POLE_NORTH] = Math.cos(poleRad);
        q[SUN_LATITUDE] = aspect.subSolarLatitudeCentricDeg();
        q[SUN_LONGITUDE] = aspect.subSolarLongitudeDeg();
        for (int i = 0; i < systems.size(); i++) {
            q[FIRST_MERIDIAN + i] = aspect.centralMeridianDeg(systems.get(i));
        }
        return q;
    }

    Body body() {
        return body;
    }

    /** What rises and sets. */
    enum Target {
        PLANET,
        SUN,
        MOON
    }

    /** The direction to a body on the true equator and equinox of date; of the Sun and the Moon with the distance in km. */
    Vector3D position(Target object, Instant utc) {
        Track track = object == Target.PLANET ? planet : object == Target.SUN ? sun : moon;
        double[] xyz = track.at(utc);
        return new Vector3D(xyz[0], xyz[1], xyz[2]);
    }

    /** Where a body stands above the site's horizon. */
    Horizontal horizontal(Target object, Instant utc) {
        return Horizontal.of(position(object, utc), siderealTimeDeg(utc), site.latitudeDeg());
    }

    /** How far west of the upper meridian a body stands, -180 to 180 degrees. */
    double hourAngleDeg(Target object, Instant utc) {
        double rightAscensionDeg = Math.toDegrees(position(object, utc).getAlpha());
        return Math.IEEEremainder(siderealTimeDeg(utc) - rightAscensionDeg, 360);
    }

    private double siderealTimeDeg(Instant utc) {
        Duration since = Duration.between(origin, utc);
        return siderealTimeDeg + SIDEREAL_DEG_PER_DAY * (since.getSeconds() + 1e-9 * since.getNano()) / DAY_S;
    }

    /** How far the planet's centre appears above the site's own horizon, degrees; negative below it. */
    double clearanceDeg(Instant utc) {
        Horizontal place = horizontal(Target.PLANET, utc);
        return place.apparentAltitudeDeg() - horizon.altitudeDeg(place.azimuthDeg());
    }

    /** The Moon's apparent radius, degrees. */
    double moonRadiusDeg(Instant utc) {
        return Math.toDegrees(
                Math.asin(MOON_RADIUS_KM / position(Target.MOON, utc).getNorm()));
    }

    /** The central meridian in one system, 0 to 360 degrees. */
    double centralMeridianDeg(RotationSystem system, Instant utc) {
        int index = systems.indexOf(system);
        if (index < 0) {
            throw new IllegalArgumentException(body.displayName() + " has no longitude system " + system.key() + ".");
        }
        return circle(planet.at(utc)[FIRST_MERIDIAN + index]);
    }

    /** The directions to observer and Sun from the planet. */
    Lighting lighting(Instant utc) {
        double[] q = planet.at(utc);
        double turn = q[SUN_LONGITUDE] - q[FIRST_MERIDIAN];
        return new Lighting(body, q[CENTRIC_LATITUDE], q[SUN_LATITUDE], body.prograde() ? -turn : turn);
    }

    /** Everything at an instant. */
    QuarterHour at(Instant utc) {
        double[] q = planet.at(utc);
        Map<RotationSystem, Double> meridians = new EnumMap<>(RotationSystem.class);
        for (int i = 0; i < systems.size(); i++) {
            meridians.put(systems.get(i), circle(q[FIRST_MERIDIAN + i]));
        }
        Horizontal place = horizontal(Target.PLANET, utc);
        Horizontal moonPlace = horizontal(Target.MOON, utc);
        Vector3D moonPosition = position(Target.MOON, utc);
        double apparentDeg = place.apparentAltitudeDeg();
        return new QuarterHour(
                utc,
                place.altitudeDeg(),
                apparentDeg,
                place.azimuthDeg(),
                place.parallacticAngleDeg(),
                apparentDeg >= 0 ? OptionalDouble.of(AirMass.at(apparentDeg)) : OptionalDouble.empty(),
                clearanceDeg(utc) >= 0,
                q[DIAMETER],
                q[POLAR_DIAMETER],
                q[DISTANCE],
                q[PHASE],
                (1 + Math.cos(Math.toRadians(q[PHASE]))) / 2,
                q[ELONGATION],
                meridians,
                q[LATITUDE],
                q[CENTRIC_LATITUDE],
                Math.toDegrees(Math.atan2(q[POLE_EAST], q[POLE_NORTH])),
                horizontal(Target.SUN, utc).altitudeDeg(),
                moonPlace.altitudeDeg(),
                moonPlace.azimuthDeg(),
                moonIlluminatedFraction(moonPosition, position(Target.SUN, utc)),
                Math.toDegrees(Vector3D.angle(moonPosition, position(Target.PLANET, utc))));
    }

    /**
     * The lit part of the Moon's disk, 0 to 1.
     *
     * @param moonKm from the observer
     * @param sunKm from the observer
     */
    private static double moonIlluminatedFraction(Vector3D moonKm, Vector3D sunKm) {
        double phase = Vector3D.angle(moonKm.negate(), sunKm.subtract(moonKm));
        return (1 + Math.cos(phase)) / 2;
    }

    private static double circle(double deg) {
        double turned = deg % 360;
        return turned < 0 ? turned + 360 : turned;
    }
}
