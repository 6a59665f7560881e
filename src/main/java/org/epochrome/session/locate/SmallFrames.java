package org.epochrome.session.locate;

import org.epochrome.align.Detail;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Binning;
import org.epochrome.job.Progress;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;

/** The exposures on few pixels, on which many postures can be tried. */
final class SmallFrames {
    /** Markings between so many blurs are compared. */
    private static final double FINE = 0.3;

    private static final double COARSE = 2.5;
    /** Where half of what surrounds a place is seen, it is compared. */
    private static final double WITHIN = 0.5;

    private static final double RADIUS_PX = 60;

    private final Turning turning;
    private final WorkingFrames small;

    /** @param frames with their disks so far */
    SmallFrames(Turning turning, WorkingFrames frames, Memory memory) {
        this.turning = turning;
        small = frames.with(new PlaneStore(
                        frames.size(),
                        i -> Binning.by(
                                factor(frames.get(i).disk()), frames.get(i).pixels()),
                        memory.heldBytes()))
                .map(f -> f.at(f.disk().binned(factor(f.disk()))));
    }

    private static int factor(FittedDisk fit) {
        return Math.max(1, (int) (fit.disk().equatorialRadiusPx() / RADIUS_PX));
    }

    /**
     * The detail of an exposure, turned to the epoch.
     *
     * @param own orientation of the exposure
     * @param reference orientation of the reference, in which the result lies
     */
    Detail detail(int index, ImageOrientation.Angle own, ImageOrientation.Angle reference, Progress progress) {
        FittedDisk place = small.reference().disk();
        FittedDisk to = place.at(reference.on(place.disk()));
        WorkingFrame frame = small.get(index);
        FittedDisk fit = frame.disk().at(own.on(frame.disk().disk()));
        Turning.CloseUp window = turning.closeUp(to);
        return Detail.parts(
                        turning.turned(frame.at(fit), window, true, progress),
                        window.view(),
                        fit.shading().carried(fit.disk(), window.view().disk()).blurPx(),
                        0,
                        fit.shading().smear().lengthPx(),
                        WITHIN,
                        FINE,
                        COARSE)
                .get(0);
    }
}
