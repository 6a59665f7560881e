package org.epochrome.colour;

import java.util.Locale;
import java.util.Optional;
import org.epochrome.ephemeris.Body;

/** Which colour the whole disk of a planet gets. */
public enum White {
    /** The planet's own, by its published albedos: sunlight is white. */
    PHOTOMETRIC,
    /** Grey: equal means of red, green and blue over the disk. */
    DISK,
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

    /**
     * Mean linear red and blue of the disk relative to green.
     *
     * <p>PHOTOMETRIC takes the geometric albedos in R, V and B of Mallama, Krobusek & Pavlov 2017 (Icarus 282, 19) for red,
     * green and blue; the numbers are from memory and good to some per cent.
     *
     * @return red over green and blue over green; empty to leave the colours as they are
     */
    Optional<Ratios> ratios(Body body) {
        return switch (this) {
            case NONE -> Optional.empty();
            case DISK -> Optional.of(new Ratios(1, 1));
            case PHOTOMETRIC ->
                Optional.of(
                        switch (body) {
                            case MERCURY -> albedos(0.158, 0.142, 0.105);
                            case VENUS -> albedos(0.700, 0.689, 0.658);
                            case MARS -> albedos(0.288, 0.170, 0.088);
                            case JUPITER -> albedos(0.555, 0.538, 0.443);
                            case SATURN -> albedos(0.568, 0.499, 0.339);
                            case URANUS -> albedos(0.264, 0.488, 0.561);
                            case NEPTUNE -> albedos(0.226, 0.442, 0.562);
                        });
        };
    }

    private static Ratios albedos(double red, double green, double blue) {
        return new Ratios(red / green, blue / green);
    }

    record Ratios(double redToGreen, double blueToGreen) {}
}
