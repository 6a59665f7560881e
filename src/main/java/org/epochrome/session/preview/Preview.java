package org.epochrome.session.preview;

import java.time.Instant;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.finish.BandLight;
import org.epochrome.colour.finish.Framed;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.disk.Disk;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Band;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.job.Progress;
import org.epochrome.moon.removal.Moons;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.DispersionRemoval;
import org.epochrome.session.combine.MergedBands;
import org.epochrome.session.combine.Merging;
import org.epochrome.session.combine.MoonlessFrames;
import org.epochrome.session.locate.DiskFinder;
import org.epochrome.session.locate.NoDiskInFrame;
import org.epochrome.session.product.Finishing;
import org.epochrome.session.product.Legend;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.register.Registration;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.ExposureReader;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;
import org.epochrome.turn.Turner;

/**
 * Frames kept in memory on coarser pixels with their disks, so that their picture at another epoch, shifted or finished
 * otherwise, is there within a few hundredths of a second. It is what a combination gives, but for the size of its pixels,
 * and for what a rough preview lacks: it has its disks only from a quick fit, and its moons turn with the globe.
 */
public final class Preview {
    /** Frames are binned to about so many pixels across. */
    private static final int ACROSS_PX = 320;
    /** Frames of a band, those nearest to the epoch, that are fitted for a first picture: each takes its time. */
    private static final int FITTED_PER_BAND = 1;
    /** So many, once their disks are known, show what a hundred show; more would only take longer. */
    private static final int MOST_PER_BAND = 3;

    private final List<Exposure> whole;
    private final int factor;
    /** On coarse pixels, as read, with the disks that were found. */
    private final WorkingFrames frames;

    private final Moons moons;
    private final WorkingFrames withMoons;
    private final WorkingFrames withoutMoons;
    /** The body stands nearly alike through a session; what it is seen by need not be drawn anew for each epoch. */
    private final View view;

    private final Plane litDisk;
    private final Memory memory = Memory.ofThisHeap();
    private final Map<Plane, Kept> turners = Collections.synchronizedMap(new IdentityHashMap<>());

    private Preview(List<Exposure> whole, int factor, WorkingFrames frames, Moons moons, Extent unsmear) {
        this.whole = whole;
        this.factor = factor;
        this.frames = frames;
        this.moons = moons;
        withMoons = DispersionRemoval.of(frames, unsmear, memory, Progress.NONE);
        withoutMoons = moons.any()
                ? DispersionRemoval.of(
                        frames.remade(i -> moons.without(i, frames.get(i).pixels()), memory, Progress.NONE),
                        unsmear,
                        memory,
                        Progress.NONE)
                : withMoons;
        view = new View(
                Globe.of(frames.schedule().aspect()),
                withMoons.reference().disk().disk());
        Plane reference = frames.reference().pixels();
        litDisk = Finishing.litDisk(view, reference.width(), reference.height());
    }

    /**
     * A picture.
     *
     * @param planes display-encoded red, green and blue
     * @param cube the same linear
     * @param disk where the disk lies on its pixels
     * @param epoch the instant that it shows
     * @param aspect how the body stands then
     * @param factor how many pixels of the result one of its pixels is wide
     * @param bands that the result is made from
     */
    public record Picture(
            List<Plane> planes,
            ColourCube cube,
            Disk disk,
            Instant epoch,
            Aspect aspect,
            int factor,
            List<Band> bands) {
        /** The picture within the edges that the result is saved with, and with its caption. */
        public Framed framed(Framing framing) {
            Legend legend = Legend.of(aspect.body(), epoch, aspect, bands.stream());
            return Finishing.framed(planes, new View(Globe.of(aspect), disk), framing.enlarged(factor), legend);
        }
    }

    /** How much is made of a picture. */
    public enum Care {
        /** Of each band only the frame nearest to the epoch: for as long as a hand moves. */
        NEAREST_FRAMES,
        /** All frames that are kept. */
        ALL_FRAMES
    }

    /**
     * Reads the frames and fits their disks quickly. Where nobody knows the axis of a round body, north is taken as up.
     *
     * @throws NoDiskInFrame if a frame shows no disk
     * @throws org.epochrome.io.file.FrameRefused if a frame cannot be read
     */
    public static Preview rough(Recipe recipe, Progress progress) {
        Schedule all = Schedule.of(recipe);
        Recipe few = QuickFrames.few(recipe, all, QuickFrames.nearest(all, FITTED_PER_BAND));
        int before = QuickFrames.beforeFitting(few.frames().used());
        few = before == 1 ? few : QuickFrames.binned(few, before);
        Schedule schedule = Schedule.of(few);
        Memory memory = Memory.ofThisHeap();
        boolean axis = recipe.body().showsAxis();
        Recipe known = axis || recipe.setup().northDeg().isPresent()
                ? few
                : few.with(few.setup().oriented(0, few.setup().mirroring()));
        progress.doing(Message.text("progress.reading"));
        ExposureReader reader = new ExposureReader(schedule);
        List<Plane> full = new PlaneStore(
                        schedule.exposures().size(), i -> Binning.by(before, reader.read(i)), memory.heldBytes())
                .filled();
        progress.at(0.3);
        progress.check();
        progress.doing(Message.text("progress.disks"));
        WorkingFrames found = new DiskFinder(known, schedule, AtmosphericDispersion.over(known), memory)
                .findRoughly(full, progress.part(0.3, 0.95));
        int factor = factor(full.get(schedule.reference()));
        return new Preview(all.exposures(), before * factor, binned(found, full, factor), Moons.NONE, Extent.NONE);
    }

    /** The frames on coarser pixels, which are kept. */
    private static WorkingFrames binned(WorkingFrames frames, List<Plane> planes, int factor) {
        return frames.with(planes.stream()
                        .parallel()
                        .map(p -> Binning.by(factor, p))
                        .toList())
                .map(f -> f.at(f.disk().binned(factor)));
    }

    private static int factor(Plane plane) {
        return Math.max(1, Math.round(Math.min(plane.width(), plane.height()) / (float) ACROSS_PX));
    }

    /**
     * With the disks that a combination found, with moons if it found some, and with more of its frames.
     *
     * @throws org.epochrome.io.file.FrameRefused if one of these cannot be read any more
     */
    public Preview refined(Combination c) {
        Schedule all = Schedule.of(c.recipe(), whole);
        Schedule more = Schedule.of(QuickFrames.few(c.recipe(), all, QuickFrames.nearest(all, MOST_PER_BAND)), whole);
        List<FittedDisk> found = more.exposures().stream()
                .map(e -> c.frames().stream()
                        .filter(f -> f.exposure().equals(e))
                        .findFirst()
                        .orElseThrow())
                .map(f -> f.limb().at(f.disk()).binned(factor))
                .toList();
        WorkingFrames kept = WorkingFrames.of(
                more, more.exposures().stream().map(this::plane).toList(), found);
        Moons there = c.moons().isEmpty() ? Moons.NONE : MoonlessFrames.onSmall(c.recipe(), kept, Progress.NONE);
        return new Preview(whole, factor, kept, there, c.recipe().corrections().unsmear());
    }

    private Plane plane(Exposure exposure) {
        int known = frames.schedule().exposures().indexOf(exposure);
        return known >= 0 ? frames.get(known).pixels() : Binning.by(factor, exposure.load());
    }

    /** Whether it holds the frames that a recipe is made from. */
    public boolean holds(Recipe recipe) {
        return Schedule.of(recipe, whole).exposures().equals(whole);
    }

    /** The disks on the frames' own pixels, in the order of the exposures that are kept. */
    public List<Disk> disks() {
        return withMoons.disks().stream().map(f -> f.disk().unbinned(factor)).toList();
    }

    /**
     * The picture by a recipe whose frames these are; it always lies on the pixels of the same frame.
     *
     * @param look how it is finished; its framing is left out of account
     * @param care how much is made of it
     */
    public Picture picture(Recipe recipe, Look look, Care care, Progress progress) {
        List<Exposure> kept = frames.schedule().exposures();
        Set<DatedFrame> own = QuickFrames.same(kept.stream().map(Exposure::frame));
        Schedule asked = Schedule.of(QuickFrames.few(recipe, Schedule.of(recipe, whole), own), kept);
        Schedule now = new Schedule(
                asked.exposures(),
                asked.epoch(),
                asked.aspect(),
                frames.schedule().reference());
        boolean apart = recipe.corrections().moons();
        WorkingFrames placed = placed(recipe, apart ? withoutMoons : withMoons, now);
        IntPredicate counted = care == Care.ALL_FRAMES ? i -> true : QuickFrames.nearestOfEach(now)::contains;
        Moons laid = apart
                ? moons.against(placed.disks()).inAll(now.of(recipe.assignment().bands(), counted))
                : Moons.NONE;
        Merging merging = new Merging(placed, new Turning(recipe, now), laid, view, memory, counted, this::turner);
        MergedBands merged = MergedBands.of(recipe.assignment(), merging, progress);
        List<Plane> shown = Finishing.asShot(
                merged.seen(),
                view,
                litDisk,
                recipe.body(),
                lights(recipe.assignment(), merging, counted, placed),
                AtmosphericDispersion.arcsecPerPx(now.aspect(), view.disk()),
                Finishing.lookFor(recipe, look));
        List<Band> bands = whole.stream().map(Exposure::band).distinct().toList();
        return new Picture(shown, merged.cube(), view.disk(), now.epoch(), now.aspect(), factor, bands);
    }

    /** The frames at another epoch, with their disks as a recipe holds or displaces them. */
    private WorkingFrames placed(Recipe recipe, WorkingFrames cleaned, Schedule now) {
        WorkingFrames then = WorkingFrames.of(now, cleaned.planes(), cleaned.disks())
                .map(f -> f.at(placed(f.disk(), f.exposure(), recipe)));
        return Registration.nudged(recipe, then, view.disk(), factor);
    }

    private Turner turner(WorkingFrame frame) {
        Plane plane = frame.pixels();
        Kept kept = turners.get(plane);
        if (kept == null || !kept.fitted.equals(frame.disk())) {
            kept = new Kept(frame.disk(), Turning.turner(frame));
            turners.put(plane, kept);
        }
        return kept.turner;
    }

    /** A turner, and the disk that it was made for. */
    private record Kept(FittedDisk fitted, Turner turner) {}

    /** Where a disk is held by hand, at once. */
    private FittedDisk placed(FittedDisk fit, Exposure exposure, Recipe recipe) {
        if (!recipe.frames().placed(exposure)) {
            return fit;
        }
        ManualDisk held = recipe.frames().held(exposure).orElseThrow().binned(factor);
        return fit.at(new Disk(
                held.x(),
                held.y(),
                held.equatorialRadiusPx(),
                held.northAngleDeg().orElse(fit.disk().northAngleDeg()),
                fit.disk().mirrored()));
    }

    /** How light falls off in the bands of red, green and blue: as in the frame that weighs most of each, or else of all. */
    private List<BandLight> lights(Assignment bands, Merging merging, IntPredicate counted, WorkingFrames placed) {
        Comparator<Integer> weight = Comparator.comparingDouble(merging::share);
        List<Integer> all =
                IntStream.range(0, placed.size()).filter(counted).boxed().toList();
        return bands.colours().stream()
                .map(band -> all.stream()
                        .filter(i -> placed.get(i).band().equals(band))
                        .max(weight)
                        .or(() -> all.stream().max(weight))
                        .orElseThrow())
                .map(i -> placed.get(i).disk())
                .map(fit -> new BandLight(fit.shading().carried(fit.disk(), view.disk()), fit.rings()))
                .toList();
    }
}
