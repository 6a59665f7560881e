package org.epochrome.ephemeris;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.epochrome.time.TimeScales;

/**
 * The large moons of Jupiter and their shadows as seen from the Earth's centre; parallax moves a moon against Jupiter by
 * 1e-5 of its radius at most. Positions by {@link GalileanTheory}, the axis by {@link RotationElements}. Within 0.1 arcsec
 * of a theory fitted to modern observations; docs/validation.md has the comparison.
 *
 * @param moons Io, Europa, Ganymede, Callisto
 * @param shadows those that fall on the side of Jupiter that is seen
 */
public record GalileanMoons(List<MoonPlace> moons, List<ShadowPlace> shadows) {
    /** The planet that they go around. */
    public static final Body PLANET = Body.JUPITER;

    private static final double LIGHT_KM_S = 299792.458;
    private static final double DAY_S = 86400.0;
    private static final double SECOND = 1 / DAY_S;
    /** Nominal solar radius, IAU 2015 resolution B3. */
    private static final double SUN_RADIUS_KM = 695700.0;

    private static final double ARCSEC_PER_RAD = Math.toDegrees(3600.0);

    public GalileanMoons {
        moons = List.copyOf(moons);
        shadows = List.copyOf(shadows);
    }

    /** Moons and shadows at an instant; 1900 to 2100. */
    public static GalileanMoons at(Instant utc) {
        Sight sight = Sight.of(TimeScales.ttDaysSinceJ2000(utc));
        List<MoonPlace> moons = new ArrayList<>();
        List<ShadowPlace> shadows = new ArrayList<>();
        for (GalileanMoon moon : GalileanMoon.values()) {
            moons.add(sight.moon(moon));
            sight.shadow(moon, shadows);
        }
        return new GalileanMoons(moons, shadows);
    }

    /**
     * Jupiter as its light shows it.
     *
     * @param earthKm heliocentric, when the light arrives
     * @param leftDays when it left Jupiter, TDB
     * @param jupiterKm heliocentric, then
     * @param velocityKmS of Jupiter, then
     * @param side the planet's own sky axes; the third one points to the observer
     */
    private record Sight(
            Vector3D earthKm,
            double leftDays,
            Vector3D jupiterKm,
            Vector3D velocityKmS,
            Vector3D side,
            Vector3D pole,
            Vector3D front,
            Vector3D axis) {

        static Sight of(double tt) {
            Vector3D earth = Vsop87.earth().heliocentricAu(tt).scalarMultiply(Ephemeris.AU_KM);
            double left = tt;
            Vector3D jupiter = jupiterKm(tt);
            for (int i = 0; i < 3; i++) {
                left = tt - jupiter.distance(earth) / LIGHT_KM_S * SECOND;
                jupiter = jupiterKm(left);
            }
            Vector3D velocity =
                    jupiterKm(left + 0.01).subtract(jupiterKm(left - 0.01)).scalarMultiply(50 * SECOND);
            Vector3D axis = RotationElements.of(PLANET)
                    .bodyFixed(RotationSystem.III, left)
                    .z();
            Vector3D front = earth.subtract(jupiter).normalize();
            Vector3D side = axis.crossProduct(front).normalize();
            return new Sight(earth, left, jupiter, velocity, side, front.crossProduct(side), front, axis);
        }

        private static Vector3D jupiterKm(double days) {
            return Vsop87.of(PLANET).heliocentricAu(days).scalarMultiply(Ephemeris.AU_KM);
        }

        /** From where Jupiter is seen to where a moon stood some seconds later, km. */
        private Vector3D moonKm(GalileanMoon moon, double laterS) {
            return GalileanTheory.get()
                    .positionKm(moon, leftDays + laterS * SECOND)
                    .add(laterS, velocityKmS);
        }

        MoonPlace moon(GalileanMoon moon) {
            double later = 0;
            Vector3D place = moonKm(moon, 0);
            double distance = earthKm.distance(jupiterKm);
            for (int i = 0; i < 3; i++) {
                // light of a nearer moon leaves it later
                later = (distance - earthKm.distance(jupiterKm.add(place))) / LIGHT_KM_S;
                place = moonKm(moon, later);
            }
            Vector3D line = jupiterKm.add(place).subtract(earthKm);
            double perspective = distance / -line.dotProduct(front) / PLANET.equatorialRadiusKm();
            double depth = place.dotProduct(front);
            boolean covered = hit(earthKm.subtract(jupiterKm), line).isPresent();
            Vector3D aroundThen = GalileanTheory.get().positionKm(moon, leftDays + later * SECOND);
            Vector3D fromSun = jupiterKm.add(place);
            boolean dark = aroundThen.dotProduct(fromSun) > 0
                    && hit(aroundThen.subtract(fromSun), fromSun).isPresent();
            return new MoonPlace(
                    moon,
                    perspective * place.dotProduct(side),
                    perspective * place.dotProduct(pole),
                    depth / PLANET.equatorialRadiusKm(),
                    covered && depth > 0,
                    covered && depth < 0,
                    dark,
                    2 * ARCSEC_PER_RAD * Math.asin(moon.radiusKm() / line.getNorm()),
                    sunView(moon, aroundThen));
        }

        /** @param place of the moon about Jupiter when the light left it that is seen, km */
        private MoonPlace.SunView sunView(GalileanMoon moon, Vector3D place) {
            Vector3D sunward = jupiterKm.negate().normalize();
            double height = place.dotProduct(sunward);
            // the light that a shadow lacks passed the moon earlier
            Vector3D lit = height > 0 ? moonKm(moon, -height / LIGHT_KM_S) : place;
            Vector3D across = axis.crossProduct(sunward).normalize();
            double depth = lit.dotProduct(sunward);
            double distance = jupiterKm.getNorm();
            double perspective = distance / (distance - depth) / PLANET.equatorialRadiusKm();
            return new MoonPlace.SunView(
                    perspective * lit.dotProduct(across),
                    perspective * lit.dotProduct(sunward.crossProduct(across)),
                    depth / PLANET.equatorialRadiusKm());
        }

        /** Adds the shadow if it falls on the side that is seen. */
        void shadow(GalileanMoon moon, List<ShadowPlace> shadows) {
            double heightKm = 0;
            Vector3D place = null;
            for (int i = 0; i < 3; i++) {
                // the light that the shadow lacks passed the moon earlier
                Vector3D from = moonKm(moon, -heightKm / LIGHT_KM_S);
                Vector3D ray = jupiterKm.add(from);
                OptionalDouble along = from.dotProduct(jupiterKm) < 0 ? hit(from, ray) : OptionalDouble.empty();
                if (along.isEmpty()) {
                    return;
                }
                place = from.add(along.getAsDouble(), ray);
                heightKm = along.getAsDouble() * ray.getNorm();
            }
            if (normal(place).dotProduct(front) <= 0) {
                return;
            }
            double sunKm = jupiterKm.add(place).getNorm();
            double radius = PLANET.equatorialRadiusKm();
            double part = heightKm / (sunKm - heightKm);
            double perspective = earthKm.distance(jupiterKm) / (earthKm.distance(jupiterKm) - place.dotProduct(front));
            shadows.add(new ShadowPlace(
                    moon,
                    perspective * place.dotProduct(side) / radius,
                    perspective * place.dotProduct(pole) / radius,
                    place.dotProduct(front) / radius,
                    (moon.radiusKm() - part * (SUN_RADIUS_KM - moon.radiusKm())) / radius,
                    (moon.radiusKm() + part * (SUN_RADIUS_KM + moon.radiusKm())) / radius));
        }

        /** Where a ray from a point (about Jupiter's centre) first meets Jupiter, in lengths of the ray. */
        private OptionalDouble hit(Vector3D from, Vector3D ray) {
            // stretched along the axis the spheroid is a sphere
            Vector3D start = stretched(from);
            Vector3D way = stretched(ray);
            double radius = PLANET.equatorialRadiusKm();
            double a = way.getNormSq();
            double b = start.dotProduct(way);
            double discriminant = b * b - a * (start.getNormSq() - radius * radius);
            return discriminant < 0 ? OptionalDouble.empty() : OptionalDouble.of(-(b + Math.sqrt(discriminant)) / a);
        }

        private Vector3D stretched(Vector3D v) {
            return v.add((1 / PLANET.axisRatio() - 1) * v.dotProduct(axis), axis);
        }

        private Vector3D normal(Vector3D surface) {
            double ratio = PLANET.axisRatio();
            return surface.add((1 / (ratio * ratio) - 1) * surface.dotProduct(axis), axis);
        }
    }
}
