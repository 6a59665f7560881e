package org.epochrome.image;

import java.util.Locale;
import java.util.Objects;
import org.epochrome.text.Message;

/**
 * How samples stand for light, full scale being 1.
 *
 * @param curve the kind of curve
 * @param gamma exponent of a power law: light = sample ^ gamma; 1 for the other curves
 */
public record Encoding(Curve curve, double gamma) {
    /** Samples are proportional to light. */
    public static final Encoding LINEAR = new Encoding(Curve.LINEAR, 1);
    /** Samples follow IEC 61966-2-1. */
    public static final Encoding SRGB = new Encoding(Curve.SRGB, 1);

    private static final String GAMMA = "gamma=";
    private static final double MOST_GAMMA = 5;

    /** The kinds of curves. */
    public enum Curve {
        LINEAR,
        SRGB,
        POWER
    }

    public Encoding {
        Objects.requireNonNull(curve);
        if (!(gamma >= 1 / MOST_GAMMA && gamma <= MOST_GAMMA)) {
            throw new IllegalArgumentException(Message.text("value.gamma"));
        }
    }

    /** Light is the sample raised to this power, 0.2 to 5. */
    public static Encoding power(double gamma) {
        return new Encoding(Curve.POWER, gamma);
    }

    /**
     * Reads an encoding as {@link #word()} writes it.
     *
     * @throws IllegalArgumentException if it is none
     */
    public static Encoding of(String word) {
        String plain = word.strip().toLowerCase(Locale.ROOT);
        if (plain.equals("linear")) {
            return LINEAR;
        }
        if (plain.equals("srgb")) {
            return SRGB;
        }
        if (plain.matches("gamma=[0-9.]+")) {
            try {
                return power(Double.parseDouble(plain.substring(GAMMA.length())));
            } catch (NumberFormatException e) {
                throw new IllegalArgumentException(Message.text("value.gammaNumber", word), e);
            }
        }
        throw new IllegalArgumentException(Message.text("value.encoding", word));
    }

    /** Its word: linear, srgb, gamma=2.2. */
    public String word() {
        return curve == Curve.POWER ? GAMMA + gamma : curve.name().toLowerCase(Locale.ROOT);
    }

    /** Whether samples are proportional to light. */
    public boolean isLinear() {
        return curve == Curve.LINEAR;
    }

    /** The light that a sample stands for; below zero the curve is continued symmetrically, NaN stays NaN. */
    public float light(float sample) {
        return switch (curve) {
            case LINEAR -> sample;
            case SRGB -> (float) Math.copySign(srgb(Math.abs(sample)), sample);
            case POWER -> (float) Math.copySign(Math.pow(Math.abs(sample), gamma), sample);
        };
    }

    /** IEC 61966-2-1, clause 5.2. */
    private static double srgb(double sample) {
        return sample <= 0.04045 ? sample / 12.92 : Math.pow((sample + 0.055) / 1.055, 2.4);
    }
}
