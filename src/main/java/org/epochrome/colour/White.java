package org.epochrome.colour;

import java.util.Locale;
import java.util.Optional;

/** Which colour the whole disk of a planet gets. */
public enum White {
    /** The planet's own, by its published albedos: sunlight is white. */
    PHOTOMETRIC,
    /** Grey: equal means of red, green and blue over the disk. */
    DISK,
    /** What makes a sun-like star white, by gains that were measured. */
    SOLAR,
    /** As the camera saw it. */
    NONE;

    public static Optional<White> named(String text) {
        for (White white : values()) {
            if (white.name().equals(text.strip().toUpperCase(Locale.ROOT))) {
                return Optional.of(white);
            }
        }
        return Optional.empty();
    }
}
