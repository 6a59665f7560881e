package org.epochrome.demo.scene;

import java.util.List;
import org.apache.commons.math3.special.Erf;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * An unblurred picture on a grid some times finer than the pixels, over a window of the image plane; black outside.
 */
final class Supersampled {
    /** Samples along a pixel's side, at least; 3 place the limb of a disk of 200 px to some 0.001 of the light. */
    private static final int LEAST_PER_PIXEL = 3;

    private static final int MOST_PER_PIXEL = 9;

    /** Small disks get finer samples, so that their limb has as many. */
    private static final double SAMPLES_PER_RADIUS = 300;

    /** Gaussian sigmas after which the kernel ends; what lies beyond is 2e-9 of the light. */
    private static final double REACH_SIGMAS = 6;

    private static final double SIGMAS_PER_FWHM = 2.3548200450309493;

    private final int left;
    private final int top;
    private final int width;
    private final int height;
    private final int perPixel;
    private final double[] samples;

    /** Where light of one colour falls, against the undispersed one, in pixels. */
    record Shift(double x, double y) {}

    /** The brightness at a point of the image plane, in pixels. */
    @FunctionalInterface
    interface Picture {
        double at(double x, double y);
    }

    /**
     * A black window of whole pixels around a point.
     *
     * @param extent how far the picture goes from there, pixels
     * @param radius of the disk in it, pixels
     */
    static Supersampled around(double x, double y, double extent, double radius) {
        double reach = extent + 1;
        int left = (int) Math.floor(x - reach);
        int top = (int) Math.floor(y - reach);
        int right = (int) Math.ceil(x + reach);
        int bottom = (int) Math.ceil(y + reach);
        double wanted = Math.rint(SAMPLES_PER_RADIUS / radius);
        int perPixel = (int) Math.max(LEAST_PER_PIXEL, Math.min(MOST_PER_PIXEL, wanted));
        return new Supersampled(left, top, right - left + 1, bottom - top + 1, perPixel);
    }

    private Supersampled(int left, int top, int widthPx, int heightPx, int perPixel) {
        this.left = left;
        this.top = top;
        this.perPixel = perPixel;
        this.width = widthPx * perPixel;
        this.height = heightPx * perPixel;
        this.samples = new double[width * height];
    }

    /** Adds a picture, weighted. */
    void add(Picture picture, double weight) {
        Rows.each(height, (from, to) -> {
            for (int row = from; row < to; row++) {
                double y = top - 0.5 + (row + 0.5) / perPixel;
                for (int column = 0; column < width; column++) {
                    double x = left - 0.5 + (column + 0.5) / perPixel;
                    samples[row * width + column] += weight * picture.at(x, y);
                }
            }
        });
    }

    /**
     * Integrates over the area of each pixel of a frame after a Gaussian blur, the light spread evenly over the given
     * shifts.
     */
    double[] integrate(int frameWidth, int frameHeight, double fwhmPx, List<Shift> shifts) {
        double[] frame = new double[frameWidth * frameHeight];
        for (Shift shift : shifts) {
            Kernel across = new Kernel(fwhmPx / SIGMAS_PER_FWHM, shift.x(), perPixel);
            Kernel down = new Kernel(fwhmPx / SIGMAS_PER_FWHM, shift.y(), perPixel);
            double[] narrowed = new double[height * frameWidth];
            Rows.each(height, (from, to) -> {
                for (int row = from; row < to; row++) {
                    across.addAlong(samples, row * width, width, -left, narrowed, row * frameWidth, frameWidth);
                }
            });
            Rows.each(frameHeight, (from, to) -> {
                for (int y = from; y < to; y++) {
                    double[] sums = down.ofRows(narrowed, frameWidth, height, y - top);
                    for (int x = 0; x < frameWidth; x++) {
                        frame[y * frameWidth + x] += sums[x] / shifts.size();
                    }
                }
            });
        }
        return frame;
    }

    static Plane plane(int width, int height, double[] values) {
        float[] data = new float[values.length];
        for (int i = 0; i < data.length; i++) {
            data[i] = (float) values[i];
        }
        return new Plane(width, height, data);
    }

    /**
     * How much each sample gives to a pixel: a Gaussian over the pixel's width. Since the box of a pixel has its
     * spectral zeros at every whole cycle per pixel, the weights sum to one exactly, at any blur and shift, both over
     * the samples of a pixel and (times their number per pixel) over the pixels of a sample.
     */
    private static final class Kernel {
        private final int perPixel;
        private final int first;
        private final double[] weights;

        Kernel(double sigmaPx, double shiftPx, int perPixel) {
            this.perPixel = perPixel;
            double reach = REACH_SIGMAS * sigmaPx + 0.5;
            this.first = (int) Math.floor((-reach - shiftPx + 0.5) * perPixel - 0.5);
            int last = (int) Math.ceil((reach - shiftPx + 0.5) * perPixel - 0.5);
            this.weights = new double[last - first + 1];
            for (int i = 0; i < weights.length; i++) {
                double distance = -0.5 + (first + i + 0.5) / perPixel + shiftPx;
                weights[i] = (below(distance + 0.5, sigmaPx) - below(distance - 0.5, sigmaPx)) / perPixel;
            }
        }

        /** The part of a Gaussian below a point. */
        private static double below(double distance, double sigma) {
            return sigma > 0
                    ? 0.5 * (1 + Erf.erf(distance / (sigma * Math.sqrt(2))))
                    : 0.5 * (1 + Math.signum(distance));
        }

        /**
         * Adds to {@code pixels} pixels from {@code to} on their sums over a line of {@code count} samples that starts at
         * {@code start}, the first one being that of number {@code pixel}. Weight after weight, since sums that wait for
         * nothing but themselves are quicker side by side.
         */
        void addAlong(double[] samples, int start, int count, int pixel, double[] sums, int to, int pixels) {
            for (int i = 0; i < weights.length; i++) {
                double weight = weights[i];
                int offset = pixel * perPixel + first + i;
                int begin = Math.max(0, Math.floorDiv(perPixel - 1 - offset, perPixel));
                int end = Math.min(pixels, Math.floorDiv(perPixel - 1 + count - offset, perPixel));
                int sample = start + offset + begin * perPixel;
                for (int x = begin; x < end; x++) {
                    sums[to + x] += weight * samples[sample];
                    sample += perPixel;
                }
            }
        }

        /** The sums for a row of pixels over {@code count} rows of samples, one per pixel of the row. */
        double[] ofRows(double[] rows, int width, int count, int pixel) {
            double[] sums = new double[width];
            int offset = pixel * perPixel + first;
            int end = Math.min(weights.length, count - offset);
            for (int i = Math.max(0, -offset); i < end; i++) {
                double weight = weights[i];
                int start = (offset + i) * width;
                for (int x = 0; x < width; x++) {
                    sums[x] += weight * rows[start + x];
                }
            }
            return sums;
        }
    }
}
