package org.epochrome.disk;

import org.epochrome.image.Plane;
import org.epochrome.image.Smear;
import org.epochrome.job.Progress;

/**
 * Takes off a frame what dispersion within its band draws out.
 *
 * <p>The disk itself is known: the picture of an even globe with the smear is exchanged for the one without, so that no
 * limb can ring. What is left on the disk, markings of low contrast, is restored by Landweber's iteration (Landweber 1951, American
 * Journal of Mathematics 73, 615) with the known kernel, {@code x <- x + S'(d - S x)}, which restores coarse detail first and is
 * stopped when it hardly finds anything but noise (Morozov's discrepancy principle in spirit). What it has not explained by
 * then is kept as it is, so nothing gets lost.
 */
public final class Unsmear {
    private static final int MOST_STEPS = 12;
    /** Part by which a step must lower what is left on the disk. */
    private static final double WORTH_IT = 0.02;

    /** Part of the disk's brightness that counts as sky, where only noise could be sharpened. */
    private static final float DARK = 0.01f;

    private Unsmear() {}

    /**
     * The frame without its smear; missing pixels stay missing.
     *
     * @param fitted the disk and its smear
     * @param globe how the body stands
     */
    public static Plane of(Plane frame, FittedDisk fitted, Globe globe, Progress progress) {
        Smear smear = fitted.shading().smear();
        if (smear == Smear.NONE) {
            return frame;
        }
        View view = new View(globe, fitted.disk());
        int width = frame.width();
        int height = frame.height();
        float[] drawn = fitted.shading().picture(view, width, height).data();
        float[] clean =
                fitted.shading().unsmeared().picture(view, width, height).data();
        float brightness = (float) fitted.brightness();
        float sky = (float) fitted.background();
        Plane left = new Plane(width, height);
        for (int i = 0; i < drawn.length; i++) {
            float light = frame.data()[i] - sky - brightness * drawn[i];
            left.data()[i] = Float.isNaN(light) || drawn[i] < DARK ? 0 : light;
        }
        Plane restored = new Plane(width, height);
        double before = power(left, drawn);
        for (int step = 0; step < MOST_STEPS; step++) {
            progress.check();
            Plane back = smear.reversed().of(left);
            add(restored, back, 1);
            add(left, smear.of(back), -1);
            double after = power(left, drawn);
            if (after > (1 - WORTH_IT) * before) {
                break;
            }
            before = after;
        }
        Plane result = new Plane(width, height);
        for (int i = 0; i < drawn.length; i++) {
            float kept = drawn[i] < DARK ? frame.data()[i] - sky - brightness * drawn[i] : left.data()[i];
            result.data()[i] =
                    Float.isNaN(frame.data()[i]) ? Float.NaN : sky + brightness * clean[i] + restored.data()[i] + kept;
        }
        return result;
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

    private static void add(Plane to, Plane what, float factor) {
        for (int i = 0; i < to.data().length; i++) {
            to.data()[i] += factor * what.data()[i];
        }
    }
}
