package org.epochrome.image.blur;

/**
 * How a band's smear depends on what is not known exactly about its light. The number of copies and their order are always the
 * same.
 */
@FunctionalInterface
public interface SmearModel {
    /**
     * The smear for a passband and a spectrum near the assumed ones.
     *
     * @param widening part by which the passband is wider than assumed, about the same middle; above -1
     * @param tilt of the spectrum: natural logarithm by which light grows from the middle of the assumed passband to its long-wave
     *     edge, and falls to the short-wave one, beyond the assumed light
     */
    Smear at(double widening, double tilt);

    /** The smear for what is assumed. */
    default Smear assumed() {
        return at(0, 0);
    }

    /** The model on an image whose pixels are larger by a factor. */
    default SmearModel binned(int factor) {
        return (widening, tilt) -> at(widening, tilt).on(0, 1.0 / factor, false);
    }

    /** A smear that is known exactly. */
    static SmearModel exactly(Smear smear) {
        return (widening, tilt) -> smear;
    }
}
