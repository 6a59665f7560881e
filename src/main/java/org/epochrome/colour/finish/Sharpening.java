package org.epochrome.colour.finish;

import java.util.OptionalDouble;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.text.Message;

/**
 * How detail is brought out in a finished picture.
 *
 * @param deblur part of the blur that is taken off, 0 to 0.8
 * @param iterations of the restoration
 * @param smoothing weight of total variation in the restoration, 0 or more
 * @param gain how much detail at the peak of the curve is strengthened on top of that, 0 for not
 * @param peakPx scale at which it is strengthened most, pixels; empty for twice the blur
 * @param peakArcsec the same in arcseconds, in the place of pixels
 * @param octaves width of the curve over the logarithm of scale: standard deviation, in doublings
 * @param threshold noise below which detail is left as it is, in standard deviations
 * @param noiseReduction part of what does not stand out of the noise that is taken off, 0 to 1
 * @param detailOf what red, green and blue are strengthened by
 */
public record Sharpening(
        @Choice(option = "detail-curve") double deblur,
        @Choice(option = "detail-curve") int iterations,
        @Choice(option = "detail-curve") double smoothing,
        @Choice(option = "detail-curve") double gain,
        @Choice(option = "detail-scale") OptionalDouble peakPx,
        @Choice(option = "detail-scale") OptionalDouble peakArcsec,
        @Choice(option = "detail-curve") double octaves,
        @Choice(option = "detail-curve") double threshold,
        @Choice(option = "detail-curve") double noiseReduction,
        @Choice(key = "of", option = "detail-of") DetailOf detailOf)
        implements Choices<Sharpening> {
    /** What red, green and blue are strengthened by. */
    public enum DetailOf {
        /** All by the detail and the blur of the luminance, which keeps hues. */
        LUMINANCE,
        /** Each by its own. */
        BANDS
    }

    /** Without noise reduction. */
    public Sharpening(
            double deblur,
            int iterations,
            double smoothing,
            double gain,
            OptionalDouble peakPx,
            OptionalDouble peakArcsec,
            double octaves,
            double threshold,
            DetailOf detailOf) {
        this(deblur, iterations, smoothing, gain, peakPx, peakArcsec, octaves, threshold, 0, detailOf);
    }

    /** Leaves the picture as it is. */
    public static final Sharpening NONE = ofStrength(0);

    /** Common practice, no source: visibly crisper, but nothing that a look at the noise or at the limb would betray. */
    public static final Sharpening DEFAULT = ofStrength(0.5);

    public Sharpening {
        if (!(deblur >= 0 && deblur <= 0.8) || iterations < 0 || !(smoothing >= 0) || !(gain >= 0 && gain <= 10)) {
            throw new IllegalArgumentException(Message.text("value.sharpening"));
        }
        if (!(octaves > 0) || !(threshold >= 0) || !(peakPx.orElse(1) > 0) || !(peakArcsec.orElse(1) > 0)) {
            throw new IllegalArgumentException(Message.text("value.sharpeningCurve"));
        }
        if (!(noiseReduction >= 0 && noiseReduction <= 1)) {
            throw new IllegalArgumentException(Message.text("value.noiseReduction"));
        }
        if (peakPx.isPresent() && peakArcsec.isPresent()) {
            throw new IllegalArgumentException(Message.text("value.detailScale"));
        }
    }

    /**
     * One number for all.
     *
     * @param strength 0 (nothing) to 1
     */
    public static Sharpening ofStrength(double strength) {
        if (!(strength >= 0 && strength <= 1)) {
            throw new IllegalArgumentException(Message.text("value.detailStrength", strength));
        }
        return new Sharpening(
                0.6 * strength,
                15,
                0.004,
                0.6 * strength,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                1,
                3,
                DetailOf.LUMINANCE);
    }

    /** This sharpening with the highest gain at a scale in pixels. */
    public Sharpening peakingAt(double scalePx) {
        return peakingAt(OptionalDouble.of(scalePx), OptionalDouble.empty());
    }

    /** This sharpening with the highest gain at a scale in arcseconds. */
    public Sharpening peakingAtArcsec(double scaleArcsec) {
        return peakingAt(OptionalDouble.empty(), OptionalDouble.of(scaleArcsec));
    }

    /** This sharpening with its scale converted to pixels. */
    public Sharpening onPixels(double arcsecPerPx) {
        return peakArcsec.isPresent() ? peakingAt(peakArcsec.getAsDouble() / arcsecPerPx) : this;
    }

    private Sharpening peakingAt(OptionalDouble px, OptionalDouble arcsec) {
        return new Sharpening(
                deblur, iterations, smoothing, gain, px, arcsec, octaves, threshold, noiseReduction, detailOf);
    }

    /** Whether each band is strengthened by its own detail. */
    public boolean eachBand() {
        return detailOf == DetailOf.BANDS;
    }

    /** Whether it changes nothing. */
    public boolean isNone() {
        return deblur == 0 && gain == 0 && noiseReduction == 0;
    }

    /** The curve: what detail of a scale is strengthened by, on top of 1. */
    public double extraGain(double scalePx, double blurPx) {
        double away = Math.log(scalePx / peakPx.orElse(Math.max(2, 2 * blurPx))) / Math.log(2) / octaves;
        return gain * Math.exp(-0.5 * away * away);
    }
}
