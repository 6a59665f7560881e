package org.epochrome.plan.night;

/** How near to the Sun a planet stands in the sky, and so how dangerous it is to point a telescope at it. */
public enum SunCaution {
    /** At least 30 degrees from the Sun. */
    NONE,
    /** Within 30 degrees: only with precautions. */
    NEAR,
    /** Within 10 degrees: nothing is recommended. */
    TOO_NEAR;

    /** The caution at an elongation in degrees. */
    public static SunCaution at(double elongationDeg) {
        return elongationDeg < 10 ? TOO_NEAR : elongationDeg < 30 ? NEAR : NONE;
    }
}
