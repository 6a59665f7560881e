package org.epochrome.demo.scene;

import java.util.List;
import org.epochrome.image.Band;
import org.epochrome.time.RecordingSpan;

/**
 * One recording to be made of a scene.
 *
 * @param band the filter
 * @param span when it ran
 * @param camera what took it
 * @param moments at how many instants, evenly spread over the span, the turning planet is averaged
 * @param towardsZenithArcsec dispersion: for each of some wavelengths across the passband, how far the air lifts that
 *     light towards the zenith against the undispersed image; empty for none
 * @param noise the noise of the stack
 */
public record Shot(
        Band band, RecordingSpan span, Camera camera, int moments, List<Double> towardsZenithArcsec, Noise noise) {
    public Shot {
        towardsZenithArcsec = List.copyOf(towardsZenithArcsec);
        if (moments < 1) {
            throw new IllegalArgumentException(
                    "A recording is the mean of at least one moment, not of " + moments + ".");
        }
    }

    /** A recording without dispersion and noise, the mean of five moments. */
    public static Shot ideal(Band band, RecordingSpan span, Camera camera) {
        return new Shot(band, span, camera, 5, List.of(), Noise.NONE);
    }

    public Shot dispersed(List<Double> byArcsec) {
        return new Shot(band, span, camera, moments, byArcsec, noise);
    }

    public Shot with(Noise other) {
        return new Shot(band, span, camera, moments, towardsZenithArcsec, other);
    }
}
