package org.epochrome.disk.start;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Locale;
import org.apache.commons.math3.util.KthSelector;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.defect.Plateau;
import org.epochrome.text.Message;

/**
 * The bright patch that a planet makes in a frame, by its moments: where a fit starts.
 *
 * @param levels sky level; noise of the sky from its median absolute deviation, or of the rounding to grey levels;
 *     brightness of the patch above the sky (98th percentile of the pixels over half the peak)
 * @param level part of the top over which pixels belong to the patch
 * @param areaPx area of the patch, pixels
 * @param x centroid of that area
 * @param y the same
 * @param longAxisDeg direction of the patch's long axis, from image up, counter-clockwise, -90 to 90
 */
public record DiskStart(Levels levels, double level, double areaPx, double x, double y, double longAxisDeg) {

    /** Pixels belong to the patch from this part of the top upward. */
    private static final double LEVEL = 0.2;

    private static final Message CUT = Message.of("disk.cut");
    /** That part of the top at most, where a halo brightens the sky up to the edge of the frame, */
    private static final double MOST_LEVEL = 0.55;
    /** and by how much it is raised at a time. */
    private static final double LEVEL_STEP = 0.05;
    /** Pixels at the edge from which a patch is cut by it. */
    private static final int MOST_ON_EDGE = 2;
    /** Lines at the edge of the coarse picture that a disk within a halo keeps free: a disk that is cut does not. */
    private static final int CLOSE_TO_EDGE = 3;

    private static final int LEAST_AREA_PX = 80;
    /** Longer side of the coarse picture in which the patch is sought. */
    private static final int COARSE_SIZE = 200;
    /** Blur of the coarse picture, pixels of its own; leaves a quarter of a white noise. */
    private static final double SMOOTH = 1.1;

    private static final double NOISE_LEFT = 0.26;
    /** The patch must stand out by so many standard deviations: the highest of 40,000 noisy pixels reach 4 to 5. */
    private static final double LEAST_SIGMAS = 10;
    /** Part of the patch that may lack data, for example because it was clipped: the limb must remain. */
    private static final double MOST_MISSING = 0.25;
    /** Part of a block that must hold data: less is the rest of a border, which would join the patch to the image's edge. */
    private static final double LEAST_HELD = 0.5;
    /** Part of the patch that may be clipped and still be taken for data: a bright spot does no harm. */
    private static final double MOST_CLIPPED = 0.02;

    /**
     * Finds the patch.
     *
     * @throws DiskNotFound if there is none, it is cut by the edge, too small, overexposed or full of holes
     */
    public static DiskStart of(Plane frame) {
        FrameRim rim = FrameRim.of(frame);
        return of(frame, rim.evened(frame), rim, LEVEL, MOST_LEVEL);
    }

    /** The patch of a model, of what lies over a part of its top. */
    public static DiskStart ofModel(Plane picture, double level) {
        return of(picture, picture, FrameRim.of(picture), level, level);
    }

    /**
     * Finds the patch around a place.
     *
     * @param reach how far from there it is sought, pixels
     * @throws DiskNotFound as {@link #of}
     */
    public static DiskStart around(Plane frame, double x, double y, double reach) {
        FrameRim rim = FrameRim.of(frame);
        Plane near = rim.evened(frame).copy();
        for (int row = 0; row < frame.height(); row++) {
            for (int column = 0; column < frame.width(); column++) {
                if (Math.hypot(column - x, row - y) > reach) {
                    near.set(column, row, (float) rim.background());
                }
            }
        }
        return of(frame, near, rim, LEVEL, MOST_LEVEL);
    }

    private static DiskStart of(Plane frame, Plane sought, FrameRim rim, double leastLevel, double mostLevel) {
        double background = rim.background();
        double noise = rim.noise();
        int bin = Math.max(1, Math.max(frame.width(), frame.height()) / COARSE_SIZE);
        Plane coarse = Gaussian.blur(aboveSky(sought, background, bin), SMOOTH);
        double top = top(coarse);
        if (top <= 1e-6 * Math.abs(background)) {
            throw new DiskNotFound(Message.of("disk.emptyImage"));
        }
        double level = leastLevel;
        boolean[] member = largestPatch(coarse, (float) (level * top));
        boolean cut = onEdge(member, coarse.width(), 1) > MOST_ON_EDGE;
        if (top < LEAST_SIGMAS * NOISE_LEFT * noise / bin) {
            throw new DiskNotFound(cut ? CUT : Message.of("disk.noSignal"));
        }
        if (cut) {
            // A halo may fill the frame: the disk stands out of it, and does not come close to the edge.
            for (double higher = level + LEVEL_STEP; higher <= mostLevel; higher += LEVEL_STEP) {
                boolean[] brighter = largestPatch(coarse, (float) (higher * top));
                if (onEdge(brighter, coarse.width(), CLOSE_TO_EDGE) <= MOST_ON_EDGE) {
                    member = brighter;
                    level = higher;
                    break;
                }
            }
        }
        DiskStart found = moments(member, coarse, bin, new Levels(background, noise, top), level);
        found = found.withNoise(Math.max(noise, roundingError(frame, (int) found.x, (int) found.y)));
        checkPixels(frame, member, coarse.width(), bin, found.areaPx, background);
        return found;
    }

    private DiskStart withNoise(double other) {
        return new DiskStart(new Levels(levels.background(), other, levels.top()), level, areaPx, x, y, longAxisDeg);
    }

    /**
     * Standard deviation of the error by which values were rounded to grey levels: that of an even spread over the smallest
     * step between values in a row and a column through the patch. In eight bits it can be all the noise that there is,
     * and hidden from a median.
     */
    private static double roundingError(Plane frame, int column, int row) {
        double[] values = new double[frame.width() + frame.height()];
        for (int x = 0; x < frame.width(); x++) {
            values[x] = frame.at(x, row);
        }
        for (int y = 0; y < frame.height(); y++) {
            values[frame.width() + y] = frame.at(column, y);
        }
        Arrays.sort(values);
        double step = Double.POSITIVE_INFINITY;
        for (int i = 1; i < values.length; i++) {
            double by = values[i] - values[i - 1];
            step = by > 0 && by < step ? by : step;
        }
        return Double.isInfinite(step) ? 0 : step / Math.sqrt(12);
    }

    /** How many pixels of a patch lie in the outermost lines of the frame. */
    private static int onEdge(boolean[] member, int width, int lines) {
        int height = member.length / width;
        int count = 0;
        for (int p = 0; p < member.length; p++) {
            int x = p % width;
            int y = p / width;
            count += member[p] && (x < lines || y < lines || x >= width - lines || y >= height - lines) ? 1 : 0;
        }
        return count;
    }

    private static DiskStart moments(boolean[] member, Plane coarse, int bin, Levels levels, double level) {
        int width = coarse.width();
        int height = coarse.height();
        double n = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (member[y * width + x]) {
                    n++;
                    sx += x;
                    sy += y;
                    sxx += (double) x * x;
                    sxy += (double) x * y;
                    syy += (double) y * y;
                }
            }
        }
        if (n * bin * bin < LEAST_AREA_PX) {
            throw new DiskNotFound(Message.of("disk.small", (int) (n * bin * bin)));
        }
        if (onEdge(member, width, 1) > MOST_ON_EDGE) {
            throw new DiskNotFound(CUT);
        }
        double xx = sxx - sx * sx / n;
        double xy = sxy - sx * sy / n;
        double yy = syy - sy * sy / n;
        // Direction of the long axis from +x towards +y (downward), then from up and counter-clockwise as displayed.
        double fromRight = 0.5 * Math.toDegrees(Math.atan2(2 * xy, xx - yy));
        double axis = -90 - fromRight;
        axis -= 180 * Math.floor((axis + 90) / 180);
        double half = 0.5 * (bin - 1);
        return new DiskStart(levels, level, n * bin * bin, sx / n * bin + half, sy / n * bin + half, axis);
    }

    /** Means of blocks of pixels above the sky, without those that lack data; 0 for blocks that hold hardly any. */
    private static Plane aboveSky(Plane frame, double background, int bin) {
        Plane result = new Plane(frame.width() / bin, frame.height() / bin);
        for (int y = 0; y < result.height(); y++) {
            for (int x = 0; x < result.width(); x++) {
                double sum = 0;
                int n = 0;
                for (int j = y * bin; j < (y + 1) * bin; j++) {
                    for (int i = x * bin; i < (x + 1) * bin; i++) {
                        float v = frame.at(i, j);
                        if (!Float.isNaN(v)) {
                            sum += v - background;
                            n++;
                        }
                    }
                }
                result.set(x, y, n < LEAST_HELD * bin * bin ? 0 : (float) (sum / n));
            }
        }
        return result;
    }

    private static double top(Plane smooth) {
        float[] data = smooth.data();
        float peak = 0;
        for (float v : data) {
            peak = Math.max(peak, v);
        }
        double[] bright = new double[data.length];
        int n = 0;
        for (float v : data) {
            if (v > 0.5f * peak) {
                bright[n++] = v;
            }
        }
        if (n == 0) {
            return 0;
        }
        return (float) new KthSelector().select(Arrays.copyOf(bright, n), null, (int) (0.98 * (n - 1)));
    }

    /** The largest connected set of pixels above a level. */
    private static boolean[] largestPatch(Plane plane, float level) {
        int width = plane.width();
        int height = plane.height();
        float[] data = plane.data();
        boolean[] seen = new boolean[data.length];
        int[] best = new int[0];
        ArrayDeque<Integer> open = new ArrayDeque<>();
        int[] patch = new int[data.length];
        for (int start = 0; start < data.length; start++) {
            if (seen[start] || data[start] < level) {
                continue;
            }
            int size = 0;
            seen[start] = true;
            open.add(start);
            while (!open.isEmpty()) {
                int p = open.poll();
                patch[size++] = p;
                for (int q : neighbours(p, width, height)) {
                    if (!seen[q] && data[q] >= level) {
                        seen[q] = true;
                        open.add(q);
                    }
                }
            }
            if (size > best.length) {
                best = Arrays.copyOf(patch, size);
            }
        }
        boolean[] member = new boolean[data.length];
        for (int p : best) {
            member[p] = true;
        }
        return member;
    }

    /** Refuses a patch with many holes or with a clipped part. */
    private static void checkPixels(Plane frame, boolean[] member, int width, int bin, double area, double background) {
        boolean[] fine = new boolean[frame.data().length];
        boolean[] whole = withHoles(member, width);
        int missing = 0;
        int enclosed = 0;
        for (int block = 0; block < member.length; block++) {
            for (int i = 0; whole[block] && i < bin * bin; i++) {
                int p = (block / width * bin + i / bin) * frame.width() + block % width * bin + i % bin;
                fine[p] = member[block];
                missing += Float.isNaN(frame.data()[p]) ? 1 : 0;
                enclosed++;
            }
        }
        if (missing > MOST_MISSING * enclosed) {
            throw new DiskNotFound(Message.of("disk.holes", percent((double) missing / enclosed)));
        }
        double clipped = Plateau.clipped(frame, fine, background) / area;
        if (clipped > MOST_CLIPPED) {
            throw new DiskNotFound(Message.of("disk.overexposed", percent(clipped)));
        }
    }

    /** A patch and what it surrounds: all that a walk from the image's rim does not reach. */
    private static boolean[] withHoles(boolean[] member, int width) {
        int height = member.length / width;
        boolean[] outside = new boolean[member.length];
        ArrayDeque<Integer> open = new ArrayDeque<>();
        for (int p = 0; p < member.length; p++) {
            int x = p % width;
            int y = p / width;
            if ((x == 0 || y == 0 || x == width - 1 || y == height - 1) && !member[p]) {
                outside[p] = true;
                open.add(p);
            }
        }
        while (!open.isEmpty()) {
            int p = open.poll();
            for (int q : neighbours(p, width, height)) {
                if (!outside[q] && !member[q]) {
                    outside[q] = true;
                    open.add(q);
                }
            }
        }
        boolean[] whole = new boolean[member.length];
        for (int p = 0; p < whole.length; p++) {
            whole[p] = !outside[p];
        }
        return whole;
    }

    /** The four pixels beside one; itself in place of those beyond the edge. */
    private static int[] neighbours(int p, int width, int height) {
        int x = p % width;
        int y = p / width;
        return new int[] {
            x > 0 ? p - 1 : p, x < width - 1 ? p + 1 : p, y > 0 ? p - width : p, y < height - 1 ? p + width : p
        };
    }

    private static String percent(double part) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * part);
    }
}
