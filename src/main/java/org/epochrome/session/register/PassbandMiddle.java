package org.epochrome.session.register;

/**
 * Where the middle of a band's passband lies by the place of its plane in a one-shot-colour frame, which dispersion shifts.
 *
 * @param offsetNm by how much its waves are longer than assumed; negative if they are shorter
 * @param sigmaNm standard error; infinite if the frame does not show it
 */
public record PassbandMiddle(double offsetNm, double sigmaNm) {
    /** A middle that the frame does not show. */
    static final PassbandMiddle UNKNOWN = new PassbandMiddle(0, Double.POSITIVE_INFINITY);

    boolean known() {
        return sigmaNm < Double.POSITIVE_INFINITY;
    }
}
