package org.epochrome.ephemeris.body;

/**
 * What frames can show of a planet's moons.
 *
 * @param visible whether they can show its moons at all
 * @param transits whether they can tell a moon or shadow in front of the disk from markings
 */
public record MoonVisibility(boolean visible, boolean transits) {
    static MoonVisibility of(FactsFile file) {
        return new MoonVisibility(file.yes("moons.visible"), file.yes("moons.transits"));
    }
}
