package org.epochrome.colour.finish;

import java.util.Arrays;
import java.util.List;
import java.util.PriorityQueue;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Srgb;
import org.epochrome.colour.Tone;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/** From the linear cube to a picture for the screen: white balance, one exposure for all colours, tone. */
public final class Finish {
    private static final double BRIGHTEST_PART = 0.998;
    private static final int HALVINGS = 40;

    private Finish() {}

    /**
     * A cube in which red, green and blue are parts of white.
     *
     * @param disk 1 inside the disk's lit part, 0 elsewhere: where colour is measured
     */
    public static ColourCube balanced(ColourCube cube, Plane disk, Body body, WhiteBalance white) {
        return gains(cube, disk, body, white).on(cube);
    }

    /** What {@link #balanced} multiplies red, green and blue by. */
    public static Gains gains(ColourCube cube, Plane disk, Body body, WhiteBalance white) {
        return white.gains(cube, disk, body);
    }

    /**
     * The picture, display-encoded, 0 to 1, red, green and blue; black where there is no data.
     *
     * @param balanced linear, white where red, green and blue are equal
     * @param disk 1 inside the disk's lit part, 0 elsewhere: where exposure is measured
     */
    public static List<Plane> shown(ColourCube balanced, Plane disk, Tone tone) {
        return shown(balanced, brightest(balanced, disk), tone, Grading.NONE);
    }

    /**
     * The picture, display-encoded, as {@link #shown(ColourCube, Plane, Tone)} gives it, or a part of it.
     *
     * @param brightest red, green and blue of the {@link #brightest} part of the disk, by which it is exposed
     * @param grading what is changed by hand
     */
    public static List<Plane> shown(ColourCube balanced, double[] brightest, Tone tone, Grading grading) {
        double exposure = exposure(brightest, tone);
        double most = exposure * Math.max(brightest[0], Math.max(brightest[1], brightest[2]));
        boolean light = !grading.leavesLight();
        float[][] tables = {grading.table(0), grading.table(1), grading.table(2)};
        float[][] linear = data(balanced);
        Plane[] shown = new Plane[3];
        Arrays.setAll(shown, c -> new Plane(balanced.width(), balanced.height()));
        int width = balanced.width();
        Rows.each(balanced.height(), (from, to) -> {
            double[] colour = new double[3];
            for (int i = from * width; i < to * width; i++) {
                boolean known = !Float.isNaN(most(linear, i));
                for (int c = 0; c < 3; c++) {
                    colour[c] = known ? exposure * linear[c][i] : 0;
                }
                if (light && known) {
                    grading.light(colour, most);
                }
                tone.apply(colour);
                for (int c = 0; c < 3; c++) {
                    shown[c].data()[i] = Grading.of(tables[c], Srgb.encodeFast(colour[c]));
                }
            }
        });
        return List.of(shown);
    }

    /** The factor that brings the brightest part of the disk where the tone wants it. */
    private static double exposure(double[] brightest, Tone tone) {
        double most = Math.max(brightest[0], Math.max(brightest[1], brightest[2]));
        if (!(most > 0)) {
            return 1;
        }
        double low = 0;
        double high = 30 / most;
        double[] colour = new double[3];
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (low + high);
            for (int c = 0; c < 3; c++) {
                colour[c] = middle * brightest[c];
            }
            tone.apply(colour);
            double shown = Srgb.encode(Math.max(colour[0], Math.max(colour[1], colour[2])));
            if (shown < tone.brightness()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /** Red, green and blue of a pixel than which few are brighter. */
    public static double[] brightest(ColourCube cube, Plane disk) {
        float[][] linear = data(cube);
        float[] bright = new float[disk.data().length];
        int n = 0;
        for (int i = 0; i < bright.length; i++) {
            if (disk.data()[i] > 0 && !Float.isNaN(most(linear, i))) {
                bright[n++] = most(linear, i);
            }
        }
        double[] found = new double[3];
        if (n == 0) {
            return found;
        }
        float level = ofTheLargest(bright, n, n - (int) (BRIGHTEST_PART * (n - 1)));
        for (int i = 0; i < disk.data().length; i++) {
            if (disk.data()[i] > 0 && most(linear, i) == level) {
                for (int c = 0; c < 3; c++) {
                    found[c] = Math.max(0, linear[c][i]);
                }
                break;
            }
        }
        return found;
    }

    /** The smallest of the largest values; they are few, so that this is quicker than to sort all. */
    private static float ofTheLargest(float[] values, int n, int count) {
        PriorityQueue<Float> largest = new PriorityQueue<>(count);
        for (int i = 0; i < n; i++) {
            if (largest.size() < count) {
                largest.add(values[i]);
            } else if (values[i] > largest.peek()) {
                largest.poll();
                largest.add(values[i]);
            }
        }
        return largest.peek();
    }

    private static float most(float[][] linear, int i) {
        return Math.max(linear[0][i], Math.max(linear[1][i], linear[2][i]));
    }

    private static float[][] data(ColourCube cube) {
        return new float[][] {
            cube.red().data(), cube.green().data(), cube.blue().data()
        };
    }
}
