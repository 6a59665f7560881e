package org.epochrome.io.raster;

import java.awt.color.ICC_Profile;
import java.awt.color.ICC_ProfileGray;
import java.awt.color.ICC_ProfileRGB;
import java.awt.color.ProfileDataException;
import java.util.Optional;
import org.epochrome.image.Encoding;

/** The encoding that a picture file declares. Many programs write that without asking whether it is true. */
final class TaggedEncoding {
    /** A gamma chunk holds 100000 times the exponent of encoding (PNG, second edition, section 11.3.3.2). */
    private static final double GAMMA_UNIT = 100_000;
    /** Exponents nearer to 1 change nothing that matters. */
    private static final double LINEAR_WITHIN = 0.02;
    /** What sRGB makes of the middle of its scale, and how near to it another curve counts as sRGB. */
    private static final double SRGB_MIDDLE = 0.2140;

    private static final double SAME_CURVE = 0.01;

    private TaggedEncoding() {}

    /** By the number in the gamma chunk of a PNG file. */
    static Optional<Encoding> ofGammaChunk(long stored) {
        return stored > 0 ? power(GAMMA_UNIT / stored) : Optional.empty();
    }

    /** By an ICC profile; empty if it cannot be read or is neither grey nor RGB. */
    static Optional<Encoding> ofProfile(byte[] profile) {
        try {
            ICC_Profile read = ICC_Profile.getInstance(profile);
            if (read instanceof ICC_ProfileRGB rgb) {
                return ofRgb(rgb);
            }
            return read instanceof ICC_ProfileGray grey ? ofGrey(grey) : Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Optional<Encoding> ofRgb(ICC_ProfileRGB profile) {
        try {
            return power(profile.getGamma(ICC_ProfileRGB.GREENCOMPONENT));
        } catch (ProfileDataException tabulated) {
            return curve(profile.getTRC(ICC_ProfileRGB.GREENCOMPONENT));
        }
    }

    private static Optional<Encoding> ofGrey(ICC_ProfileGray profile) {
        try {
            return power(profile.getGamma());
        } catch (ProfileDataException tabulated) {
            return curve(profile.getTRC());
        }
    }

    private static Optional<Encoding> power(double gamma) {
        return Math.abs(gamma - 1) > LINEAR_WITHIN && gamma >= 0.2 && gamma <= 5
                ? Optional.of(Encoding.power(Math.rint(100 * gamma) / 100))
                : Optional.empty();
    }

    /** A tabulated curve is recognised by its middle. */
    private static Optional<Encoding> curve(short[] table) {
        double middle = (table[table.length / 2] & 0xffff) / 65535.0;
        return Math.abs(middle - SRGB_MIDDLE) < SAME_CURVE
                ? Optional.of(Encoding.SRGB)
                : power(Math.log(middle) / Math.log(0.5));
    }
}
