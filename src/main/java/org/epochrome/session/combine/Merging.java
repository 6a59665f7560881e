package org.epochrome.session.combine;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.epochrome.colour.merge.Coverage;
import org.epochrome.colour.merge.Layer;
import org.epochrome.colour.merge.Merge;
import org.epochrome.colour.merge.Merge.Merged;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.moon.removal.Moons;
import org.epochrome.session.compare.FrameLight;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.turn.Turned;
import org.epochrome.turn.Turner;

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

    private final WorkingFrames frames;
    private final Turning turning;
    private final Moons moons;
    private final View view;
    private final int width;
    private final int height;
    private final Memory memory;
    private final IntPredicate counts;
    private final Function<WorkingFrame, Turner> turners;
    /** Null where a frame does not count. */
    private final List<FrameLight> light;

    /**
     * @param frames without moons
     * @param moons what stood in front of them, laid on again where it stands at the epoch
     * @param view the globe at the epoch on the pixels of the reference frame
     */
    public Merging(WorkingFrames frames, Turning turning, Moons moons, View view, Memory memory) {
        this(frames, turning, moons, view, memory, i -> true, Turning::turner);
    }

    /**
     * @param counts which frames are merged at all; at least one of each band that is asked for
     * @param turners makes the turner of a frame, or has it already
     */
    public Merging(
            WorkingFrames frames,
            Turning turning,
            Moons moons,
            View view,
            Memory memory,
            IntPredicate counts,
            Function<WorkingFrame, Turner> turners) {
        this.frames = frames;
        this.turning = turning;
        this.moons = moons;
        this.view = view;
        this.memory = memory;
        this.counts = counts;
        this.turners = turners;
        Plane reference = frames.reference().pixels();
        width = reference.width();
        height = reference.height();
        light = IntStream.range(0, frames.size())
                .parallel()
                .mapToObj(i -> counts.test(i)
                        ? FrameLight.of(frames.get(i).pixels(), frames.get(i).disk())
                        : null)
                .toList();
    }

    /** Noise of a pixel of the output, if only this exposure made it. */
    private double noise(int index) {
        return light.get(index).noise() * magnified(index);
    }

    /** Pixels of the output along a pixel of an exposure: as often is its noise seen. */
    private double magnified(int index) {
        return view.disk().equatorialRadiusPx()
                / frames.get(index).disk().disk().equatorialRadiusPx();
    }

    /** A frame's part in its band as far as noise tells. */
    public double share(int index) {
        double all = of(frames.get(index).band()).stream()
                .mapToDouble(this::evenWeight)
                .sum();
        return evenWeight(index) / all;
    }

    private double evenWeight(int index) {
        return 1 / (noise(index) * noise(index));
    }

    private List<Integer> of(String band) {
        return IntStream.range(0, frames.size())
                .filter(counts)
                .filter(i -> frames.get(i).band().equals(band))
                .boxed()
                .toList();
    }

    /** Whether there are exposures in a band. */
    boolean has(String band) {
        return frames.all().stream().anyMatch(f -> f.band().equals(band));
    }

    /** The band of the first exposure. */
    String anyBand() {
        return frames.get(0).band();
    }

    /** The frames of a band in one plane, as bright as the one nearest to the epoch. */
    public Merged band(String band, Progress progress) {
        return band(band, List.of(moons), progress).get(0);
    }

    /**
     * A band with the moons where they stand at the epoch, and the globe alone.
     *
     * @param globe the same plane if there are no moons
     */
    record BandAndGlobe(Merged band, Merged globe) {}

    BandAndGlobe bandAndGlobe(String band, Progress progress) {
        List<Merged> both = band(band, moons.any() ? List.of(moons, Moons.NONE) : List.of(moons), progress);
        return new BandAndGlobe(both.get(0), both.get(both.size() - 1));
    }

    /** The frames of a band merged with each of some sets of moons laid on; each frame is turned once for all. */
    private List<Merged> band(String band, List<Moons> sets, Progress progress) {
        List<Integer> members = of(band);
        int step = memory.mergeRows(members.size() * sets.size(), width);
        IntFunction<Turner> turner = step < height ? kept(members) : i -> turners.apply(frames.get(i));
        List<Sharpness> sharpness = sharpness(members, sets, turner, progress);
        Strip strip = (top, rows, part) -> merged(members, sets, sharpness, turner, top, rows, part);
        List<Merged> whole =
                step < height ? inParts(strip, sets.size(), step, progress) : strip.of(0, height, progress);
        whole.forEach(m -> scale(m.mean(), level(members)));
        return whole;
    }

    /** The turners of frames that are turned in several strips, kept as far as memory allows. */
    private IntFunction<Turner> kept(List<Integer> members) {
        Map<Integer, Turner> kept = new HashMap<>();
        long room = memory.heldBytes();
        for (int i : members) {
            Turner turner = turners.apply(frames.get(i));
            room -= turner.heldBytes(view, width, height);
            if (room < 0) {
                break;
            }
            kept.put(i, turner);
        }
        return i -> kept.containsKey(i) ? kept.get(i) : turners.apply(frames.get(i));
    }

    /** Some rows of a band, merged with each set of moons. */
    @FunctionalInterface
    private interface Strip {
        List<Merged> of(int top, int rows, Progress progress);
    }

    private List<Merged> inParts(Strip strip, int sets, int step, Progress progress) {
        List<Merged> whole = Stream.generate(() -> new Merged(
                        new Plane(width, height), new Coverage(new Plane(width, height), new Plane(width, height))))
                .limit(sets)
                .toList();
        for (int top = 0; top < height; top += step) {
            int rows = Math.min(step, height - top);
            List<Merged> parts =
                    strip.of(top, rows, progress.part((double) top / height, (double) (top + rows) / height));
            for (int k = 0; k < sets; k++) {
                put(parts.get(k).mean(), whole.get(k).mean(), top);
                put(parts.get(k).coverage().frames(), whole.get(k).coverage().frames(), top);
                put(parts.get(k).coverage().weight(), whole.get(k).coverage().weight(), top);
            }
        }
        return whole;
    }

    private List<Merged> merged(
            List<Integer> members,
            List<Moons> sets,
            List<Sharpness> sharpness,
            IntFunction<Turner> turner,
            int top,
            int rows,
            Progress progress) {
        List<List<Layer>> layers = Stream.generate(() -> (List<Layer>) new ArrayList<Layer>())
                .limit(sets.size())
                .toList();
        long blurred = blurred(members);
        for (int i : members) {
            progress.check();
            Turned turned = turned(i, turner, top, rows, progress);
            for (int k = 0; k < sets.size(); k++) {
                boolean last = k == sets.size() - 1;
                Plane picture = last ? turned.picture() : turned.picture().copy();
                Plane trust = last ? turned.trust() : turned.trust().copy();
                lay(sets.get(k), i, picture, top);
                layers.get(k)
                        .add(new Layer(picture, weight(trust, i, sharpness.get(k), blurred, top), (float) noise(i)));
            }
            progress.at((double) layers.get(0).size() / members.size());
        }
        return layers.stream().map(Merge::of).toList();
    }

    /** How many frames of a band are less sharp than its sharpest. */
    private long blurred(List<Integer> members) {
        double sharpest = members.stream().mapToDouble(this::blurPx).min().orElseThrow();
        return members.stream()
                .filter(i -> Sharpness.differs(sharpest, blurPx(i)))
                .count();
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
        long epoch = frames.schedule().epoch().toEpochMilli();
        int nearest = members.stream()
                .min(Comparator.comparing(
                        i -> Math.abs(frames.get(i).exposure().mid().toEpochMilli() - epoch)))
                .orElseThrow();
        return light.get(nearest).level();
    }

    /** A frame at the epoch, in units of its own light. */
    private Turned turned(int index, IntFunction<Turner> turner, int top, int rows, Progress progress) {
        WorkingFrame frame = frames.get(index);
        Turned turned =
                turner.apply(index).turn(view, width, height, top, rows, turning.rotation(frame.exposure()), progress);
        scale(turned.picture(), frame.disk().brightness() / light.get(index).level());
        return turned;
    }

    private void lay(Moons set, int index, Plane picture, int top) {
        set.lay(
                index,
                picture,
                top,
                view,
                frames.schedule().epoch(),
                frames.get(index).disk().disk(),
                light.get(index).level());
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
        return frames.get(index).disk().shading().blurPx() * magnified(index);
    }

    /** Blur of a merged band on the output's pixels, by its frames' shares. */
    public double bandBlurPx(String band) {
        return of(band).stream().mapToDouble(i -> share(i) * blurPx(i)).sum();
    }

    /** The sharpness of a band with each of some sets of moons laid on. */
    private List<Sharpness> sharpness(
            List<Integer> members, List<Moons> sets, IntFunction<Turner> turner, Progress progress) {
        int sharpest = members.stream().min(Comparator.comparing(this::blurPx)).orElseThrow();
        double most = members.stream().mapToDouble(this::blurPx).max().orElseThrow();
        if (!Sharpness.differs(blurPx(sharpest), most)) {
            return Collections.nCopies(sets.size(), Sharpness.alike(blurPx(sharpest)));
        }
        Plane globe = turned(sharpest, turner, 0, height, progress).picture();
        return sets.stream()
                .map(set -> {
                    Plane picture = globe.copy();
                    lay(set, sharpest, picture, 0);
                    return Sharpness.of(picture, noise(sharpest), blurPx(sharpest), most);
                })
                .toList();
    }
}
