package org.epochrome.ephemeris;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.ephemeris.body.Albedo;
import org.epochrome.ephemeris.body.BodyFacts;
import org.epochrome.ephemeris.body.CloudRotation;
import org.epochrome.ephemeris.body.MoonVisibility;
import org.epochrome.ephemeris.body.RingFacts;

/**
 * The planets that can be combined. What is known of each stands in a resource of its name, {@link BodyFacts}; whoever
 * needs to know asks for it here and not which planet it is.
 */
public enum Body {
    MERCURY,
    VENUS,
    MARS,
    JUPITER,
    SATURN,
    URANUS,
    NEPTUNE;

    /** Flattening from which an outline shows the axis (common practice, no source). */
    private static final double CLEAR_FLATTENING = 0.03;

    BodyFacts facts() {
        return BodyFacts.of(name());
    }

    public double equatorialRadiusKm() {
        return facts().equatorialRadiusKm();
    }

    public double polarRadiusKm() {
        return facts().polarRadiusKm();
    }

    /** Polar over equatorial radius, at most 1. */
    public double axisRatio() {
        return polarRadiusKm() / equatorialRadiusKm();
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
        return facts().rotation().prograde();
    }

    /** Longitude systems of this body, the one of its body-fixed frame first. */
    public List<RotationSystem> systems() {
        return RotationElements.of(this).systems();
    }

    public RotationSystem defaultSystem() {
        return systems().get(0);
    }

    /** The longitude system that the surface turns with by default; empty if it follows winds or clouds. */
    public Optional<RotationSystem> surfaceSystem() {
        boolean drifts = facts().wind().isPresent() || facts().clouds().isPresent();
        return drifts ? Optional.empty() : Optional.of(defaultSystem());
    }

    /** The winds that the surface turns with, if they are known. */
    public Optional<ZonalWind> wind() {
        return ZonalWind.of(this);
    }

    /** How its clouds turn, if a band shows them instead of the globe. */
    public Optional<CloudRotation> clouds() {
        return facts().clouds();
    }

    /** Whether the body has belts along its parallels. */
    public boolean belted() {
        return facts().belted();
    }

    /** Its rings, if it has some that show. */
    public Optional<RingFacts> rings() {
        return facts().rings();
    }

    /** Radius of globe and rings, equatorial radii rounded up to a hundredth; 1 without rings. */
    public double reachRadii() {
        return rings().map(r -> Math.ceil(100 * r.outerKm() / equatorialRadiusKm()) / 100)
                .orElse(1.0);
    }

    /** Its geometric albedos. */
    public Albedo albedo() {
        return facts().albedo();
    }

    /** What frames can show of its moons. */
    public MoonVisibility moons() {
        return facts().moons();
    }

    /** Two letters of its coordinates in maps, after the convention for planetary surfaces (Marmo et al. 2018). */
    public String mapLetters() {
        return facts().mapLetters();
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
