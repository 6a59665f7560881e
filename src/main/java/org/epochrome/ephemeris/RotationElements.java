package org.epochrome.ephemeris;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Where a body's north pole points and how far its prime meridian has turned: Archinal et al. 2018 (IAU WGCCRE 2015,
 * Celest. Mech. Dyn. Astron. 130:22), table 1. Jupiter's Systems I and II and Saturn's System I are the classical
 * conventions of the earlier reports (Davies et al. 1980; Seidelmann et al. 2002).
 */
public final class RotationElements {
    private static final double DAYS_PER_CENTURY = 36525.0;

    /** Periodic term: amplitude, and phase and rate (degrees a Julian century) of its argument. */
    private record Term(double amplitudeDeg, double phaseDeg, double rateDegPerCentury) {
        double argumentRad(double centuries) {
            return Math.toRadians(phaseDeg + rateDegPerCentury * centuries);
        }
    }

    /** Constant and rate (a century for the pole, a day for W), with periodic terms. */
    private record Angle(double constantDeg, double rateDeg, List<Term> terms) {
        Angle(double constantDeg, double rateDeg, Term... terms) {
            this(constantDeg, rateDeg, List.of(terms));
        }
    }

    /** Prime meridian of a system: W at J2000.0 and degrees a day. */
    private record Meridian(double atJ2000Deg, double rateDegPerDay) {}

    private final Angle rightAscension;
    private final Angle declination;
    private final Map<RotationSystem, Meridian> meridians = new EnumMap<>(RotationSystem.class);
    private final List<Term> meridianTerms;

    private RotationElements(
            Angle rightAscension, Angle declination, Map<RotationSystem, Meridian> meridians, Term... meridianTerms) {
        this.rightAscension = rightAscension;
        this.declination = declination;
        this.meridians.putAll(meridians);
        this.meridianTerms = List.of(meridianTerms);
    }

    private static final Map<Body, RotationElements> ALL = new EnumMap<>(Map.of(
            Body.MERCURY, mercury(),
            Body.VENUS, plain(new Angle(272.76, 0), new Angle(67.16, 0), 160.20, -1.4813688),
            Body.MARS, mars(),
            Body.JUPITER, jupiter(),
            Body.SATURN, saturn(),
            Body.URANUS, plain(new Angle(257.311, 0), new Angle(-15.175, 0), 203.81, -501.1600928),
            Body.NEPTUNE, neptune()));

    public static RotationElements of(Body body) {
        return ALL.get(body);
    }

    /**
     * By how many degrees a day the central meridian of that system grows for a distant, resting observer. Positive for
     * every body, as longitudes are counted against the rotation.
     *
     * @throws IllegalArgumentException if the body lacks that system
     */
    public double turnRateDegPerDay(RotationSystem system) {
        return Math.abs(meridian(system).rateDegPerDay);
    }

    /** Right ascension of the north pole in ICRS, degrees, at a TDB instant. */
    double poleRightAscensionDeg(double daysSinceJ2000) {
        double t = daysSinceJ2000 / DAYS_PER_CENTURY;
        double sum = rightAscension.constantDeg + rightAscension.rateDeg * t;
        for (Term term : rightAscension.terms) {
            sum += term.amplitudeDeg * Math.sin(term.argumentRad(t));
        }
        return sum;
    }

    /** Declination of the north pole in ICRS, degrees, at a TDB instant. */
    double poleDeclinationDeg(double daysSinceJ2000) {
        double t = daysSinceJ2000 / DAYS_PER_CENTURY;
        double sum = declination.constantDeg + declination.rateDeg * t;
        for (Term term : declination.terms) {
            sum += term.amplitudeDeg * Math.cos(term.argumentRad(t));
        }
        return sum;
    }

    /** W: from the node of the body's equator on the ICRS equator eastward to the prime meridian, degrees. */
    double primeMeridianDeg(RotationSystem system, double daysSinceJ2000) {
        double t = daysSinceJ2000 / DAYS_PER_CENTURY;
        Meridian meridian = meridian(system);
        double sum = meridian.atJ2000Deg + meridian.rateDegPerDay * daysSinceJ2000 % 360.0;
        for (Term term : meridianTerms) {
            sum += term.amplitudeDeg * Math.sin(term.argumentRad(t));
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

    private static RotationElements plain(
            Angle rightAscension, Angle declination, double meridianDeg, double rateDegPerDay, Term... terms) {
        return new RotationElements(
                rightAscension,
                declination,
                Map.of(RotationSystem.SINGLE, new Meridian(meridianDeg, rateDegPerDay)),
                terms);
    }

    private static RotationElements mercury() {
        return plain(
                new Angle(281.0103, -0.0328),
                new Angle(61.4155, -0.0049),
                329.5988,
                6.1385108,
                new Term(0.01067257, 174.7910857, 4.092335 * DAYS_PER_CENTURY),
                new Term(-0.00112309, 349.5821714, 8.184670 * DAYS_PER_CENTURY),
                new Term(-0.00011040, 164.3732571, 12.277005 * DAYS_PER_CENTURY),
                new Term(-0.00002539, 339.1643429, 16.369340 * DAYS_PER_CENTURY),
                new Term(-0.00000571, 153.9554286, 20.461675 * DAYS_PER_CENTURY));
    }

    private static RotationElements mars() {
        return plain(
                new Angle(
                        317.269202,
                        -0.10927547,
                        new Term(0.000068, 198.991226, 19139.4819985),
                        new Term(0.000238, 226.292679, 38280.8511281),
                        new Term(0.000052, 249.663391, 57420.7251593),
                        new Term(0.000009, 266.183510, 76560.6367950),
                        new Term(0.419057, 79.398797, 0.5042615)),
                new Angle(
                        54.432516,
                        -0.05827105,
                        new Term(0.000051, 122.433576, 19139.9407476),
                        new Term(0.000141, 43.058401, 38280.8753272),
                        new Term(0.000031, 57.663379, 57420.7517205),
                        new Term(0.000005, 79.476401, 76560.6495004),
                        new Term(1.591274, 166.325722, 0.5042615)),
                176.049863,
                350.891982443297,
                new Term(0.000145, 129.071773, 19140.0328244),
                new Term(0.000157, 36.352167, 38281.0473591),
                new Term(0.000040, 56.668646, 57420.9295360),
                new Term(0.000001, 67.364003, 76560.2552215),
                new Term(0.000001, 104.792680, 95700.4387578),
                new Term(0.584542, 95.391654, 0.5042615));
    }

    private static RotationElements jupiter() {
        double[][] arguments = {
            {99.360714, 4850.4046},
            {175.895369, 1191.9605},
            {300.323162, 262.5475},
            {114.012305, 6070.2476},
            {49.511251, 64.3000}
        };
        return new RotationElements(
                new Angle(268.056595, -0.006499, terms(arguments, 0.000117, 0.000938, 0.001432, 0.000030, 0.002150)),
                new Angle(64.495303, 0.002413, terms(arguments, 0.000050, 0.000404, 0.000617, -0.000013, 0.000926)),
                Map.of(
                        RotationSystem.I, new Meridian(67.10, 877.900),
                        RotationSystem.II, new Meridian(43.30, 870.270),
                        RotationSystem.III, new Meridian(284.95, 870.5360000)));
    }

    private static RotationElements saturn() {
        return new RotationElements(
                new Angle(40.589, -0.036),
                new Angle(83.537, -0.004),
                Map.of(
                        RotationSystem.I, new Meridian(227.2037, 844.3),
                        RotationSystem.III, new Meridian(38.90, 810.7939024)));
    }

    private static RotationElements neptune() {
        double[][] argument = {{357.85, 52.316}};
        return plain(
                new Angle(299.36, 0, terms(argument, 0.70)),
                new Angle(43.46, 0, terms(argument, -0.51)),
                249.978,
                541.1397757,
                terms(argument, -0.48));
    }

    private static Term[] terms(double[][] arguments, double... amplitudesDeg) {
        Term[] terms = new Term[amplitudesDeg.length];
        for (int i = 0; i < terms.length; i++) {
            terms[i] = new Term(amplitudesDeg[i], arguments[i][0], arguments[i][1]);
        }
        return terms;
    }
}
