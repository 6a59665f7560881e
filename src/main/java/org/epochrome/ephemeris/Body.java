package org.epochrome.ephemeris;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The planets that can be combined, with their figure. Radii: Archinal et al. 2018 (IAU WGCCRE 2015), table 4; Jupiter,
 * Saturn, Uranus and Neptune at one bar.
 */
public enum Body {
    MERCURY(2440.53, 2438.26, true, RotationSystem.SINGLE),
    VENUS(6051.8, 6051.8, false, RotationSystem.SINGLE),
    MARS(3396.19, 3376.20, true, RotationSystem.SINGLE),
    JUPITER(71492.0, 66854.0, true, RotationSystem.III, RotationSystem.I, RotationSystem.II),
    SATURN(60268.0, 54364.0, true, RotationSystem.III, RotationSystem.I),
    URANUS(25559.0, 24973.0, false, RotationSystem.SINGLE),
    NEPTUNE(24764.0, 24341.0, true, RotationSystem.SINGLE);

    /** Flattening from which an outline shows the axis (common practice, no source). */
    private static final double CLEAR_FLATTENING = 0.03;

    private final double equatorialRadiusKm;
    private final double polarRadiusKm;
    private final boolean prograde;
    private final List<RotationSystem> systems;

    Body(double equatorialRadiusKm, double polarRadiusKm, boolean prograde, RotationSystem... systems) {
        this.equatorialRadiusKm = equatorialRadiusKm;
        this.polarRadiusKm = polarRadiusKm;
        this.prograde = prograde;
        this.systems = List.of(systems);
    }

    public double equatorialRadiusKm() {
        return equatorialRadiusKm;
    }

    public double polarRadiusKm() {
        return polarRadiusKm;
    }

    /** Polar over equatorial radius, at most 1. */
    public double axisRatio() {
        return polarRadiusKm / equatorialRadiusKm;
    }

    /**
     * Polar over equatorial radius of the outline as seen from afar.
     *
     * @param centricLatitudeDeg planetocentric latitude of the observer
     */
    public double projectedAxisRatio(double centricLatitudeDeg) {
        double latitude = Math.toRadians(centricLatitudeDeg);
        return Math.hypot(Math.sin(latitude), axisRatio() * Math.cos(latitude));
    }

    /**
     * Whether the body turns eastward about its IAU north pole. Planetographic longitude then counts westward, else
     * (Venus, Uranus) eastward, so that the central meridian always grows with time.
     */
    public boolean prograde() {
        return prograde;
    }

    /** Longitude systems of this body, the one of its body-fixed frame first. */
    public List<RotationSystem> systems() {
        return systems;
    }

    public RotationSystem defaultSystem() {
        return systems.get(0);
    }

    /** Whether the body has belts along its parallels. */
    public boolean belted() {
        return switch (this) {
            case JUPITER, SATURN, URANUS, NEPTUNE -> true;
            case MERCURY, VENUS, MARS -> false;
        };
    }

    /** Whether the disk is flattened enough to show where its axis lies. */
    public boolean showsAxis() {
        return 1 - axisRatio() > CLEAR_FLATTENING;
    }

    /** The name for people: "Jupiter". */
    public String displayName() {
        return name().charAt(0) + name().substring(1).toLowerCase(Locale.ROOT);
    }

    /** The body of that English name, whatever its case. */
    public static Optional<Body> named(String text) {
        String wanted = text.strip().toUpperCase(Locale.ROOT);
        return Arrays.stream(values()).filter(b -> b.name().equals(wanted)).findFirst();
    }
}
