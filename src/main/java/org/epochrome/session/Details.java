package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.align.Detail;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Shading;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.image.Smear;
import org.epochrome.job.Progress;
import org.epochrome.session.Turning.CloseUp;
import org.epochrome.turn.Turned;

/**
 * The exposures' detail on common pixels, which are no finer than the blur deserves. What is compared is made alike first:
 * dispersion draws out every band in its own way, so each exposure is drawn out as the others are as well. A difference
 * would pass for a shift, and to undo the smears would raise noise that is alike over their length.
 */
final class Details {
    /** Scales of one camera differ by less. */
    private static final double ALMOST = 0.02;

    /** Detail is softened in so many steps at most, by a factor of the square root of two each. */
    private static final int STEPS = 5;

    /** Part that noise may have in the mean square of the slopes. */
    private static final double NOISE = 0.2;

    /** Variance of a spot that averages one pixel. */
    private static final double PIXEL = 1 / (4 * Math.PI);

    private final Schedule schedule;
    private final Turning turning;
    private final List<Plane> planes;
    private final int factor;
    private final CloseUp target;

    /**
     * @param planes pixels of the exposures
     * @param fits where the disks lie
     * @param blurPx blur that the common pixels shall have at least
     */
    Details(Schedule schedule, Turning turning, List<Plane> planes, List<FittedDisk> fits, double blurPx) {
        FittedDisk reference = fits.get(schedule.reference());
        this.schedule = schedule;
        this.turning = turning;
        this.planes = planes;
        factor = Math.max(1, (int) (reference.shading().blurPx() / blurPx));
        target = turning.closeUp(reference).binned(factor, reference);
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

    /**
     * An exposure on the common pixels.
     *
     * @param turned the exposure
     * @param shading its shading there
     * @param noise standard deviation of a common pixel, as a part of the disk's light, were it not alike on pixels that are
     *     larger
     */
    record Seen(Turned turned, Shading shading, double noise) {
        /** Over how many blurs dispersion draws it out. */
        double drawnBlurs() {
            return shading.smear().lengthPx() / shading.blurPx();
        }
    }

    /**
     * An exposure on the common pixels.
     *
     * @param place where its disk lies
     * @param turned whether it is turned to the epoch, else it is only moved
     */
    Seen sight(int index, FittedDisk place, boolean turned, Progress progress) {
        progress.check();
        int own = ownFactor(place);
        Plane plane = Binning.by(own, planes.get(index));
        FittedDisk fit = place.binned(own);
        return new Seen(
                turning.turned(plane, fit, schedule.exposures().get(index).aspect(), target, turned, progress),
                place.shading().carried(place.disk(), target.view().disk()),
                FrameLight.of(plane, fit).noise()
                        * target.view().disk().equatorialRadiusPx()
                        / fit.disk().equatorialRadiusPx());
    }

    /** The detail of some exposures, blurred and drawn out alike, so far that noise is a small part of it. */
    List<Detail> alike(List<Seen> sights) {
        double blur = sights.stream().mapToDouble(s -> s.shading.blurPx()).max().orElse(0);
        double square = 0;
        List<Turned> drawn = new ArrayList<>();
        for (int i = 0; i < sights.size(); i++) {
            square += Math.pow(sights.get(i).shading.smear().lengthPx(), 2);
            drawn.add(sights.get(i).turned);
            for (int k = 0; k < sights.size(); k++) {
                drawn.set(
                        i,
                        k == i
                                ? drawn.get(i)
                                : drawn.get(i).smeared(sights.get(k).shading.smear()));
            }
        }
        List<Detail> result = new ArrayList<>();
        for (int step = 0; step <= STEPS; step++) {
            result.clear();
            boolean clear = true;
            for (int i = 0; i < sights.size(); i++) {
                Detail detail = Detail.of(
                        drawn.get(i),
                        target.view(),
                        sights.get(i).shading.blurPx(),
                        blur * Math.pow(2, 0.5 * step),
                        Math.sqrt(square));
                result.add(detail);
                clear &= isClear(sights, i, detail);
            }
            if (clear) {
                break;
            }
        }
        return List.copyOf(result);
    }

    /** Whether an exposure's detail has slopes in all directions that noise alone would hardly have. */
    private static boolean isClear(List<Seen> sights, int index, Detail detail) {
        double drawn = 0;
        double direction = 0;
        for (int k = 0; k < sights.size(); k++) {
            Smear smear = sights.get(k).shading.smear();
            if (k != index && smear != Smear.NONE) {
                drawn += Math.pow(smear.lengthPx(), 2);
                direction = smear.directionDeg();
            }
        }
        double own = Math.max(1, sights.get(index).shading.blurPx());
        double across = detail.grainPx() * detail.grainPx() - own * own + PIXEL;
        double along = across + drawn / 12;
        double power = Math.pow(sights.get(index).noise, 2) / (4 * Math.PI * Math.sqrt(along * across));
        return detail.clearOf(power / (2 * along), power / (2 * across), direction) > 1 / NOISE;
    }
}
