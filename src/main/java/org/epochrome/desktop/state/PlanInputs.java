package org.epochrome.desktop.state;

import org.epochrome.choice.Choices;

/**
 * What is typed on the page that plans a night, as it is typed.
 *
 * @param planet its name
 * @param latitude degrees, north positive or with N or S
 * @param longitude degrees, east positive or with E or W
 * @param height of the site, m; empty for sea level
 * @param offset of the clock from UTC; empty for UTC
 * @param aperture of the telescope, mm
 * @param obstruction its diameter, per cent of the aperture's; empty for none
 * @param focalLength with all lenses, mm
 * @param pixel width of a pixel, micrometres
 * @param seeing full width at half maximum, arcsec; empty if it is not known
 * @param bands by name, separated by commas
 * @param horizon altitude up to which the view is obstructed, degrees; empty for none
 * @param feature whose passages over the central meridian are wanted, as NAME=SYSTEM:LON; empty for none
 */
public record PlanInputs(
        String planet,
        String latitude,
        String longitude,
        String height,
        String offset,
        String aperture,
        String obstruction,
        String focalLength,
        String pixel,
        String seeing,
        String bands,
        String horizon,
        String feature)
        implements Choices<PlanInputs> {
    /** What stands there at first: a telescope as many have. */
    public static final PlanInputs USUAL =
            new PlanInputs("Jupiter", "", "", "", "", "200", "30", "4000", "2.9", "1", "R,G,B", "", "");
}
