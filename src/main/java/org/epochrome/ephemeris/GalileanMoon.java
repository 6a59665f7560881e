package org.epochrome.ephemeris;

/** The four large moons of Jupiter. Radii: Archinal et al. 2018 (IAU WGCCRE 2015), table 5, means. */
public enum GalileanMoon {
    IO(1, "Io", 1821.49),
    EUROPA(2, "Europa", 1560.8),
    GANYMEDE(3, "Ganymede", 2631.2),
    CALLISTO(4, "Callisto", 2410.3);

    private final int number;
    private final String displayName;
    private final double radiusKm;

    GalileanMoon(int number, String displayName, double radiusKm) {
        this.number = number;
        this.displayName = displayName;
        this.radiusKm = radiusKm;
    }

    /** Jupiter I to IV: 1 to 4 from the inside. */
    public int number() {
        return number;
    }

    public String displayName() {
        return displayName;
    }

    public double radiusKm() {
        return radiusKm;
    }
}
