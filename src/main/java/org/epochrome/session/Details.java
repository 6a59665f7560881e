package org.epochrome.session;

import java.util.Arrays;
import java.util.List;
import org.epochrome.align.Detail;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Unsmear;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.Turning.CloseUp;

/** The exposures' detail without its smear, on common pixels, which are no finer than the blur deserves. */
final class Details {
    /**
     * Grain, in lengths of a smear, below which detail cannot be restored: beyond the smear's first zero. Details are
     * compared at one grain, for a difference would pass for a shift.
     */
    private static final double TRUSTED = 0.2;

    /** Scales of one camera differ by less. */
    private static final double ALMOST = 0.02;

    private final Schedule schedule;
    private final Turning turning;
    private final List<Plane> restored;
    private final int factor;
    private final CloseUp target;
    private final double[] leastGrainPx;
    private final double blurPx;

    /**
     * @param planes pixels of the exposures
     * @param fits where the disks lie
     * @param blurPx blur that the common pixels shall have at least
     */
    Details(
            Schedule schedule,
            Turning turning,
            List<Plane> planes,
            List<FittedDisk> fits,
            double blurPx,
            Memory memory,
            Progress progress) {
        FittedDisk reference = fits.get(schedule.reference());
        this.schedule = schedule;
        this.turning = turning;
        factor = Math.max(1, (int) (reference.shading().blurPx() / blurPx));
        target = turning.closeUp(reference).binned(factor, reference);
        this.blurPx = reference.shading().blurPx() / factor;
        leastGrainPx = fits.stream()
                .mapToDouble(f -> TRUSTED
                        * f.shading().smear().lengthPx()
                        * reference.disk().equatorialRadiusPx()
                        / f.disk().equatorialRadiusPx()
                        / factor)
                .toArray();
        restored = new PlaneStore(
                        planes.size(), i -> restored(i, planes.get(i), fits.get(i), progress), memory.heldBytes())
                .filled();
    }

    private Plane restored(int index, Plane plane, FittedDisk fit, Progress progress) {
        Globe globe = Globe.of(schedule.exposures().get(index).aspect());
        int own = ownFactor(fit);
        return Unsmear.inPlace(Binning.by(own, plane), fit.binned(own), globe, progress);
    }

    /** Frames of another scale are binned to about the common pixels, never further. */
    private int ownFactor(FittedDisk fit) {
        double larger =
                fit.disk().equatorialRadiusPx() / (factor * target.view().disk().equatorialRadiusPx());
        return Math.max(1, (int) (factor * larger + ALMOST));
    }

    /** Pixels of the reference frame along the side of a common pixel. */
    int factor() {
        return factor;
    }

    /** Grain on the common pixels below which an exposure's detail is not to be trusted. */
    double leastGrainPx(int index) {
        return leastGrainPx[index];
    }

    /** Whether that grain exceeds the reference's blur by a factor. */
    boolean isCoarse(int index, double factor) {
        return leastGrainPx[index] > factor * blurPx;
    }

    /**
     * The detail of an exposure, softened so that all exposures' can be compared.
     *
     * @param place where its disk lies
     * @param turned whether it is turned to the epoch, else it is only moved
     */
    Detail of(int index, FittedDisk place, boolean turned, Progress progress) {
        return of(index, place, turned, Arrays.stream(leastGrainPx).max().orElse(0), progress);
    }

    /**
     * The detail of an exposure.
     *
     * @param place where its disk lies
     * @param turned whether it is turned to the epoch, else it is only moved
     * @param grainPx grain that it is softened to at least, on the common pixels
     */
    Detail of(int index, FittedDisk place, boolean turned, double grainPx, Progress progress) {
        progress.check();
        return turning.detail(
                restored.get(index),
                place.binned(ownFactor(place)).unsmeared(),
                schedule.exposures().get(index).aspect(),
                target,
                grainPx,
                turned,
                progress);
    }
}
