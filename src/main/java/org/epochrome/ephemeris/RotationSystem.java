package org.epochrome.ephemeris;

/** The longitude systems: Jupiter has I, II and III, Saturn I and III, every other planet a single one. */
public enum RotationSystem {
    I,
    II,
    III,
    SINGLE;

    /** The key of this system in reports: "I", "II", "III" or "single". */
    public String key() {
        return this == SINGLE ? "single" : name();
    }
}
