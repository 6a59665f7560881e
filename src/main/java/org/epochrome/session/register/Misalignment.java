package org.epochrome.session.register;

import java.util.Locale;

/**
 * How far the bands of a colour picture lie off the reference frame's band, in the mean over the disk: the rms of the
 * distances, with the part that the measurement's own errors add taken off.
 *
 * @param px the rms, pixels of the output; NaN if it cannot be measured
 * @param sigmaPx its standard error, pixels; NaN if it cannot be measured
 * @param worstBand the band that lies farthest off; empty if there is only one band or it cannot be measured
 */
public record Misalignment(double px, double sigmaPx, String worstBand) {
    /** Beyond this standard error the figure does not distinguish a good picture from a bad one; see {@link #ACCEPTED_PX}. */
    private static final double USELESS_PX = 0.3;

    /** Bands that lie off by more show coloured edges; common practice, no source. */
    static final double ACCEPTED_PX = 0.3;

    /** The misalignment cannot be measured. */
    public static final Misalignment UNKNOWN = new Misalignment(Double.NaN, Double.NaN, "");

    /** A measured misalignment; unknown if the standard error is so large that the figure means nothing. */
    public static Misalignment of(double px, double sigmaPx, String worstBand) {
        return sigmaPx > Math.max(USELESS_PX, px) ? UNKNOWN : new Misalignment(px, sigmaPx, worstBand);
    }

    /** For people, with the standard error and the unit. */
    public String text() {
        return known() ? String.format(Locale.ROOT, "%.2f \u00b1 %.2f px", px, sigmaPx) : "unknown";
    }

    public boolean known() {
        return !Double.isNaN(px);
    }

    /** Whether it is clearly more than is accepted. */
    public boolean shows() {
        return known() && px > ACCEPTED_PX;
    }

    /** Whether it is larger than another by more than both standard errors together. */
    public boolean exceeds(Misalignment other) {
        return known() && other.known() && px - other.px > Math.hypot(sigmaPx, other.sigmaPx);
    }
}
