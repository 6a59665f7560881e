package org.epochrome.image;

/**
 * The wavelengths that a filter lets through, as a top hat.
 *
 * @param fromNm shorter edge, nanometres
 * @param toNm longer edge, nanometres
 */
public record Passband(double fromNm, double toNm) {
    public Passband {
        if (!isValid(fromNm, toNm)) {
            throw new IllegalArgumentException("A passband runs from a shorter to a longer wavelength between 200 and"
                    + " 2500 nm, not from " + fromNm + " to " + toNm + " nm.");
        }
    }

    /** Whether two wavelengths in nm are the edges of a passband: the shorter one first, both from 200 to 2500 nm. */
    public static boolean isValid(double fromNm, double toNm) {
        return fromNm >= 200 && toNm > fromNm && toNm <= 2500;
    }

    /** The middle of the passband, nanometres. */
    public double effectiveNm() {
        return 0.5 * (fromNm + toNm);
    }
}
