package org.epochrome.io.write;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.epochrome.image.Plane;

/**
 * The 256 colours that suit some pictures best: median cut (Heckbert 1982, SIGGRAPH 16, 297) over colours of 6 bits, then
 * some rounds of Lloyd's iteration (Lloyd 1982, IEEE Trans. Inf. Theory 28, 129).
 */
final class Palette {
    private static final int SIZE = 256;
    private static final int BITS = 6;
    private static final int LEVELS = 1 << BITS;
    private static final int ROUNDS = 5;
    /** Ordered dither (Bayer 1973), 4 x 4; it stands still, so an animation does not boil. */
    private static final int[] BAYER = {0, 8, 2, 10, 12, 4, 14, 6, 3, 11, 1, 9, 15, 7, 13, 5};
    /** About the distance of neighbouring colours of a planet's palette, of 255. */
    private static final double DITHER = 4;

    /** Red, green, blue of each entry, 0 to 255. */
    private final double[][] colours;

    private final int[] nearest = new int[LEVELS * LEVELS * LEVELS];

    private Palette(double[][] colours) {
        this.colours = colours;
        Arrays.fill(nearest, -1);
    }

    /** The palette for some pictures. */
    public static Palette of(List<List<Plane>> pictures) {
        int[] counts = new int[LEVELS * LEVELS * LEVELS];
        for (List<Plane> picture : pictures) {
            for (int i = 0; i < picture.get(0).data().length; i++) {
                counts[cell(picture, i, 0)]++;
            }
        }
        int[] used =
                IntStream.range(0, counts.length).filter(c -> counts[c] > 0).toArray();
        double[][] colours = cut(used, counts);
        for (int round = 0; round < ROUNDS; round++) {
            colours = relaxed(colours, used, counts);
        }
        return new Palette(colours);
    }

    private static double[][] cut(int[] used, int[] counts) {
        List<int[]> boxes = new ArrayList<>(List.of(used));
        while (boxes.size() < SIZE) {
            int widest = -1;
            double most = 0;
            for (int b = 0; b < boxes.size(); b++) {
                double spread = spread(boxes.get(b), counts, axis(boxes.get(b)));
                if (boxes.get(b).length > 1 && spread > most) {
                    most = spread;
                    widest = b;
                }
            }
            if (widest < 0) {
                break;
            }
            int[] box = boxes.remove(widest);
            int axis = axis(box);
            int[] sorted = Arrays.stream(box)
                    .boxed()
                    .sorted(Comparator.comparingInt((Integer c) -> part(c, axis))
                            .thenComparingInt(c -> c))
                    .mapToInt(c -> c)
                    .toArray();
            long all = Arrays.stream(sorted).mapToLong(c -> counts[c]).sum();
            long below = counts[sorted[0]];
            int at = 1;
            while (at < sorted.length - 1 && 2 * below < all) {
                below += counts[sorted[at++]];
            }
            boxes.add(Arrays.copyOf(sorted, at));
            boxes.add(Arrays.copyOfRange(sorted, at, sorted.length));
        }
        return boxes.stream().map(box -> mean(box, counts)).toArray(double[][]::new);
    }

    /** How much there is to gain by cutting a box: its extent times the root of what it holds. */
    private static double spread(int[] box, int[] counts, int axis) {
        long all = Arrays.stream(box).mapToLong(c -> counts[c]).sum();
        return extent(box, axis) * Math.sqrt((double) all);
    }

    private static int axis(int[] box) {
        int axis = 0;
        for (int k = 1; k < 3; k++) {
            axis = extent(box, k) > extent(box, axis) ? k : axis;
        }
        return axis;
    }

    private static int extent(int[] box, int axis) {
        int least = Arrays.stream(box).map(c -> part(c, axis)).min().orElse(0);
        int most = Arrays.stream(box).map(c -> part(c, axis)).max().orElse(0);
        return most - least;
    }

    private static double[] mean(int[] box, int[] counts) {
        double[] sum = new double[3];
        double weight = 0;
        for (int c : box) {
            for (int k = 0; k < 3; k++) {
                sum[k] += counts[c] * level(part(c, k));
            }
            weight += counts[c];
        }
        double all = weight;
        return Arrays.stream(sum).map(s -> s / all).toArray();
    }

    private static double[][] relaxed(double[][] colours, int[] used, int[] counts) {
        double[][] sums = new double[colours.length][4];
        for (int c : used) {
            double[] sum = sums[nearest(colours, c)];
            for (int k = 0; k < 3; k++) {
                sum[k] += counts[c] * level(part(c, k));
            }
            sum[3] += counts[c];
        }
        double[][] moved = new double[colours.length][];
        for (int i = 0; i < colours.length; i++) {
            double[] sum = sums[i];
            moved[i] = sum[3] > 0 ? new double[] {sum[0] / sum[3], sum[1] / sum[3], sum[2] / sum[3]} : colours[i];
        }
        return moved;
    }

    private static int nearest(double[][] colours, int cell) {
        double red = level(part(cell, 0));
        double green = level(part(cell, 1));
        double blue = level(part(cell, 2));
        int best = 0;
        double least = Double.MAX_VALUE;
        for (int i = 0; i < colours.length; i++) {
            double r = colours[i][0] - red;
            double g = colours[i][1] - green;
            double b = colours[i][2] - blue;
            double distance = r * r + g * g + b * b;
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }

    IndexColorModel model() {
        byte[][] parts = new byte[3][SIZE];
        for (int i = 0; i < colours.length; i++) {
            for (int k = 0; k < 3; k++) {
                parts[k][i] = (byte) Math.round(colours[i][k]);
            }
        }
        return new IndexColorModel(8, SIZE, parts[0], parts[1], parts[2]);
    }

    /** A picture in these colours. */
    BufferedImage dithered(List<Plane> picture, IndexColorModel model) {
        int width = picture.get(0).width();
        int height = picture.get(0).height();
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_INDEXED, model);
        int[] row = new int[width];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double dither = DITHER * ((BAYER[(y & 3) * 4 + (x & 3)] + 0.5) / BAYER.length - 0.5);
                int cell = cell(picture, y * width + x, dither);
                if (nearest[cell] < 0) {
                    nearest[cell] = nearest(colours, cell);
                }
                row[x] = nearest[cell];
            }
            image.getRaster().setSamples(0, y, width, 1, 0, row);
        }
        return image;
    }

    /** Number of the cell of colours that a pixel falls in, after some shades of 255 are added to it. */
    private static int cell(List<Plane> picture, int pixel, double added) {
        int cell = 0;
        for (Plane plane : picture) {
            float value = plane.data()[pixel];
            // Black sky stays black.
            double shade = value > 0.004f ? 255 * Math.min(1, value) + added : 0;
            int level = (int) Math.round(Math.max(0, Math.min(255, shade)) * (LEVELS - 1) / 255);
            cell = cell * LEVELS + level;
        }
        return cell;
    }

    private static int part(int cell, int colour) {
        return cell >> (BITS * (2 - colour)) & (LEVELS - 1);
    }

    private static double level(int part) {
        return part * 255.0 / (LEVELS - 1);
    }
}
