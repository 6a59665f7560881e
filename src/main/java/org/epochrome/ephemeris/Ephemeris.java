package org.epochrome.ephemeris;

import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.epochrome.time.TimeScales;

/**
 * Computes the aspect of a body: {@link Vsop87} positions, light time, {@link RotationElements}, {@link EarthOrientation}.
 *
 * <p>Disk geometry follows the geometric direction corrected for light time; right ascension, declination, altitude,
 * azimuth and elongation also take the aberration by the observer's motion (20 arcsec). Left out: the Sun's motion about
 * the barycentre during the light time (0.02 arcsec), its deflection of light (0.02 arcsec beyond 30 degrees from it),
 * its velocity in the aberration (0.01 arcsec).
 */
public final class Ephemeris {
    static final double AU_KM = 149597870.700;
    private static final double LIGHT_KM_S = 299792.458;
    private static final double AU_LIGHT_S = AU_KM / LIGHT_KM_S;
    private static final double DAY_S = 86400.0;
    private static final double ARCSEC_PER_RAD = Math.toDegrees(3600.0);

    /** Half the interval over which the Earth's velocity is differenced: good to 1e-6 of it. */
    private static final double VELOCITY_STEP_DAYS = 0.05;

    private Ephemeris() {}

    /**
     * The aspect of a body at an instant. Thread safe; 1600 to 2200 for sensible numbers, 1950 to 2100 for tested ones.
     *
     * @param utc instant at the observer
     * @param site topocentric there; without it for the Earth's centre
     */
    public static Aspect aspect(Body body, Instant utc, Optional<Site> site) {
        double tt = TimeScales.ttDaysSinceJ2000(utc);
        EarthOrientation earth = EarthOrientation.at(tt, TimeScales.ut1DaysSinceJ2000(utc));
        Optional<Observer> observer = site.map(s -> Observer.at(s, earth));

        Vector3D observerAu = observer.map(o -> new Vector3D(1, earthAu(tt), 1 / AU_KM, o.positionKm()))
                .orElseGet(() -> earthAu(tt));
        Vector3D velocityKmS =
                observer.map(o -> earthVelocityKmS(tt).add(o.velocityKmS())).orElseGet(() -> earthVelocityKmS(tt));
        Sighting sighting = Sighting.of(body, tt, observerAu);

        Vector3D line = sighting.lineAu().normalize();
        Vector3D apparent = aberrated(line, velocityKmS);
        Vector3D apparentSun = aberrated(observerAu.negate().normalize(), velocityKmS);
        SkyPlane sky = new SkyPlane(line, earth.trueOfDate().z());
        Vector3D dateComponents = earth.trueOfDate().componentsOf(apparent);

        double emitted = tt - sighting.lightTimeS() / DAY_S;
        Globe globe = Globe.of(body, emitted);
        Vector3D toSun = sighting.heliocentricAu().negate().normalize();
        Vector3D toObserver = line.negate();
        double phaseRad = Vector3D.angle(toSun, toObserver);
        double subEarthCentricDeg = globe.centricLatitudeDeg(toObserver);
        double distanceAu = sighting.lineAu().getNorm();
        double diameterArcsec = 2 * ARCSEC_PER_RAD * Math.asin(body.equatorialRadiusKm() / (distanceAu * AU_KM));

        return new Aspect(
                body,
                utc,
                site,
                globe.longitudesDeg(toObserver),
                globe.graphicLatitudeDeg(toObserver),
                subEarthCentricDeg,
                globe.graphicLatitudeDeg(toSun),
                globe.centricLatitudeDeg(toSun),
                globe.longitudesDeg(toSun).get(body.defaultSystem()),
                sky.positionAngleDeg(globe.northPole()),
                sky.positionAngleDeg(toSun),
                Math.toDegrees(phaseRad),
                distanceAu,
                sighting.heliocentricAu().getNorm(),
                sighting.lightTimeS(),
                diameterArcsec,
                diameterArcsec * body.projectedAxisRatio(subEarthCentricDeg),
                diameterArcsec * Math.pow(Math.sin(phaseRad / 2), 2),
                circle(Math.toDegrees(dateComponents.getAlpha())),
                Math.toDegrees(dateComponents.getDelta()),
                Math.toDegrees(Vector3D.angle(apparent, apparentSun)),
                observer.map(o -> horizontal(o.zenith(), earth.trueOfDate().z(), apparent, sky)));
    }

    private static Aspect.Horizontal horizontal(Vector3D zenith, Vector3D pole, Vector3D apparent, SkyPlane sky) {
        // seen from below, the horizon is the plane of the sky at the zenith: north through east
        SkyPlane horizon = new SkyPlane(zenith, pole);
        return new Aspect.Horizontal(
                90 - Math.toDegrees(Vector3D.angle(zenith, apparent)),
                circle(horizon.positionAngleDeg(apparent)),
                sky.positionAngleDeg(zenith));
    }

    /** The Earth from the Sun in ICRS, at a TDB instant. */
    static Vector3D earthAu(double tt) {
        return Vsop87.earth().heliocentricAu(tt);
    }

    /** Of the Earth about the Sun in ICRS. */
    static Vector3D earthVelocityKmS(double tt) {
        Vector3D moved = earthAu(tt + VELOCITY_STEP_DAYS).subtract(earthAu(tt - VELOCITY_STEP_DAYS));
        return moved.scalarMultiply(AU_KM / (2 * VELOCITY_STEP_DAYS * DAY_S));
    }

    /** The direction as a moving observer sees it, to first order in v/c (the second is 0.001 arcsec). */
    static Vector3D aberrated(Vector3D direction, Vector3D velocityKmS) {
        return new Vector3D(1, direction, 1 / LIGHT_KM_S, velocityKmS).normalize();
    }

    static double circle(double deg) {
        double turned = deg % 360.0;
        return turned < 0 ? turned + 360.0 : turned;
    }

    /**
     * A body seen by its light.
     *
     * @param lineAu from the observer now to the body when the light left it
     * @param heliocentricAu from the Sun to the body, when the light left it
     * @param lightTimeS for that distance
     */
    private record Sighting(Vector3D lineAu, Vector3D heliocentricAu, double lightTimeS) {
        static Sighting of(Body body, double tt, Vector3D observerAu) {
            Vsop87 orbit = Vsop87.of(body);
            Vector3D now = orbit.heliocentricAu(tt);
            double firstS = now.distance(observerAu) * AU_LIGHT_S;
            Vector3D then = orbit.heliocentricAu(tt - firstS / DAY_S);
            // the light time is off by v/c of itself, half a second or so: a straight step finishes it, to metres
            double lightTimeS = then.distance(observerAu) * AU_LIGHT_S;
            Vector3D emitted = then.add((lightTimeS - firstS) / firstS, then.subtract(now));
            return new Sighting(emitted.subtract(observerAu), emitted, lightTimeS);
        }
    }

    /** Position angles about a direction: from the projected pole through east. */
    private static final class SkyPlane {
        private final Vector3D east;
        private final Vector3D north;

        SkyPlane(Vector3D direction, Vector3D pole) {
            east = pole.crossProduct(direction).normalize();
            north = direction.crossProduct(east);
        }

        double positionAngleDeg(Vector3D towards) {
            return Math.toDegrees(Math.atan2(towards.dotProduct(east), towards.dotProduct(north)));
        }
    }

    /** A body as it stands at a TDB instant: latitudes and longitudes of directions from its centre, given in ICRS. */
    private record Globe(Body body, Axes fixed, Map<RotationSystem, Double> turnedBeforeDefaultDeg) {
        static Globe of(Body body, double daysSinceJ2000) {
            RotationElements elements = RotationElements.of(body);
            Map<RotationSystem, Double> turned = new EnumMap<>(RotationSystem.class);
            double defaultDeg = elements.primeMeridianDeg(body.defaultSystem(), daysSinceJ2000);
            for (RotationSystem system : body.systems()) {
                turned.put(system, elements.primeMeridianDeg(system, daysSinceJ2000) - defaultDeg);
            }
            return new Globe(body, elements.bodyFixed(body.defaultSystem(), daysSinceJ2000), turned);
        }

        Vector3D northPole() {
            return fixed.z();
        }

        double centricLatitudeDeg(Vector3D direction) {
            return Math.toDegrees(fixed.componentsOf(direction).getDelta());
        }

        /** Of the surface point on that line: tan(graphic) = (a/b)^2 tan(centric). */
        double graphicLatitudeDeg(Vector3D direction) {
            Vector3D v = fixed.componentsOf(direction);
            double ratio = body.axisRatio();
            return Math.toDegrees(Math.atan2(v.getZ(), ratio * ratio * Math.hypot(v.getX(), v.getY())));
        }

        Map<RotationSystem, Double> longitudesDeg(Vector3D direction) {
            double eastDeg = Math.toDegrees(fixed.componentsOf(direction).getAlpha());
            Map<RotationSystem, Double> longitudes = new EnumMap<>(RotationSystem.class);
            turnedBeforeDefaultDeg.forEach((system, turned) -> {
                double inSystem = eastDeg - turned;
                longitudes.put(system, circle(body.prograde() ? -inSystem : inSystem));
            });
            return longitudes;
        }
    }
}
