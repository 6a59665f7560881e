package org.epochrome.colour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * From the linear cube to a picture for the screen: white balance by gains, one exposure for all colours, and the curve
 * of sRGB (IEC 61966-2-1).
 */
public final class Finish {
    /** Common practice, no source: the brightest part of a planet is shown near 80 % of full scale. */
    private static final double BRIGHTEST_SHOWN = 0.8;

    private static final double BRIGHTEST_PART = 0.998;

    private Finish() {}

    /**
     * The picture, display-encoded, 0 to 1, red, green and blue.
     *
     * @param disk 1 inside the disk's lit part, 0 elsewhere: where colour and exposure are measured
     */
    public static List<Plane> picture(ColourCube cube, Plane disk, Body body, White white) {
        double[] gains = gains(cube, disk, body, white);
        double exposure = exposure(cube, disk, gains);
        List<Plane> shown = new ArrayList<>();
        for (int c = 0; c < 3; c++) {
            shown.add(encoded(cube.planes().get(c), gains[c] * exposure));
        }
        return shown;
    }

    private static double[] gains(ColourCube cube, Plane disk, Body body, White white) {
        Optional<White.Ratios> wanted = white.ratios(body);
        if (wanted.isEmpty()) {
            return new double[] {1, 1, 1};
        }
        double red = mean(cube.red(), disk);
        double green = mean(cube.green(), disk);
        double blue = mean(cube.blue(), disk);
        return new double[] {
            wanted.get().redToGreen() * green / red, 1, wanted.get().blueToGreen() * green / blue,
        };
    }

    private static double mean(Plane plane, Plane disk) {
        double sum = 0;
        double count = 0;
        for (int i = 0; i < plane.data().length; i++) {
            if (disk.data()[i] > 0 && !Float.isNaN(plane.data()[i])) {
                sum += plane.data()[i];
                count++;
            }
        }
        return sum > 0 ? sum / count : 1;
    }

    private static double exposure(ColourCube cube, Plane disk, double[] gains) {
        float[] bright = new float[disk.data().length];
        int n = 0;
        for (int i = 0; i < bright.length; i++) {
            float most = 0;
            for (int c = 0; c < 3; c++) {
                most = Math.max(most, (float) gains[c] * cube.planes().get(c).data()[i]);
            }
            if (disk.data()[i] > 0 && !Float.isNaN(most)) {
                bright[n++] = most;
            }
        }
        if (n == 0) {
            return 1;
        }
        bright = Arrays.copyOf(bright, n);
        Arrays.sort(bright);
        float top = bright[(int) (BRIGHTEST_PART * (n - 1))];
        return top > 0 ? decode(BRIGHTEST_SHOWN) / top : 1;
    }

    private static Plane encoded(Plane plane, double gain) {
        Plane shown = new Plane(plane.width(), plane.height());
        Rows.each(plane.height(), (from, to) -> {
            for (int i = from * plane.width(); i < to * plane.width(); i++) {
                shown.data()[i] = (float) encode(gain * plane.data()[i]);
            }
        });
        return shown;
    }

    /** Linear light to sRGB; what lies outside 0 to 1 is left to the writer to clip, NaN becomes 0. */
    static double encode(double linear) {
        if (!(linear > 0)) {
            return 0;
        }
        return linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
    }

    static double decode(double shown) {
        return shown <= 0.04045 ? shown / 12.92 : Math.pow((shown + 0.055) / 1.055, 2.4);
    }
}
