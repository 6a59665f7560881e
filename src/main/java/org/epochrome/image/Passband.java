package org.epochrome.image;

import org.epochrome.text.Message;

/**
 * The wavelengths that a filter lets through, as a top hat.
 *
 * @param fromNm shorter edge, nanometres
 * @param toNm longer edge, nanometres
 */
public record Passband(double fromNm, double toNm) {
    private static final double SHORTEST_NM = 200;
    private static final double LONGEST_NM = 2500;

    public Passband {
        if (!isValid(fromNm, toNm)) {
            throw new IllegalArgumentException(Message.text("value.passband", fromNm, toNm));
        }
    }

    /** Whether two wavelengths in nm are the edges of a passband: the shorter one first, both from 200 to 2500 nm. */
    public static boolean isValid(double fromNm, double toNm) {
        return fromNm >= SHORTEST_NM && toNm > fromNm && toNm <= LONGEST_NM;
    }

    /** The passband about the same middle, wider by a part; its edges stay between 200 and 2500 nm. */
    public Passband widened(double part) {
        double half = 0.5 * (toNm - fromNm) * (1 + part);
        return new Passband(Math.max(SHORTEST_NM, effectiveNm() - half), Math.min(LONGEST_NM, effectiveNm() + half));
    }

    /** The passband with both edges moved to longer waves; they stay between 200 and 2500 nm. */
    public Passband movedBy(double nm) {
        return new Passband(Math.max(SHORTEST_NM, fromNm + nm), Math.min(LONGEST_NM, toNm + nm));
    }

    /** The middle of the passband, nanometres. */
    public double effectiveNm() {
        return 0.5 * (fromNm + toNm);
    }
}
