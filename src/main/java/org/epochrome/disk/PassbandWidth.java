package org.epochrome.disk;

/**
 * How wide a band's passband is by the length of its smear, which dispersion makes.
 *
 * @param widening part by which it is wider than assumed, about the same middle; negative if it is narrower
 * @param sigma standard error; infinite if the frame does not show it
 */
public record PassbandWidth(double widening, double sigma) {
    /** A width that the frame does not show. */
    public static final PassbandWidth UNKNOWN = new PassbandWidth(0, Double.POSITIVE_INFINITY);

    /** Whether the frame shows a width. */
    public boolean known() {
        return sigma < Double.POSITIVE_INFINITY;
    }
}
