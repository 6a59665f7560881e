package org.epochrome.session.preview;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.finish.BandLight;
import org.epochrome.colour.finish.Framed;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.disk.Disk;
import org.epochrome.disk.DispersionDeconvolution;
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
import org.epochrome.session.locate.ImageOrientation;
import org.epochrome.session.locate.NoDiskInFrame;
import org.epochrome.session.product.Finishing;
import org.epochrome.session.product.Legend;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.HeldDisk;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.session.register.Registration;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.GivenMirroring;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
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
    private final Schedule schedule;
    private final int factor;
    private final List<Plane> planes;
    private final List<Plane> withMoons;
    private final List<Plane> withoutMoons;
    private final Moons moons;
    private final List<FittedDisk> fits;
    /** The body stands nearly alike through a session; what it is seen by need not be drawn anew for each epoch. */
    private final View view;

    private final Plane litDisk;
    private final Memory memory;
    private final Map<Plane, Kept> turners = Collections.synchronizedMap(new IdentityHashMap<>());

    private Preview(
            List<Exposure> whole,
            Schedule schedule,
            int factor,
            List<Plane> planes,
            Moons moons,
            List<FittedDisk> fits,
            DispersionDeconvolution.Extent extent) {
        this.whole = whole;
        this.schedule = schedule;
        this.factor = factor;
        this.planes = planes;
        this.moons = moons;
        this.withMoons = cleared(planes, schedule, fits, extent);
        this.withoutMoons = !moons.any()
                ? withMoons
                : cleared(
                        IntStream.range(0, planes.size())
                                .mapToObj(i -> moons.without(i, planes.get(i)))
                                .toList(),
                        schedule,
                        fits,
                        extent);
        this.fits =
                fits.stream().map(f -> DispersionDeconvolution.fit(f, extent)).toList();
        this.view = new View(
                Globe.of(schedule.aspect()), this.fits.get(schedule.reference()).disk());
        Plane reference = planes.get(schedule.reference());
        this.litDisk = Finishing.litDisk(view, reference.width(), reference.height());
        this.memory = Memory.ofThisHeap();
    }

    private static List<Plane> cleared(
            List<Plane> planes, Schedule schedule, List<FittedDisk> fits, DispersionDeconvolution.Extent extent) {
        return IntStream.range(0, planes.size())
                .parallel()
                .mapToObj(i -> DispersionRemoval.of(
                        planes.get(i), fits.get(i), schedule.exposures().get(i), extent, Progress.NONE))
                .toList();
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
                : few.with(few.setup().posed(0, few.setup().mirroring()));
        GivenMirroring said = GivenMirroring.of(known, schedule);
        Recipe posing = known.with(known.setup().with(Setup::mirroring, said.reference()));
        progress.doing("reading");
        List<Plane> full = new PlaneStore(
                        schedule.exposures().size(),
                        i -> Binning.by(before, schedule.exposures().get(i).load()),
                        memory.heldBytes())
                .filled();
        progress.at(0.3);
        progress.check();
        progress.doing("finding the disks");
        List<FittedDisk> found = new DiskFinder(known, schedule, AtmosphericDispersion.over(known), memory)
                .rough(full, said.reference() == Mirroring.YES, progress.part(0.3, 0.8));
        List<ImageOrientation.Angle> angles = new ImageOrientation(
                        posing, schedule, said, said.reference(), full, found, memory, new ArrayList<>())
                .resolve(progress.part(0.8, 0.95));
        List<FittedDisk> posed = IntStream.range(0, found.size())
                .mapToObj(i -> found.get(i).at(angles.get(i).on(found.get(i).disk())))
                .toList();
        int factor = factor(full.get(schedule.reference()));
        return new Preview(
                all.exposures(),
                schedule,
                before * factor,
                IntStream.range(0, full.size())
                        .parallel()
                        .mapToObj(i -> Binning.by(factor, full.get(i)))
                        .toList(),
                Moons.NONE,
                posed.stream().map(f -> f.binned(factor)).toList(),
                DispersionDeconvolution.Extent.NONE);
    }

    private Set<Integer> all() {
        return IntStream.range(0, fits.size()).boxed().collect(Collectors.toSet());
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
        List<Plane> kept = more.exposures().stream().map(this::plane).toList();
        List<FittedDisk> found = more.exposures().stream()
                .map(e -> c.frames().stream()
                        .filter(f -> f.exposure().equals(e))
                        .findFirst()
                        .orElseThrow())
                .map(f -> f.limb().at(f.disk()).binned(factor))
                .toList();
        Moons there =
                c.moons().isEmpty() ? Moons.NONE : MoonlessFrames.onSmall(c.recipe(), more, kept, found, Progress.NONE);
        return new Preview(
                whole,
                more,
                factor,
                kept,
                there,
                found,
                c.recipe().corrections().unsmear());
    }

    private Plane plane(Exposure exposure) {
        int known = schedule.exposures().indexOf(exposure);
        return known >= 0 ? planes.get(known) : Binning.by(factor, exposure.load());
    }

    /** Whether it holds the frames that a recipe is made from. */
    public boolean holds(Recipe recipe) {
        return Schedule.of(recipe, whole).exposures().equals(whole);
    }

    /** The disks on the frames' own pixels, in the order of the exposures that are kept. */
    public List<Disk> disks() {
        return fits.stream().map(f -> f.disk().unbinned(factor)).toList();
    }

    /**
     * The picture by a recipe whose frames these are; it always lies on the pixels of the same frame.
     *
     * @param look how it is finished; its framing is left out of account
     * @param care how much is made of it
     */
    public Picture picture(Recipe recipe, Look look, Care care, Progress progress) {
        Set<DatedFrame> own = QuickFrames.same(schedule.exposures().stream().map(Exposure::frame));
        Schedule asked = Schedule.of(QuickFrames.few(recipe, Schedule.of(recipe, whole), own), schedule.exposures());
        Schedule now = new Schedule(asked.exposures(), asked.epoch(), asked.aspect(), schedule.reference());
        Turning turning = new Turning(recipe, now, this::turner);
        List<FittedDisk> places = Registration.nudged(
                recipe,
                schedule,
                IntStream.range(0, fits.size()).mapToObj(i -> placed(i, recipe)).toList(),
                view.disk(),
                factor);
        Set<Integer> counted = care == Care.ALL_FRAMES ? all() : QuickFrames.nearestOfEach(now);
        Merging merging = recipe.corrections().moons()
                ? new Merging(
                        now,
                        turning,
                        withoutMoons,
                        moons.against(places).inAll(now.of(recipe.assignment().bands(), counted::contains)),
                        places,
                        view,
                        memory,
                        counted::contains)
                : new Merging(now, turning, withMoons, Moons.NONE, places, view, memory, counted::contains);
        MergedBands merged = MergedBands.of(recipe.assignment(), merging, progress);
        List<Plane> shown = Finishing.asShot(
                merged.seen(),
                view,
                litDisk,
                recipe.body(),
                lights(recipe.assignment(), merging, counted, places, view.disk()),
                AtmosphericDispersion.arcsecPerPx(now.aspect(), view.disk()),
                Finishing.lookFor(recipe, look));
        List<Band> bands = whole.stream().map(Exposure::band).distinct().toList();
        return new Picture(shown, merged.cube(), view.disk(), now.epoch(), now.aspect(), factor, bands);
    }

    private Turner turner(Plane plane, FittedDisk fitted, Exposure exposure) {
        Kept kept = turners.get(plane);
        if (kept == null || !kept.fitted.equals(fitted)) {
            kept = new Kept(fitted, Turning.turner(plane, fitted, exposure));
            turners.put(plane, kept);
        }
        return kept.turner;
    }

    /** A turner, and the disk that it was made for. */
    private record Kept(FittedDisk fitted, Turner turner) {}

    /** Where a disk is held by hand, at once. */
    private FittedDisk placed(int index, Recipe recipe) {
        FittedDisk fit = fits.get(index);
        Exposure exposure = schedule.exposures().get(index);
        if (!recipe.frames().placed(exposure)) {
            return fit;
        }
        HeldDisk held = recipe.frames().held(exposure).orElseThrow().binned(factor);
        return fit.at(new Disk(
                held.x(),
                held.y(),
                held.equatorialRadiusPx(),
                held.northAngleDeg().orElse(fit.disk().northAngleDeg()),
                fit.disk().mirrored()));
    }

    /** How light falls off in the bands of red, green and blue: as in the exposure that weighs most of each, or else of all. */
    private List<BandLight> lights(
            Assignment bands, Merging merging, Set<Integer> counted, List<FittedDisk> places, Disk output) {
        Comparator<Integer> weight = Comparator.comparingDouble(merging::share);
        return bands.colours().stream()
                .map(band -> exposures(band)
                        .filter(counted::contains)
                        .max(weight)
                        .or(() -> counted.stream().max(weight))
                        .orElseThrow())
                .map(places::get)
                .map(fit -> new BandLight(fit.shading().carried(fit.disk(), output), fit.rings()))
                .toList();
    }

    private Stream<Integer> exposures(String band) {
        return IntStream.range(0, fits.size())
                .boxed()
                .filter(i -> schedule.exposures().get(i).band().name().equals(band));
    }
}
