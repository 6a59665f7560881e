package org.epochrome.disk;

import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Spline;
import org.epochrome.job.Progress;
import org.epochrome.job.Rows;

/**
 * Removes from a frame the blur by dispersion within its band: all of it, or, where it is lopsided enough to be seen, half of
 * it, after which the rest is the same to both sides. That half costs hardly any noise, and detail lies where its light's centre lies.
 *
 * <p>The disk itself is known: the picture of an even globe (and rings) with the smear is exchanged for the one with what shall be left of
 * it, so that no limb can ring. What the frame differs from that, markings of low contrast, is restored by conjugate gradients on the normal
 * equations (Hestenes and Stiefel 1952, J. Res. NBS 49, 409) with the known kernel, as a picture that is itself blurred by a part of the frame's
 * blur: that keeps noise from growing where there is no detail. They restore coarse detail first and are stopped when
 * a step finds no more than noise would (after Morozov 1966, Soviet Math. Dokl. 7, 414) or hardly anything. What is restored is smeared by
 * what shall be left; what was not explained by then is kept as it is, so nothing gets lost. Where the blur is large, detail is looked for on
 * coarser pixels, which hold all of it.
 */
public final class DispersionDeconvolution {
    private static final int MOST_STEPS = 12;
    /** Part by which a step must lower what is left on the disk. */
    private static final double WORTH_IT = 0.02;

    /** Part of a step that noise alone would ask for, below which no more is restored; found on invented scenes. */
    private static final double NOISE = 0.5;

    /** Part of the disk's brightness that counts as sky, where only noise could be sharpened. */
    private static final float DARK = 0.01f;

    /** Detail as fine as the blur that leans by less is left alone, pixels. */
    private static final double LEAST_LEAN_PX = 0.01;

    private static final double LEAST_BLUR_PX = 0.7;

    /** Blur of all that is restored, in the frame's own blurs: what is finer is noise. Found on invented scenes. */
    private static final double SOFTENED = 0.7;

    /** Such a blur of the answer, in pixels, is still well drawn: larger ones are looked for on coarser pixels. */
    private static final double WELL_DRAWN_PX = 2;

    /** How much of a smear is taken off. */
    public enum Extent {
        NONE,
        /** Half of a lopsided one, so that the rest is the same to both sides; short ones are left. */
        HALF,
        ALL
    }

    private DispersionDeconvolution() {}

    /** What is left of a smear. */
    public static Smear left(Shading shading, Extent extent) {
        Smear smear = shading.smear();
        boolean slight = Math.abs(smear.leanPx(Math.max(LEAST_BLUR_PX, shading.blurPx()))) < LEAST_LEAN_PX;
        return switch (extent) {
            case NONE -> smear;
            case HALF -> slight ? smear : smear.balanced().on(0, 0.5, false);
            case ALL -> Smear.NONE;
        };
    }

    /** The fit of a disk on the plane that {@link #of} leaves. */
    public static FittedDisk fit(FittedDisk fitted, Extent extent) {
        return fitted.withSmear(left(fitted.shading(), extent));
    }

    /** Whether there is anything to take off. */
    public static boolean changes(Shading shading, Extent extent) {
        return left(shading, extent) != shading.smear();
    }

    /**
     * The frame with {@link #left} of its smear; missing pixels stay missing.
     *
     * @param fitted the disk and its smear
     * @param globe how the body stands
     * @param noise standard deviation of a pixel on the disk, in the plane's units
     */
    public static Plane of(
            Plane frame, FittedDisk fitted, Globe globe, double noise, Extent extent, Progress progress) {
        if (!changes(fitted.shading(), extent)) {
            return frame;
        }
        View view = new View(globe, fitted.disk());
        Region lit = fitted.shading().region(view, globe.extent(), frame.width(), frame.height());
        Plane result = frame.copy();
        lit.put(ofPart(lit.of(frame), fitted.on(lit), view.on(lit), noise, extent, progress), result);
        return result;
    }

    /** The same of the part of a frame that gets light. */
    private static Plane ofPart(
            Plane frame, FittedDisk fitted, View view, double noise, Extent extent, Progress progress) {
        Smear smear = fitted.shading().smear();
        Smear left = left(fitted.shading(), extent);
        int width = frame.width();
        int height = frame.height();
        float[] drawn = picture(fitted, view, width, height);
        float[] clean = picture(fit(fitted, extent), view, width, height);
        float brightness = (float) fitted.brightness();
        float sky = (float) fitted.background();
        Plane unexplained = new Plane(width, height);
        for (int i = 0; i < drawn.length; i++) {
            float light = frame.data()[i] - sky - brightness * drawn[i];
            unexplained.data()[i] = Float.isNaN(light) || drawn[i] < DARK ? 0 : light;
        }
        Plane detail =
                detail(unexplained, drawn, smear, SOFTENED * fitted.shading().closeBlurPx(), noise, progress);
        add(unexplained, smear.of(detail), -1);
        Plane restored = left.of(detail);
        Plane result = new Plane(width, height);
        for (int i = 0; i < drawn.length; i++) {
            float kept = drawn[i] < DARK
                    ? frame.data()[i] - sky - brightness * drawn[i]
                    : unexplained.data()[i];
            result.data()[i] =
                    Float.isNaN(frame.data()[i]) ? Float.NaN : sky + brightness * clean[i] + restored.data()[i] + kept;
        }
        return result;
    }

    /**
     * What a smear drew out.
     *
     * @param seen what was seen
     * @param drawn where the disk is
     * @param softPx blur of the answer
     */
    private static Plane detail(
            Plane seen, float[] drawn, Smear smear, double softPx, double noise, Progress progress) {
        int factor = Math.max(1, (int) (softPx / WELL_DRAWN_PX));
        if (factor == 1) {
            return restored(seen.copy(), drawn, smear, softPx, noise, 0, progress);
        }
        Plane disk = new Plane(seen.width(), seen.height(), drawn);
        Plane coarse = restored(
                Binning.by(factor, seen),
                Binning.by(factor, disk).data(),
                smear.on(0, 1.0 / factor, false),
                softPx / factor,
                noise / factor,
                noise * Math.sqrt(1 - 1.0 / (factor * factor)),
                progress);
        Spline fine = new Spline(coarse);
        Plane detail = new Plane(seen.width(), seen.height());
        double first = 0.5 * (factor - 1);
        Rows.each(detail.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < detail.width(); x++) {
                    double column = (x - first) / factor;
                    double row = (y - first) / factor;
                    if (fine.contains(column, row)) {
                        detail.set(x, y, fine.at(column, row));
                    }
                }
            }
        });
        return detail;
    }

    /**
     * The deconvolved plane on the pixels that are given.
     *
     * @param unexplained what was seen; is used up
     * @param noise standard deviation of a pixel
     * @param unseen noise that finer pixels had more
     */
    private static Plane restored(
            Plane unexplained,
            float[] drawn,
            Smear smear,
            double softPx,
            double noise,
            double unseen,
            Progress progress) {
        Plane restored = new Plane(unexplained.width(), unexplained.height());
        double least = NOISE * noise * strengthOfNoise(smear, softPx);
        double before = Math.hypot(power(unexplained, drawn), unseen);
        Plane slope = Gaussian.blur(smear.reversed().of(unexplained), softPx);
        double steepness = square(slope);
        Plane way = slope;
        double rms = power(slope, drawn);
        for (int step = 0; step < MOST_STEPS && steepness > 0 && rms > least; step++) {
            progress.check();
            Plane ahead = Gaussian.blur(way, softPx);
            Plane seen = smear.of(ahead);
            float far = (float) (steepness / square(seen));
            add(restored, ahead, far);
            add(unexplained, seen, -far);
            double after = Math.hypot(power(unexplained, drawn), unseen);
            if (after > (1 - WORTH_IT) * before) {
                break;
            }
            before = after;
            slope = Gaussian.blur(smear.reversed().of(unexplained), softPx);
            double next = square(slope);
            rms = power(slope, drawn);
            add(slope, way, (float) (next / steepness));
            way = slope;
            steepness = next;
        }
        return restored;
    }

    /** Standard deviation of the slopes that white noise of 1 makes. */
    private static double strengthOfNoise(Smear smear, double softPx) {
        int side = 2 * (int) (0.5 * smear.lengthPx() + 4 * softPx + 3) + 1;
        Plane point = new Plane(side, side);
        point.set(side / 2, side / 2, 1);
        return Math.sqrt(square(Gaussian.blur(smear.reversed().of(point), softPx)));
    }

    /** The even globe and its rings. */
    private static float[] picture(FittedDisk fitted, View view, int width, int height) {
        Shading shading = fitted.shading();
        if (fitted.rings().isNone()) {
            return shading.picture(view, width, height).data();
        }
        Plane both = shading.pictureAndVeiled(view, width, height)[1];
        add(both, fitted.rings().picture(view, shading, width, height), 1);
        return both.data();
    }

    /** Rms of what is left where the disk is. */
    private static double power(Plane left, float[] drawn) {
        double sum = 0;
        int n = 0;
        for (int i = 0; i < drawn.length; i++) {
            if (drawn[i] > 0) {
                sum += (double) left.data()[i] * left.data()[i];
                n++;
            }
        }
        return Math.sqrt(sum / Math.max(1, n));
    }

    private static double square(Plane plane) {
        double sum = 0;
        for (float v : plane.data()) {
            sum += (double) v * v;
        }
        return sum;
    }

    private static void add(Plane to, Plane what, float factor) {
        for (int i = 0; i < to.data().length; i++) {
            to.data()[i] += factor * what.data()[i];
        }
    }
}
