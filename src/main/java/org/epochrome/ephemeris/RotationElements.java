package org.epochrome.ephemeris;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.epochrome.ephemeris.body.PeriodicAngle;
import org.epochrome.ephemeris.body.Rotation;
import org.epochrome.ephemeris.body.Rotation.Meridian;

/**
 * Where a body's north pole points and how far its prime meridian has turned. The elements and their sources are facts of
 * the body.
 */
public final class RotationElements {
    private static final double DAYS_PER_CENTURY = 36525.0;
    private static final Map<Body, RotationElements> KNOWN = new ConcurrentHashMap<>();

    private final PeriodicAngle rightAscension;
    private final PeriodicAngle declination;
    private final List<RotationSystem> systems;
    private final Map<RotationSystem, Meridian> meridians = new EnumMap<>(RotationSystem.class);

    private RotationElements(Body body) {
        Rotation rotation = body.facts().rotation();
        rightAscension = rotation.poleRightAscension();
        declination = rotation.poleDeclination();
        List<RotationSystem> found = new ArrayList<>();
        rotation.meridians().forEach((key, meridian) -> {
            RotationSystem system = system(body, key);
            found.add(system);
            meridians.put(system, meridian);
        });
        systems = List.copyOf(found);
    }

    private static RotationSystem system(Body body, String key) {
        return Arrays.stream(RotationSystem.values())
                .filter(s -> s.name().equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("The facts of " + body.displayName()
                        + " name a longitude system " + key + ", which is unknown."));
    }

    public static RotationElements of(Body body) {
        RotationElements known = KNOWN.get(body);
        return known == null ? KNOWN.computeIfAbsent(body, RotationElements::new) : known;
    }

    /** The longitude systems, that of the body-fixed frame first. */
    List<RotationSystem> systems() {
        return systems;
    }

    /**
     * What to cite for the rotation of a longitude system.
     *
     * @throws IllegalArgumentException if the body lacks that system
     */
    public String source(RotationSystem system) {
        return meridian(system).source();
    }

    /**
     * By how many degrees a day the central meridian of that system grows for a distant, resting observer. Positive for
     * every body, as longitudes are counted against the rotation.
     *
     * @throws IllegalArgumentException if the body lacks that system
     */
    public double turnRateDegPerDay(RotationSystem system) {
        return Math.abs(meridian(system).angle().rateDeg());
    }

    /** Right ascension of the north pole in ICRS, degrees, at a TDB instant. */
    double poleRightAscensionDeg(double daysSinceJ2000) {
        double t = daysSinceJ2000 / DAYS_PER_CENTURY;
        double sum = rightAscension.constantDeg() + rightAscension.rateDeg() * t;
        for (PeriodicAngle.Term term : rightAscension.terms()) {
            sum += term.amplitudeDeg() * Math.sin(term.argumentRad(t));
        }
        return sum;
    }

    /** Declination of the north pole in ICRS, degrees, at a TDB instant. */
    double poleDeclinationDeg(double daysSinceJ2000) {
        double t = daysSinceJ2000 / DAYS_PER_CENTURY;
        double sum = declination.constantDeg() + declination.rateDeg() * t;
        for (PeriodicAngle.Term term : declination.terms()) {
            sum += term.amplitudeDeg() * Math.cos(term.argumentRad(t));
        }
        return sum;
    }

    /** W: from the node of the body's equator on the ICRS equator eastward to the prime meridian, degrees. */
    double primeMeridianDeg(RotationSystem system, double daysSinceJ2000) {
        double t = daysSinceJ2000 / DAYS_PER_CENTURY;
        PeriodicAngle meridian = meridian(system).angle();
        double sum = meridian.constantDeg() + meridian.rateDeg() * daysSinceJ2000 % 360.0;
        for (PeriodicAngle.Term term : meridian.terms()) {
            sum += term.amplitudeDeg() * Math.sin(term.argumentRad(t));
        }
        return sum;
    }

    /** The axes fixed to the body in that system: x through the prime meridian, z to the north pole. */
    Axes bodyFixed(RotationSystem system, double daysSinceJ2000) {
        return Axes.ICRS
                .turnedAboutZ(Math.toRadians(poleRightAscensionDeg(daysSinceJ2000) + 90))
                .turnedAboutX(Math.toRadians(90 - poleDeclinationDeg(daysSinceJ2000)))
                .turnedAboutZ(Math.toRadians(primeMeridianDeg(system, daysSinceJ2000)));
    }

    private Meridian meridian(RotationSystem system) {
        Meridian meridian = meridians.get(system);
        if (meridian == null) {
            throw new IllegalArgumentException("This body has no longitude system " + system.key() + ".");
        }
        return meridian;
    }
}
