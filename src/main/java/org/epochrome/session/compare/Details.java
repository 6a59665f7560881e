package org.epochrome.session.compare;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.align.Detail;
import org.epochrome.align.LimbDetail;
import org.epochrome.align.Shift;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Shading;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.Turning.CloseUp;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.turn.Turned;

/**
 * The exposures' detail on common pixels, which are no finer than the blur deserves. What is compared is made alike first:
 * dispersion smears every band in its own way, so each exposure is also smeared as the others are. A difference
 * would be taken for a shift, and to undo the smears would raise noise that is alike over their length.
 */
public final class Details {
    /** Scales of one camera differ by less. */
    private static final double ALMOST = 0.02;

    /** Sizes of markings that are compared apart, in blurs: finer detail weighs more for its size, coarser has less noise. */
    private static final double[] WIDTHS = {0.35, 0.7, 1.4, 2.8};

    /** Part of what surrounds a place that must be seen for it to be compared: edges lie still and would pass for markings. */
    private static final double WITHIN = 0.9;

    /** Part that noise may have in the mean square of the slopes. */
    private static final double NOISE = 0.5;

    /** Variance of a spot that averages one pixel. */
    private static final double PIXEL = 1 / (4 * Math.PI);

    private final Turning turning;
    private final int factor;
    private final CloseUp target;

    /**
     * @param reference disk of the frame on whose pixels the result lies
     * @param blurPx blur that the common pixels shall have at least
     */
    public Details(Turning turning, FittedDisk reference, double blurPx) {
        this.turning = turning;
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
    public int factor() {
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
     * A frame on the common pixels.
     *
     * @param turned whether it is turned to the epoch, else it is only moved
     */
    public Seen sight(WorkingFrame frame, boolean turned, Progress progress) {
        progress.check();
        FittedDisk place = frame.disk();
        int own = ownFactor(place);
        Plane plane = Binning.by(own, frame.pixels());
        FittedDisk fit = place.binned(own);
        return new Seen(
                turning.turned(frame.with(() -> plane).at(fit), target, turned, progress),
                place.shading().carried(place.disk(), target.view().disk()),
                FrameLight.of(plane, fit).noise()
                        * target.view().disk().equatorialRadiusPx()
                        / fit.disk().equatorialRadiusPx());
    }

    /**
     * The detail of some exposures, blurred and smeared alike, the finest first; without sizes at which noise rules, but
     * always with the coarsest.
     */
    public List<List<Detail>> alike(List<Seen> sights) {
        double blur = sights.stream().mapToDouble(s -> s.shading.blurPx()).max().orElse(0);
        List<List<Detail>> result = new ArrayList<>();
        int noisy = 0;
        for (int i = 0; i < sights.size(); i++) {
            List<Detail> parts = drawn(sights, i, blur);
            while (noisy < parts.size() - 1 && !isClear(sights, i, parts.get(noisy), noisy, blur)) {
                noisy++;
            }
            result.add(parts);
        }
        List<List<Detail>> clear = new ArrayList<>();
        for (List<Detail> parts : result) {
            clear.add(parts.subList(noisy, parts.size()));
        }
        return clear;
    }

    /** By how much an exposure, not turned, lies off the model of its disk along the limb, common pixels. */
    public Shift limbShift(Seen moved) {
        return LimbDetail.shift(moved.turned, target.view(), moved.shading.blurPx(), moved.shading.smear());
    }

    /** An exposure's detail, smeared as the others are as well. */
    private List<Detail> drawn(List<Seen> sights, int index, double blur) {
        double square = 0;
        Turned drawn = sights.get(index).turned;
        for (int k = 0; k < sights.size(); k++) {
            Smear smear = sights.get(k).shading.smear();
            square += Math.pow(smear.lengthPx(), 2);
            drawn = k == index ? drawn : drawn.smeared(smear);
        }
        return Detail.parts(
                drawn, target.view(), sights.get(index).shading.blurPx(), blur, Math.sqrt(square), WITHIN, WIDTHS);
    }

    /** Whether a part of an exposure's detail has slopes in all directions that noise alone would hardly have. */
    private static boolean isClear(List<Seen> sights, int index, Detail detail, int part, double blur) {
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
        double grain = Math.max(own, blur);
        double fine = grain * grain * (1 + WIDTHS[part] * WIDTHS[part]) - own * own + PIXEL;
        double coarse = grain * grain * (1 + WIDTHS[part + 1] * WIDTHS[part + 1]) - own * own + PIXEL;
        NoiseSlopes slopes = NoiseSlopes.of(fine, coarse, drawn / 12);
        double power = Math.pow(sights.get(index).noise, 2);
        return detail.clearOf(power * slopes.along(), power * slopes.across(), direction) > 1 / NOISE;
    }
}
