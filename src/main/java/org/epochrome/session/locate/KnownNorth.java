package org.epochrome.session.locate;

import java.util.Optional;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.text.Message;

/**
 * North of the reference frame, found otherwise than by its disk.
 *
 * @param northDeg the north angle
 * @param sigmaDeg its standard error
 * @param mirrored whether the frame is mirrored
 * @param sentence tells the user where north was taken from
 */
record KnownNorth(double northDeg, double sigmaDeg, boolean mirrored, Message sentence) {
    /** Standard error of a north angle in a header (common practice, no source). */
    private static final double HEADER_SIGMA_DEG = 0.1;

    /** North by the header of the reference frame, if all frames have one and none is mirrored against the others. */
    static Optional<KnownNorth> byHeaders(Schedule schedule) {
        Optional<Boolean> mirrored = schedule.referenceExposure().headerMirrored();
        boolean all = schedule.exposures().stream()
                .allMatch(e ->
                        e.headerNorthDeg().isPresent() && e.headerMirrored().equals(mirrored));
        if (!all) {
            return Optional.empty();
        }
        double north = schedule.referenceExposure().headerNorthDeg().orElseThrow();
        return Optional.of(
                new KnownNorth(north, HEADER_SIGMA_DEG, mirrored.orElse(false), Message.of("north.headers", north)));
    }
}
