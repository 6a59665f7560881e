package org.epochrome.session.product;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Starlet;
import org.epochrome.session.combine.Combination;

/**
 * How strong detail and noise are on the lit disk of a combination, scale by scale: what sharpening works on.
 *
 * @param blurPx blur of the picture, which sharpening's usual curve goes by
 * @param rows from fine to coarse
 */
public record DetailLevels(double blurPx, List<Row> rows) {
    private static final int SCALES = 5;
    /** Standard deviation of a Gaussian by its median absolute value. */
    private static final double SIGMA_PER_MEDIAN = 1 / 0.6745;

    /**
     * A scale.
     *
     * @param sizePx of its structures
     * @param detail rms of what is there, noise included, as a part of the brightness
     * @param noise standard deviation of the noise in it, white as the finest scale has it
     */
    public record Row(double sizePx, double detail, double noise) {}

    public static DetailLevels of(Combination c) {
        View view = new View(Globe.of(c.aspect()), c.disk());
        ColourCube seen = c.seen();
        Plane disk = Finishing.litDisk(view, seen.width(), seen.height());
        Plane light = new Plane(disk.width(), disk.height());
        for (int i = 0; i < light.data().length; i++) {
            float sum =
                    seen.red().data()[i] + seen.green().data()[i] + seen.blue().data()[i];
            light.data()[i] = Float.isNaN(sum) ? 0 : sum;
        }
        double level = mean(light, disk);
        Starlet starlet = Starlet.of(light, SCALES);
        List<Row> rows = new ArrayList<>();
        double finest = 0;
        for (int j = 0; j < SCALES; j++) {
            float[] sizes = sizes(starlet.details().get(j), disk);
            double squares = 0;
            for (float size : sizes) {
                squares += size * size;
            }
            if (j == 0) {
                finest = sizes.length == 0 ? 0 : SIGMA_PER_MEDIAN * sizes[sizes.length / 2];
            }
            rows.add(new Row(
                    Starlet.sizePx(j),
                    Math.sqrt(squares / Math.max(1, sizes.length)) / level,
                    finest * Starlet.whiteNoise(j) / Starlet.whiteNoise(0) / level));
        }
        return new DetailLevels(blurPx(c), rows);
    }

    private static double blurPx(Combination c) {
        return c.frames().stream()
                .filter(f -> f.exposure()
                        .band()
                        .name()
                        .equals(c.recipe().assignment().green()))
                .findFirst()
                .or(() -> c.frames().stream().findFirst())
                .map(f -> f.limb().shading().carried(f.limb().disk(), c.disk()).blurPx())
                .orElse(1.0);
    }

    private static double mean(Plane plane, Plane disk) {
        double sum = 0;
        double count = 0;
        for (int i = 0; i < plane.data().length; i++) {
            if (disk.data()[i] > 0) {
                sum += plane.data()[i];
                count++;
            }
        }
        return sum > 0 ? sum / count : 1;
    }

    private static float[] sizes(Plane detail, Plane disk) {
        float[] sizes = new float[disk.data().length];
        int n = 0;
        for (int i = 0; i < sizes.length; i++) {
            if (disk.data()[i] > 0) {
                sizes[n++] = Math.abs(detail.data()[i]);
            }
        }
        sizes = Arrays.copyOf(sizes, n);
        Arrays.sort(sizes);
        return sizes;
    }
}
