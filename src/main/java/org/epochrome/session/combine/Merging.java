package org.epochrome.session.combine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.epochrome.colour.merge.Coverage;
import org.epochrome.colour.merge.Layer;
import org.epochrome.colour.merge.Merge;
import org.epochrome.colour.merge.Merge.Merged;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.moon.removal.Moons;
import org.epochrome.session.compare.FrameLight;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.turn.Turned;

/**
 * Turns the exposures of a band to the epoch and merges them, as many rows at a time as memory allows.
 *
 * <p>A pixel's weight is {@code trust / (noise^2 + m bias^2)}: the less noise the more, the better seen the more, and a
 * blurred frame the less where the picture is finely detailed. The m blurred frames of a band are off alike, so that
 * their mean is no better than one of them; hence the factor.
 */
public final class Merging {
    /** Trust in a hole that was filled from around it: enough where no frame saw the place, next to nothing where one did. */
    private static final float LEAST_TRUST = 2e-6f;

    private final Schedule schedule;
    private final Turning turning;
    private final List<Plane> planes;
    private final Moons moons;
    private final List<FittedDisk> fits;
    private final View view;
    private final int width;
    private final int height;
    private final Memory memory;
    private final IntPredicate counts;
    /** Null where an exposure does not count. */
    private final List<FrameLight> light;

    /**
     * @param planes pixels of the exposures, without moons
     * @param moons what stood in front of them, laid on again where it stands at the epoch
     * @param fits where the disks lie
     * @param view the globe at the epoch on the pixels of the reference frame
     */
    public Merging(
            Schedule schedule,
            Turning turning,
            List<Plane> planes,
            Moons moons,
            List<FittedDisk> fits,
            View view,
            Memory memory) {
        this(schedule, turning, planes, moons, fits, view, memory, i -> true);
    }

    /** @param counts which exposures are merged at all; at least one of each band that is asked for */
    public Merging(
            Schedule schedule,
            Turning turning,
            List<Plane> planes,
            Moons moons,
            List<FittedDisk> fits,
            View view,
            Memory memory,
            IntPredicate counts) {
        this.counts = counts;
        this.schedule = schedule;
        this.turning = turning;
        this.planes = planes;
        this.moons = moons;
        this.fits = fits;
        this.view = view;
        this.memory = memory;
        Plane reference = planes.get(schedule.reference());
        width = reference.width();
        height = reference.height();
        light = IntStream.range(0, fits.size())
                .parallel()
                .mapToObj(i -> counts.test(i) ? FrameLight.of(planes.get(i), fits.get(i)) : null)
                .toList();
    }

    /** The merging of the globe alone. */
    Merging withoutMoons() {
        return new Merging(schedule, turning, planes, Moons.NONE, fits, view, memory, counts);
    }

    /** Noise of a pixel of the output, if only this exposure made it. */
    private double noise(int index) {
        return light.get(index).noise() * magnified(index);
    }

    /** Pixels of the output along a pixel of an exposure: as often is its noise seen. */
    private double magnified(int index) {
        return view.disk().equatorialRadiusPx() / fits.get(index).disk().equatorialRadiusPx();
    }

    /** A frame's part in its band as far as noise tells. */
    public double share(int index) {
        double all = of(schedule.exposures().get(index).band().name()).stream()
                .mapToDouble(this::evenWeight)
                .sum();
        return evenWeight(index) / all;
    }

    private double evenWeight(int index) {
        return 1 / (noise(index) * noise(index));
    }

    private List<Integer> of(String band) {
        return IntStream.range(0, fits.size())
                .filter(counts)
                .filter(i -> schedule.exposures().get(i).band().name().equals(band))
                .boxed()
                .toList();
    }

    /** Whether there are exposures in a band. */
    boolean has(String band) {
        return schedule.exposures().stream().anyMatch(e -> e.band().name().equals(band));
    }

    /** The band of the first exposure. */
    String anyBand() {
        return schedule.exposures().get(0).band().name();
    }

    /** The exposures of a band in one plane, as bright as the one nearest to the epoch. */
    public Merged band(String band, Progress progress) {
        List<Integer> members = of(band);
        Sharpness sharpness = sharpness(members, progress);
        double sharpest = members.stream().mapToDouble(this::blurPx).min().orElseThrow();
        long blurred = members.stream()
                .filter(i -> Sharpness.differs(sharpest, blurPx(i)))
                .count();
        int step = memory.mergeRows(members.size(), width);
        Layers layers = (top, rows, part) -> merged(members, sharpness, blurred, top, rows, part);
        Merged whole = step < height ? inParts(layers, step, progress) : layers.of(0, height, progress);
        scale(whole.mean(), level(members));
        return whole;
    }

    /** Some rows of a band, merged. */
    @FunctionalInterface
    private interface Layers {
        Merged of(int top, int rows, Progress progress);
    }

    private Merged inParts(Layers layers, int step, Progress progress) {
        Merged whole =
                new Merged(new Plane(width, height), new Coverage(new Plane(width, height), new Plane(width, height)));
        for (int top = 0; top < height; top += step) {
            int rows = Math.min(step, height - top);
            Merged part = layers.of(top, rows, progress.part((double) top / height, (double) (top + rows) / height));
            put(part.mean(), whole.mean(), top);
            put(part.coverage().frames(), whole.coverage().frames(), top);
            put(part.coverage().weight(), whole.coverage().weight(), top);
        }
        return whole;
    }

    private Merged merged(
            List<Integer> members, Sharpness sharpness, long blurred, int top, int rows, Progress progress) {
        List<Layer> layers = new ArrayList<>();
        for (int i : members) {
            progress.check();
            Turned turned = turned(i, top, rows, progress);
            layers.add(
                    new Layer(turned.picture(), weight(turned.trust(), i, sharpness, blurred, top), (float) noise(i)));
            progress.at((double) layers.size() / members.size());
        }
        return Merge.of(layers);
    }

    private static void put(Plane rows, Plane into, int top) {
        System.arraycopy(rows.data(), 0, into.data(), top * into.width(), rows.data().length);
    }

    private static void scale(Plane plane, double factor) {
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] *= (float) factor;
        }
    }

    private double level(List<Integer> members) {
        int nearest = members.stream()
                .min(Comparator.comparing(
                        i -> Math.abs(schedule.exposures().get(i).mid().toEpochMilli()
                                - schedule.epoch().toEpochMilli())))
                .orElseThrow();
        return light.get(nearest).level();
    }

    /** An exposure at the epoch, in units of its own light. */
    private Turned turned(int index, int top, int rows, Progress progress) {
        Turned turned = turning.turn(
                planes.get(index),
                fits.get(index),
                schedule.exposures().get(index),
                view,
                width,
                height,
                top,
                rows,
                progress);
        scale(turned.picture(), fits.get(index).brightness() / light.get(index).level());
        moons.lay(
                index,
                turned.picture(),
                top,
                view,
                schedule.epoch(),
                fits.get(index).disk(),
                light.get(index).level());
        return turned;
    }

    /** Makes an exposure's weight of the trust in its pixels, in place. */
    private Plane weight(Plane weight, int index, Sharpness sharpness, long blurred, int top) {
        float square = (float) (noise(index) * noise(index));
        float part = (float) (blurred * sharpness.part(blurPx(index)));
        for (int i = 0; i < weight.data().length; i++) {
            float bias = part * sharpness.squaredError(i + top * width);
            weight.data()[i] = Math.max(LEAST_TRUST, weight.data()[i]) / (square + bias);
        }
        return weight;
    }

    /** Blur of an exposure on the output's pixels. */
    private double blurPx(int index) {
        return fits.get(index).shading().blurPx() * magnified(index);
    }

    /** Blur of a merged band on the output's pixels, by its frames' shares. */
    public double bandBlurPx(String band) {
        return of(band).stream().mapToDouble(i -> share(i) * blurPx(i)).sum();
    }

    private Sharpness sharpness(List<Integer> members, Progress progress) {
        int sharpest = members.stream().min(Comparator.comparing(this::blurPx)).orElseThrow();
        double most = members.stream().mapToDouble(this::blurPx).max().orElseThrow();
        return Sharpness.differs(blurPx(sharpest), most)
                ? Sharpness.of(turned(sharpest, 0, height, progress).picture(), noise(sharpest), blurPx(sharpest), most)
                : Sharpness.alike(blurPx(sharpest));
    }
}
