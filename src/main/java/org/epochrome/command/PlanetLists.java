package org.epochrome.command;

/** Lists of planets in texts of help, which must be constants. */
final class PlanetLists {
    static final String ALL = "Mercury, Venus, Mars, Jupiter, Saturn, Uranus or Neptune";
    /** Those whose outline does not show where the axis lies. */
    static final String WITHOUT_AXIS = "Mercury, Venus, Mars, Uranus and Neptune";

    private PlanetLists() {}
}
