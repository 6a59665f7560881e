package org.epochrome.session.locate;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.align.Detail;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;

/** The exposures on few pixels, on which many postures can be tried. */
final class SmallFrames {
    /** Markings between so many blurs are compared. */
    private static final double FINE = 0.3;

    private static final double COARSE = 2.5;
    /** Where half of what surrounds a place is seen, it is compared. */
    private static final double WITHIN = 0.5;

    private static final double RADIUS_PX = 60;

    private final Schedule schedule;
    private final Turning turning;
    private final List<Plane> planes;
    private final List<FittedDisk> fits = new ArrayList<>();

    /**
     * @param planes pixels of the exposures
     * @param found their disks so far
     */
    SmallFrames(Schedule schedule, Turning turning, List<Plane> planes, List<FittedDisk> found, Memory memory) {
        this.schedule = schedule;
        this.turning = turning;
        this.planes =
                new PlaneStore(planes.size(), i -> Binning.by(factor(found.get(i)), planes.get(i)), memory.heldBytes());
        found.forEach(f -> fits.add(f.binned(factor(f))));
    }

    private static int factor(FittedDisk fit) {
        return Math.max(1, (int) (fit.disk().equatorialRadiusPx() / RADIUS_PX));
    }

    /**
     * The detail of an exposure, turned to the epoch.
     *
     * @param own posture of the exposure
     * @param reference posture of the reference, in which the result lies
     */
    Detail detail(int index, ImageOrientation.Angle own, ImageOrientation.Angle reference, Progress progress) {
        FittedDisk place = fits.get(schedule.reference());
        FittedDisk to = place.at(reference.on(place.disk()));
        FittedDisk fit = fits.get(index).at(own.on(fits.get(index).disk()));
        Turning.CloseUp window = turning.closeUp(to);
        return Detail.parts(
                        turning.turned(
                                planes.get(index), fit, schedule.exposures().get(index), window, true, progress),
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
