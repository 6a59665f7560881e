package org.epochrome.disk.model;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.util.KthSelector;
import org.epochrome.disk.BilinearShare;
import org.epochrome.disk.Disk;
import org.epochrome.disk.View;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.disk.start.Levels;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.text.Message;

/**
 * The part of a frame around its disk on coarser pixels, each the mean of {@code bin} by {@code bin} of the frame's, in
 * units of the disk's brightness above the sky. A blurred picture loses nothing by it as long as the blur stays a good
 * pixel wide.
 *
 * @param data the means; NaN where a pixel is missing
 * @param cut pixels whose light was cut off at the frame's least value, and may have been less
 * @param surroundings sky and wings in them
 * @param bin frame pixels per side of a coarse pixel
 * @param left frame column of the first pixel
 * @param top frame row of the first pixel
 * @param softness standard deviation of an additional blur, coarse pixels
 * @param skyNoise standard deviation of a coarse pixel of the sky
 * @param diskNoise the same where the disk is bright
 */
public record Samples(
        Plane data,
        BitSet cut,
        Surroundings surroundings,
        int bin,
        int left,
        int top,
        double softness,
        double skyNoise,
        double diskNoise) {
    private static final double MARGIN = 0.65;
    /** Part of a softened pixel's surroundings that must be known. */
    private static final double KNOWN = 0.3;

    /** Light that is so many times brighter than the disk is not of it. */
    private static final float OTHER_LIGHT = 4;
    /** Part of a frame's pixels that have its least value if it was cut off there. */
    private static final double CUT = 0.01;

    /** Blur in coarse pixels below which diffraction shapes it, if they are the frame's own. */
    private static final double SHARP = 1.6;

    private static final int LEAST_MARGIN_PX = 8;
    /** Least noise that is believed: rounding to whole numbers can hide it. */
    private static final double LEAST_NOISE = 1e-4;

    /**
     * Samples of a disk and the sky around it.
     *
     * @param softeningPx standard deviation of a blur that the frame gets first; 0 for none
     */
    public static Samples around(Plane frame, Disk disk, double blurPx, double softeningPx, Levels levels, int bin) {
        double radius = disk.equatorialRadiusPx();
        return around(frame, disk, radius, radius, blurPx, softeningPx, levels, bin, true);
    }

    /**
     * Samples of a disk, of what lies around it and of the sky.
     *
     * @param across distance of the outermost light from the disk's centre in columns
     * @param along the same in rows
     * @param softeningPx standard deviation of a blur that the frame gets first; 0 for none
     * @param diffraction whether wings may lie as close to the core as diffraction rings do
     */
    public static Samples around(
            Plane frame,
            Disk disk,
            double across,
            double along,
            double blurPx,
            double softeningPx,
            Levels levels,
            int bin,
            boolean diffraction) {
        double margin = disk.equatorialRadiusPx() * MARGIN + LEAST_MARGIN_PX + 4 * Math.hypot(blurPx, softeningPx);
        int left = (int) Math.max(0, Math.floor(disk.x() - across - margin));
        int top = (int) Math.max(0, Math.floor(disk.y() - along - margin));
        int right = (int) Math.min(frame.width() - 1, Math.ceil(disk.x() + across + margin));
        int bottom = (int) Math.min(frame.height() - 1, Math.ceil(disk.y() + along + margin));
        int width = (right - left + 1) / bin;
        int height = (bottom - top + 1) / bin;
        if (width < 8 || height < 8) {
            throw new DiskNotFound(Message.of("disk.leftImage"));
        }
        Plane part = part(frame, left, top, width * bin, height * bin, levels);
        Plane means = Binning.by(bin, softeningPx > 0 ? softened(part, softeningPx) : part);
        double sky = Math.max(LEAST_NOISE, levels.noise() / levels.top());
        double lit = Math.max(sky, diskNoise(frame, disk, levels) / levels.top());
        double core = Math.max(1, Math.hypot(blurPx, softeningPx) / bin);
        return new Samples(
                means,
                cut(frame, left, top, bin, means),
                new Surroundings(means, core, diffraction && bin == 1 && core < SHARP),
                bin,
                left,
                top,
                softeningPx / bin,
                sky / bin,
                lit / bin);
    }

    /** Coarse pixels that hold one of the frame's least value, if so many have that value that it was cut off there. */
    private static BitSet cut(Plane frame, int left, int top, int bin, Plane means) {
        float least = Float.POSITIVE_INFINITY;
        int count = 0;
        for (float v : frame.data()) {
            count = v < least ? 1 : v == least ? count + 1 : count;
            least = Math.min(least, Float.isNaN(v) ? least : v);
        }
        BitSet cut = new BitSet();
        if (count < CUT * frame.data().length) {
            return cut;
        }
        for (int y = 0; y < means.height() * bin; y++) {
            for (int x = 0; x < means.width() * bin; x++) {
                if (frame.at(left + x, top + y) == least) {
                    cut.set(y / bin * means.width() + x / bin);
                }
            }
        }
        return cut;
    }

    /** Part of the sky around a disk where light was cut off. */
    public double cutPart(View view) {
        int sky = 0;
        for (int y = 0; y < data.height(); y++) {
            for (int x = 0; x < data.width(); x++) {
                sky += view.ellipticRadius(view.pole(x, y), view.side(x, y)) > 1 ? 1 : 0;
            }
        }
        return cut.isEmpty() ? 0 : Math.min(1, cut.cardinality() / (double) Math.max(1, sky));
    }

    /** The samples with other values where light was cut off; only the surroundings are made of those. */
    Samples completed(IntToDoubleFunction value) {
        if (cut.isEmpty()) {
            return this;
        }
        Plane whole = data.copy();
        cut.stream().forEach(p -> whole.data()[p] = (float) Math.min(data.data()[p], value.applyAsDouble(p)));
        return new Samples(data, cut, surroundings.of(whole), bin, left, top, softness, skyNoise, diskNoise);
    }

    /** A part of the frame in units of the disk's brightness above the sky. */
    private static Plane part(Plane frame, int left, int top, int width, int height, Levels levels) {
        Plane part = new Plane(width, height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                float light = (float) ((frame.at(left + x, top + y) - levels.background()) / levels.top());
                part.set(x, y, light > OTHER_LIGHT ? Float.NaN : light);
            }
        }
        return part;
    }

    /** A plane blurred; missing pixels, and those near them, stay missing. */
    private static Plane softened(Plane plane, double sigmaPx) {
        Plane known = new Plane(plane.width(), plane.height());
        Plane light = new Plane(plane.width(), plane.height());
        boolean whole = true;
        for (int i = 0; i < plane.data().length; i++) {
            if (Float.isNaN(plane.data()[i])) {
                whole = false;
            } else {
                known.data()[i] = 1;
                light.data()[i] = plane.data()[i];
            }
        }
        Plane soft = Gaussian.blur(light, sigmaPx);
        if (whole) {
            return soft;
        }
        Plane part = Gaussian.blur(known, sigmaPx);
        for (int i = 0; i < soft.data().length; i++) {
            soft.data()[i] = part.data()[i] > KNOWN ? soft.data()[i] / part.data()[i] : Float.NaN;
        }
        return soft;
    }

    /** Noise of single bright pixels, from their second differences, which a blurred picture hardly has. */
    private static double diskNoise(Plane frame, Disk disk, Levels levels) {
        double reach = 0.6 * disk.equatorialRadiusPx();
        double bright = levels.background() + 0.5 * levels.top();
        int first = (int) Math.max(1, disk.x() - reach);
        int last = (int) Math.min(frame.width() - 2, disk.x() + reach);
        double[] found = new double[((int) (2 * reach + 1)) * Math.max(0, last - first + 1)];
        int n = 0;
        for (int y = (int) Math.max(0, disk.y() - reach); y < Math.min(frame.height(), disk.y() + reach); y += 2) {
            for (int x = first; x <= last; x++) {
                double bend = frame.at(x - 1, y) - 2.0 * frame.at(x, y) + frame.at(x + 1, y);
                if (frame.at(x, y) > bright && !Double.isNaN(bend)) {
                    found[n++] = Math.abs(bend);
                }
            }
        }
        if (n < 20) {
            return levels.noise();
        }
        return 1.4826 * new KthSelector().select(Arrays.copyOf(found, n), null, n / 2) / Math.sqrt(6);
    }

    /** A disk of the frame on the coarse pixels. */
    public Disk inward(Disk disk) {
        double half = 0.5 * (bin - 1);
        return new Disk(
                (disk.x() - left - half) / bin,
                (disk.y() - top - half) / bin,
                disk.equatorialRadiusPx() / bin,
                disk.northAngleDeg(),
                disk.mirrored());
    }

    /** A disk on the coarse pixels in the frame. */
    public Disk outward(Disk disk) {
        double half = 0.5 * (bin - 1);
        return new Disk(
                disk.x() * bin + half + left,
                disk.y() * bin + half + top,
                disk.equatorialRadiusPx() * bin,
                disk.northAngleDeg(),
                disk.mirrored());
    }

    /** The blur on the coarse pixels, on top of that by their area. */
    public double blurInward(double blurPx) {
        return Math.sqrt(Math.max(
                0.1, blurPx * blurPx / (bin * bin) + softness * softness - BilinearShare.VARIANCE + Layers.PIXEL));
    }

    /** The blur in the frame. */
    public double blurOutward(double blurPx) {
        return bin
                * Math.sqrt(
                        Math.max(0.09, blurPx * blurPx - softness * softness + BilinearShare.VARIANCE - Layers.PIXEL));
    }

    /** Variance of a coarse pixel of the given brightness. */
    public double variance(double brightness) {
        double sky = skyNoise * skyNoise;
        return sky + (diskNoise * diskNoise - sky) * Math.max(0, Math.min(1.5, brightness));
    }
}
