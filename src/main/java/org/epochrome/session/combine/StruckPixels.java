package org.epochrome.session.combine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.job.Progress;
import org.epochrome.job.Rows;
import org.epochrome.session.compare.FrameLight;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;
import org.epochrome.turn.Rotation;

/**
 * Pixels hit by cosmic rays, found by comparing the frames of a band. On a disk as sharp as its pixels a ray looks like a small
 * cloud, so no single frame tells them apart; but a cloud is in the other frames of its band too, where the rotation has carried it.
 *
 * <p>Only sharp frames are compared. In others a ray is sharper than any detail and was found in its own frame.
 */
final class StruckPixels {
    /** Blur above which a single frame tells rays from detail, pixels (1 sigma). */
    private static final double SHARP_PX = 0.9;
    /** Standard deviations of the noise by which a struck pixel stands out, and one beside it. */
    private static final double SIGMAS = 5;

    private static final double SIGMAS_BESIDE = 2.5;
    /** So many times what the other frames show there: the pixel grid changes the peak of a small cloud by up to 2.4. */
    private static final double OTHERS = 2.5;

    private static final double OTHERS_BESIDE = 1.5;
    /** Radii of the disk within which pixels are compared. */
    private static final double REACH = 1.3;
    /** Radii beyond which a spot may be a moon that moved between the frames. */
    private static final double BESIDE_DISK = 1.03;

    private static final double MOON_PATH_PX = 8;
    private static final double MOON_LIKE = 0.3;
    /** Cosine of the emission angle below which a place is too foreshortened to be found again. */
    private static final double GRAZING = 0.1;

    private final Turning turning;
    private final WorkingFrames frames;
    /** By how much pixels exceed those around them, in the part of each frame that is compared. */
    private final List<Plane> excesses;
    /** That part, once it was looked at. */
    private final Region[] parts;

    private StruckPixels(WorkingFrames frames, Turning turning, Memory memory) {
        this.turning = turning;
        this.frames = frames;
        parts = new Region[frames.size()];
        excesses = new PlaneStore(frames.size(), this::excess, memory.heldBytes());
    }

    /**
     * Compares the frames.
     *
     * @param frames with an even sky, without moons
     * @return the frames without data where they were struck, and a note that says so
     */
    static WorkingFrames leftOut(WorkingFrames frames, Turning turning, Memory memory, Progress progress) {
        StruckPixels found = new StruckPixels(frames, turning, memory);
        List<WorkingFrame> result = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            progress.check();
            List<Integer> others = found.others(i);
            BitSet struck = others.isEmpty() ? new BitSet() : found.in(i, others);
            result.add(struck.isEmpty() ? frames.get(i) : without(frames.get(i), struck, found.parts[i]));
        }
        WorkingFrames bare = new WorkingFrames(frames.schedule(), result, frames.warnings());
        return bare.remade(i -> bare.get(i).pixels(), memory, progress);
    }

    /** A frame with no data in some places of a part of it. */
    private static WorkingFrame without(WorkingFrame frame, BitSet struck, Region part) {
        int count = struck.cardinality();
        return frame.with(() -> {
                    Plane masked = frame.pixels().copy();
                    struck.stream()
                            .forEach(p -> masked.set(
                                    part.left() + p % part.width(), part.top() + p / part.width(), Float.NaN));
                    return masked;
                })
                .noting(Message.of(count == 1 ? "defect.struckPixel" : "defect.struck", count));
    }

    /** Sharp frames of the same band. */
    private List<Integer> others(int index) {
        String band = frames.get(index).band();
        return IntStream.range(0, frames.size())
                .filter(i -> i != index && isSharp(index) && isSharp(i))
                .filter(i -> frames.get(i).band().equals(band))
                .boxed()
                .toList();
    }

    private boolean isSharp(int index) {
        FittedDisk disk = frames.get(index).disk();
        return disk.shading().blurPx() < SHARP_PX && disk.rings().isNone();
    }

    private BitSet in(int index, List<Integer> others) {
        Plane excess = excesses.get(index);
        double sigma = sigma(index);
        BitSet hit = struck(index, above(excess, SIGMAS * sigma), others, SIGMAS * sigma, OTHERS);
        // Light beside a ray's core is too faint to be told from detail, but it is the ray's.
        BitSet touched = (BitSet) hit.clone();
        BitSet asked = new BitSet();
        BitSet last = hit;
        while (!last.isEmpty()) {
            BitSet beside = new BitSet();
            last.stream().forEach(p -> beside.or(around(p, excess)));
            touched.or(beside);
            beside.andNot(hit);
            beside.andNot(asked);
            asked.or(beside);
            beside.and(above(excess, SIGMAS_BESIDE * sigma));
            last = struck(index, beside, others, SIGMAS_BESIDE * sigma, OTHERS_BESIDE);
            hit.or(last);
        }
        return touched;
    }

    /** The pixels of a plane that exceed a value. */
    private static BitSet above(Plane plane, double least) {
        BitSet above = new BitSet();
        for (int p = 0; p < plane.data().length; p++) {
            above.set(p, plane.data()[p] > least);
        }
        return above;
    }

    /** Noise of a pixel on the disk, as a part of the disk's brightness. */
    private double sigma(int index) {
        FittedDisk fit = frames.get(index).disk();
        FrameLight light = FrameLight.of(frames.get(index).pixels(), fit);
        return light.noise() * light.level() / fit.brightness();
    }

    /**
     * Those among some pixels that stand out from what the other frames show there. All are looked up in one frame after the other, for a
     * frame that memory does not hold is made again each time.
     */
    private BitSet struck(int index, BitSet pixels, List<Integer> others, double noise, double factor) {
        int[] asked = pixels.stream().toArray();
        if (asked.length == 0) {
            return new BitSet();
        }
        Plane excess = excesses.get(index);
        double[][] seen = new double[asked.length][others.size()];
        for (int k = 0; k < others.size(); k++) {
            int other = others.get(k);
            Plane there = excesses.get(other);
            for (int i = 0; i < asked.length; i++) {
                int x = asked[i] % excess.width();
                int y = asked[i] / excess.width();
                seen[i][k] = shown(index, x, y, other, there, excess.at(x, y));
            }
        }
        BitSet struck = new BitSet();
        for (int i = 0; i < asked.length; i++) {
            // NaN, where a frame does not see the place, comes last.
            Arrays.sort(seen[i]);
            int count =
                    (int) Arrays.stream(seen[i]).filter(v -> !Double.isNaN(v)).count();
            struck.set(
                    asked[i], count > 0 && excess.data()[asked[i]] > noise + factor * Math.max(0, seen[i][count / 2]));
        }
        return struck;
    }

    /** What another frame shows where the rotation has carried a pixel; NaN if it does not see the place. */
    private double shown(int index, int x, int y, int other, Plane excess, float size) {
        View here = view(index);
        View there = view(other);
        double pole = here.pole(x, y);
        double side = here.side(x, y);
        double depth = here.depth(pole, side);
        if (Double.isNaN(depth)) {
            return beside(
                    excess, there.column(pole, side), there.row(pole, side), here.ellipticRadius(pole, side), size);
        }
        double bodyX = here.bodyX(pole, depth);
        double bodyZ = here.bodyZ(pole, depth);
        double latitude = here.graphicLatitude(bodyX, side, bodyZ);
        double angle = rotation(other).backRad(latitude) - rotation(index).backRad(latitude);
        double thenX = bodyX * Math.cos(angle) - side * Math.sin(angle);
        double thenY = bodyX * Math.sin(angle) + side * Math.cos(angle);
        if (there.cosEmission(thenX, thenY, bodyZ) < GRAZING) {
            return Double.NaN;
        }
        double thenPole = there.poleOf(thenX, bodyZ);
        return most(excess, there.column(thenPole, thenY), there.row(thenPole, thenY), 1);
    }

    /** What a frame shows beside its disk; a spot nearby that is about as bright may be the same moon. */
    private static double beside(Plane excess, double x, double y, double radius, float size) {
        double near = most(excess, x, y, 1);
        double around = radius > BESIDE_DISK ? most(excess, x, y, MOON_PATH_PX) : near;
        return around > MOON_LIKE * size ? around : near;
    }

    /** A frame's view on the part that is compared. */
    private View view(int index) {
        WorkingFrame frame = frames.get(index);
        return new View(frame.exposure().globe(), frame.disk().disk()).on(parts[index]);
    }

    private Rotation rotation(int index) {
        return turning.rotationOfGlobe(frames.get(index).exposure());
    }

    /** The largest value within some pixels of a place; NaN if there is none. */
    private static double most(Plane plane, double x, double y, double reachPx) {
        double most = Double.NaN;
        int reach = (int) Math.ceil(reachPx);
        int column = (int) Math.round(x);
        int row = (int) Math.round(y);
        for (int j = Math.max(0, row - reach); j <= Math.min(plane.height() - 1, row + reach); j++) {
            for (int i = Math.max(0, column - reach); i <= Math.min(plane.width() - 1, column + reach); i++) {
                float value = plane.at(i, j);
                most = value > most || Double.isNaN(most) ? value : most;
            }
        }
        return most;
    }

    /** By how much the pixels of a frame exceed the median of those around them, as parts of the disk's brightness. */
    private Plane excess(int index) {
        FittedDisk fit = frames.get(index).disk();
        Plane whole = frames.get(index).pixels();
        double reach = REACH * fit.disk().equatorialRadiusPx();
        Region part = Region.around(fit.disk().x(), fit.disk().y(), reach, whole.width(), whole.height());
        parts[index] = part;
        Plane frame = part.of(whole);
        View view = view(index);
        Plane shade = fit.shading().picture(view, frame.width(), frame.height());
        Plane left = new Plane(frame.width(), frame.height());
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                boolean near = view.ellipticRadius(view.pole(x, y), view.side(x, y)) < REACH;
                double light = (frame.at(x, y) - fit.background()) / fit.brightness();
                left.set(x, y, near ? (float) (light - shade.at(x, y)) : Float.NaN);
            }
        }
        Plane excess = new Plane(frame.width(), frame.height());
        Rows.each(frame.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < left.width(); x++) {
                    boolean known = !Float.isNaN(left.at(x, y));
                    excess.set(x, y, known ? (float) (left.at(x, y) - medianAround(left, x, y)) : Float.NaN);
                }
            }
        });
        return excess;
    }

    private static double medianAround(Plane plane, int x, int y) {
        float[] values = new float[24];
        int count = 0;
        for (int j = Math.max(0, y - 2); j <= Math.min(plane.height() - 1, y + 2); j++) {
            for (int i = Math.max(0, x - 2); i <= Math.min(plane.width() - 1, x + 2); i++) {
                float value = plane.at(i, j);
                if (!Float.isNaN(value) && (i != x || j != y)) {
                    values[count++] = value;
                }
            }
        }
        Arrays.sort(values, 0, count);
        return count == 0 ? Double.NaN : values[count / 2];
    }

    private static BitSet around(int p, Plane plane) {
        int x = p % plane.width();
        int y = p / plane.width();
        BitSet around = new BitSet();
        for (int j = Math.max(0, y - 1); j <= Math.min(plane.height() - 1, y + 1); j++) {
            int left = j * plane.width() + Math.max(0, x - 1);
            around.set(left, j * plane.width() + Math.min(plane.width() - 1, x + 1) + 1);
        }
        return around;
    }
}
