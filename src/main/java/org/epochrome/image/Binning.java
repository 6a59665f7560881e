package org.epochrome.image;

import org.epochrome.job.Rows;

/** Smaller planes of whole pixels: each the mean of a square of pixels; what does not fill a square is left out. */
public final class Binning {
    private Binning() {}

    /**
     * The plane on a coarser grid. Column {@code x} of the result lies at {@code factor * x + (factor - 1) / 2} of the
     * plane.
     */
    public static Plane by(int factor, Plane plane) {
        if (factor == 1) {
            return plane;
        }
        int width = plane.width() / factor;
        int height = plane.height() / factor;
        Plane result = new Plane(width, height);
        float scale = 1f / (factor * factor);
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    float sum = 0;
                    for (int j = 0; j < factor; j++) {
                        for (int i = 0; i < factor; i++) {
                            sum += plane.at(factor * x + i, factor * y + j);
                        }
                    }
                    result.set(x, y, sum * scale);
                }
            }
        });
        return result;
    }
}
