package org.epochrome.session.locate;

import java.util.Optional;
import org.epochrome.disk.DarkLevels;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.NoiseRatio;
import org.epochrome.image.Plane;
import org.epochrome.text.Message;

/** By what a frame looks encoded for a screen. */
enum EncodingSign {
    BRIGHT_SKY(Message.of("processing.brightSky")),
    RARE_LEVELS(Message.of("processing.rareLevels")),
    NOISY_LEVELS(Message.of("processing.noisyLevels"));

    /**
     * Noise of the disk over that of the sky, below which a bright sky looks encoded. Linear scenes have 4.6 and more and Hubble
     * frames 13 and more, scenes of gamma 2.2 have 0.9 to 1.4.
     */
    private static final double EVEN_NOISE = 1.5;
    /** Brightness of such a sky, as a part of the disk's: a pedestal of 0.02 is encoded as 0.17. Linear scenes have at most 0.11. */
    private static final double BRIGHT = 0.15;
    /** Noise of the disk over that of the sky, below which a dark sky looks encoded; linear scenes have 1 and more, in eight bits with little noise too. */
    private static final double REVERSED_NOISE = 0.8;
    /** Part of the sky that has the frame's least value if it was cut off; half of it if the sky is cut off at its mean. */
    private static final double CUT = 0.25;
    /** Exponent of the darkest levels from which they look encoded. Linear scenes have 1.0 at most, scenes of gamma 2.2 1.7 to 2.4. */
    private static final double RARE = 1.25;
    /** Standard errors by which it must exceed 1. */
    private static final double SURE = 3;
    /** Noise of the limb's foot over that of the disk from which a frame looks encoded. Linear scenes have 1.25 at most, sRGB 1.9 and more. */
    private static final double NOISY_FOOT = 1.4;
    /** Noise in steps of the levels, so that it is noise and not their spacing. */
    private static final double LEAST_STEPS = 2.5;
    /** Blur below which the pixels make the limb's foot look noisy, pixels. */
    private static final double LEAST_BLUR_PX = 0.9;

    private final Message words;

    EncodingSign(Message words) {
        this.words = words;
    }

    /** Whether the sky of a frame was not cut off at its least value. */
    static boolean showsSky(Plane plane, Globe globe, FittedDisk fit) {
        return DarkLevels.of(plane, globe, fit).cutPart() < CUT;
    }

    /** Why, for a sentence. */
    Message words() {
        return words;
    }

    /**
     * The sign that a frame shows, if it shows one.
     *
     * @param plane its pixels
     * @param globe aspect of the body
     * @param fit its disk, fitted as if the frame were linear
     */
    static Optional<EncodingSign> in(Plane plane, Globe globe, FittedDisk fit) {
        NoiseRatio noise = NoiseRatio.of(plane, globe, fit);
        if (fit.background() > BRIGHT * fit.brightness()) {
            return noise.diskToSky() < EVEN_NOISE ? Optional.of(BRIGHT_SKY) : Optional.empty();
        }
        DarkLevels dark = DarkLevels.of(plane, globe, fit);
        if (dark.cutPart() < CUT) {
            return noise.diskToSky() < REVERSED_NOISE && noise.skySteps() >= LEAST_STEPS
                    ? Optional.of(NOISY_LEVELS)
                    : Optional.empty();
        }
        if (dark.exponent() > Math.max(RARE, 1 + SURE * dark.sigma())) {
            return Optional.of(RARE_LEVELS);
        }
        boolean noisy = noise.footToDisk() > NOISY_FOOT
                && noise.footSteps() >= LEAST_STEPS
                && fit.shading().blurPx() >= LEAST_BLUR_PX;
        return noisy ? Optional.of(NOISY_LEVELS) : Optional.empty();
    }
}
