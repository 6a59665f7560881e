package org.epochrome.session;

import java.util.List;
import org.epochrome.align.Detail;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.Turning.CloseUp;

/** The exposures' detail on common pixels, which are no finer than the blur deserves. */
final class Details {
    private final Schedule schedule;
    private final Turning turning;
    private final List<Plane> planes;
    private final int factor;
    private final CloseUp target;

    /**
     * @param reference where the reference's disk lies
     * @param blurPx blur that the common pixels shall have at least
     */
    Details(Schedule schedule, Turning turning, List<Plane> planes, FittedDisk reference, double blurPx) {
        this.schedule = schedule;
        this.turning = turning;
        this.planes = planes;
        factor = Math.max(1, (int) (reference.shading().blurPx() / blurPx));
        target = turning.closeUp(reference).binned(factor, reference);
    }

    /** Pixels of the reference frame along the side of a common pixel. */
    int factor() {
        return factor;
    }

    /**
     * The detail of an exposure.
     *
     * @param place where its disk lies
     * @param turned whether it is turned to the epoch, else it is only moved
     */
    Detail of(int index, FittedDisk place, boolean turned, Progress progress) {
        progress.check();
        return turning.detail(
                Binning.by(factor, planes.get(index)),
                place.binned(factor),
                schedule.exposures().get(index).aspect(),
                target,
                turned,
                progress);
    }
}
