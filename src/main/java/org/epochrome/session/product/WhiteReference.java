package org.epochrome.session.product;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.epochrome.colour.Gains;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.read.FrameReader;
import org.epochrome.text.Message;

/**
 * Gains from something that is white in sunlight, recorded through the same filters, with the same ratios of exposure
 * times and at a like altitude as the planet: a star like the Sun on dark sky, or a white target that fills the frame.
 */
public final class WhiteReference {
    /** Of full scale; brighter pixels are taken as overexposed. Common practice, no source. */
    private static final double FULL = 0.98;

    /** Of full scale; an even frame below is no target but sky. Common practice, no source. */
    private static final double DARK = 0.05;

    private static final double STAR_SIGMAS = 6;
    private static final double APERTURE_RADII = 3;

    private WhiteReference() {}

    /**
     * Measures the gains.
     *
     * @param files one colour frame, or three grey ones in the order red, green, blue
     * @throws FrameRefused if a file cannot be read, is overexposed or shows neither star nor target
     * @throws IllegalArgumentException if files and planes do not make three colours
     */
    public static Gains gains(List<Path> files) {
        List<Double> light = new ArrayList<>();
        for (Path file : files) {
            FrameFile frame = FrameReader.read(file);
            double fullScale = frame.head().fullScale();
            double unit = Double.isNaN(fullScale) ? 1 : fullScale;
            for (Plane plane : frame.planes()) {
                light.add(light(file, plane, unit) / unit);
            }
        }
        if (light.size() != 3 || files.size() == 2) {
            throw new IllegalArgumentException(Message.text("white.frames", files.size(), light.size()));
        }
        return new Gains(light.get(1) / light.get(0), 1, light.get(1) / light.get(2));
    }

    private static double light(Path file, Plane plane, double fullScale) {
        float[] sorted = plane.data().clone();
        Arrays.sort(sorted);
        // NaN sorts last.
        int n = sorted.length;
        while (n > 0 && Float.isNaN(sorted[n - 1])) {
            n--;
        }
        if (sorted[n - 1] >= FULL * fullScale && fullScale > 1) {
            throw new FrameRefused(file, Message.of("white.overexposed"));
        }
        double sky = sorted[n / 2];
        float top = sorted[n - 1];
        if (sorted[n / 4] > 0.5 * top) {
            if (sky < DARK * fullScale) {
                throw nothing(file);
            }
            return sky;
        }
        double noise = 1.4826 * spread(sorted, n, sky);
        return star(file, plane, sky, Math.max(STAR_SIGMAS * noise, 0.05 * (top - sky)));
    }

    private static FrameRefused nothing(Path file) {
        return new FrameRefused(file, Message.of("white.notWhite"));
    }

    private static double spread(float[] values, int n, double middle) {
        float[] away = new float[n];
        for (int i = 0; i < n; i++) {
            away[i] = (float) Math.abs(values[i] - middle);
        }
        Arrays.sort(away);
        return away[n / 2];
    }

    /** All light above the sky around what stands out of it. */
    private static double star(Path file, Plane plane, double sky, double least) {
        double[] moments = new double[4];
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double above = plane.at(x, y) - sky;
                if (above > least) {
                    moments[0] += above;
                    moments[1] += above * x;
                    moments[2] += above * y;
                    moments[3] += above * (x * x + y * y);
                }
            }
        }
        if (!(moments[0] > 0)) {
            throw nothing(file);
        }
        double x = moments[1] / moments[0];
        double y = moments[2] / moments[0];
        double size = Math.sqrt(Math.max(0, moments[3] / moments[0] - x * x - y * y));
        double reach = APERTURE_RADII * size + 2;
        double sum = 0;
        for (int row = 0; row < plane.height(); row++) {
            for (int column = 0; column < plane.width(); column++) {
                double above = plane.at(column, row) - sky;
                if (Math.hypot(column - x, row - y) < reach && !Double.isNaN(above)) {
                    sum += above;
                }
            }
        }
        return sum;
    }
}
