package org.epochrome.disk;

import java.util.ArrayDeque;
import java.util.Arrays;
import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;

/**
 * The bright patch that a planet makes in a frame, by its moments: where a fit starts.
 *
 * @param background sky level
 * @param noise standard deviation of the sky, from its median absolute deviation
 * @param top brightness of the patch above the sky (98th percentile of the pixels over half the peak)
 * @param areaPx number of pixels over {@link #LEVEL} of the top
 * @param x centroid of these pixels
 * @param y the same
 * @param longAxisDeg direction of the patch's long axis, from image up, counter-clockwise, -90 to 90
 * @param axisRatio short over long axis by the second moments
 */
record DiskStart(
        double background,
        double noise,
        double top,
        int areaPx,
        double x,
        double y,
        double longAxisDeg,
        double axisRatio) {

    /** Pixels belong to the patch from this part of the top upward. */
    static final double LEVEL = 0.2;

    private static final int BORDER = 4;
    private static final int LEAST_AREA_PX = 80;

    /**
     * Finds the patch.
     *
     * @throws DiskNotFound if there is nothing, it is cut by the edge, or it is too small
     */
    static DiskStart of(Plane frame) {
        double[] sky = border(frame);
        double background = median(sky);
        for (int i = 0; i < sky.length; i++) {
            sky[i] = Math.abs(sky[i] - background);
        }
        double noise = 1.4826 * median(sky);
        Plane smooth = Gaussian.blur(aboveSky(frame, background), 1.5);
        double top = top(smooth);
        if (!(top > 8 * noise / 5) || !(top > 1e-6 * Math.abs(background)) || top <= 0) {
            throw new DiskNotFound("nothing stands out from the sky; check that this is a frame of a planet");
        }
        return patch(smooth, background, noise, top);
    }

    private static DiskStart patch(Plane smooth, double background, double noise, double top) {
        int width = smooth.width();
        int height = smooth.height();
        boolean[] member = largestPatch(smooth, (float) (LEVEL * top));
        double n = 0;
        double sx = 0;
        double sy = 0;
        int onEdge = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (member[y * width + x]) {
                    n++;
                    sx += x;
                    sy += y;
                    if (x == 0 || y == 0 || x == width - 1 || y == height - 1) {
                        onEdge++;
                    }
                }
            }
        }
        if (n < LEAST_AREA_PX) {
            throw new DiskNotFound("the brightest patch covers only " + (int) n
                    + " pixels, too few for the disk of a planet; use an image on a larger scale");
        }
        if (onEdge > 2) {
            throw new DiskNotFound("the disk is cut by the edge of the image; use a frame that holds all of it");
        }
        double cx = sx / n;
        double cy = sy / n;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (member[y * width + x]) {
                    xx += (x - cx) * (x - cx);
                    xy += (x - cx) * (y - cy);
                    yy += (y - cy) * (y - cy);
                }
            }
        }
        double half = 0.5 * (xx + yy);
        double spread = Math.hypot(0.5 * (xx - yy), xy);
        // Direction of the long axis from +x towards +y (downward), then from up and counter-clockwise as displayed.
        double fromRight = 0.5 * Math.toDegrees(Math.atan2(2 * xy, xx - yy));
        double axis = -90 - fromRight;
        axis -= 180 * Math.floor((axis + 90) / 180);
        return new DiskStart(
                background, noise, top, (int) n, cx, cy, axis, Math.sqrt(Math.max(0, half - spread) / (half + spread)));
    }

    private static Plane aboveSky(Plane frame, double background) {
        Plane result = frame.copy();
        float[] data = result.data();
        for (int i = 0; i < data.length; i++) {
            data[i] = Float.isNaN(data[i]) ? 0 : (float) (data[i] - background);
        }
        return result;
    }

    private static double top(Plane smooth) {
        float[] data = smooth.data();
        float peak = 0;
        for (float v : data) {
            peak = Math.max(peak, v);
        }
        float[] bright = new float[data.length];
        int n = 0;
        for (float v : data) {
            if (v > 0.5f * peak) {
                bright[n++] = v;
            }
        }
        if (n == 0) {
            return 0;
        }
        bright = Arrays.copyOf(bright, n);
        Arrays.sort(bright);
        return bright[(int) (0.98 * (n - 1))];
    }

    /** The largest connected set of pixels above a level. */
    private static boolean[] largestPatch(Plane plane, float level) {
        int width = plane.width();
        int height = plane.height();
        float[] data = plane.data();
        int[] label = new int[data.length];
        int best = 0;
        int bestSize = 0;
        int labels = 0;
        ArrayDeque<Integer> open = new ArrayDeque<>();
        for (int start = 0; start < data.length; start++) {
            if (label[start] != 0 || data[start] < level) {
                continue;
            }
            labels++;
            int size = 0;
            label[start] = labels;
            open.add(start);
            while (!open.isEmpty()) {
                int p = open.poll();
                size++;
                int x = p % width;
                int y = p / width;
                int[] neighbours = {
                    x > 0 ? p - 1 : -1,
                    x < width - 1 ? p + 1 : -1,
                    y > 0 ? p - width : -1,
                    y < height - 1 ? p + width : -1
                };
                for (int q : neighbours) {
                    if (q >= 0 && label[q] == 0 && data[q] >= level) {
                        label[q] = labels;
                        open.add(q);
                    }
                }
            }
            if (size > bestSize) {
                bestSize = size;
                best = labels;
            }
        }
        boolean[] member = new boolean[data.length];
        for (int i = 0; i < data.length; i++) {
            member[i] = best != 0 && label[i] == best;
        }
        return member;
    }

    private static double[] border(Plane frame) {
        double[] values = new double[frame.data().length];
        int n = 0;
        for (int y = 0; y < frame.height(); y++) {
            boolean rim = y < BORDER || y >= frame.height() - BORDER;
            for (int x = 0; x < frame.width(); x++) {
                if (rim || x < BORDER || x >= frame.width() - BORDER) {
                    float v = frame.at(x, y);
                    if (!Float.isNaN(v)) {
                        values[n++] = v;
                    }
                }
            }
        }
        if (n == 0) {
            throw new DiskNotFound("the rim of the image holds no data; the sky around the disk is needed");
        }
        return Arrays.copyOf(values, n);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
