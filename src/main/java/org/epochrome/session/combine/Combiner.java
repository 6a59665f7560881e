package org.epochrome.session.combine;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.IntFunction;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.defect.FrameDefects;
import org.epochrome.job.Progress;
import org.epochrome.moon.removal.Moons;
import org.epochrome.session.compare.BandScale;
import org.epochrome.session.compare.Details;
import org.epochrome.session.locate.DecodedFit;
import org.epochrome.session.locate.DiskFinder;
import org.epochrome.session.locate.NoDiskInFrame;
import org.epochrome.session.locate.ProcessingCheck;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.register.NorthRefinement;
import org.epochrome.session.register.PassbandCheck;
import org.epochrome.session.register.Registration;
import org.epochrome.session.register.Registration.Registered;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.HeldDisks;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;

/** Runs a recipe: reads, fits, turns, registers and merges. */
public final class Combiner {
    /** Blur on the pixels on which detail is compared. */
    private static final double DETAIL_BLUR_PX = 1;

    private final Recipe recipe;
    private final Schedule schedule;
    private final Memory memory;
    private final AtomicReferenceArray<List<String>> blemishes;
    private final List<String> warnings = new ArrayList<>();

    public Combiner(Recipe recipe) {
        this(recipe, Memory.ofThisHeap());
    }

    /** One that keeps to less memory; its results are the same. */
    public Combiner(Recipe recipe, Memory memory) {
        this.recipe = recipe;
        this.schedule = Schedule.of(recipe);
        this.memory = memory;
        this.blemishes = new AtomicReferenceArray<>(schedule.exposures().size());
    }

    /** The instant that a recipe's picture will show. */
    public static Instant epoch(Recipe recipe) {
        return Schedule.of(recipe).epoch();
    }

    /**
     * Combines the frames.
     *
     * @throws SessionRefused if the recipe lacks something
     * @throws NoDiskInFrame if a frame shows no disk
     * @throws org.epochrome.io.file.FrameRefused if a frame cannot be read
     */
    public Combination combine(Progress progress) {
        AtmosphericDispersion sky = AtmosphericDispersion.over(recipe);
        warnings.addAll(new RecipeCheck(recipe, schedule).warnings(sky));
        progress.doing("reading");
        List<Plane> planes = stored(progress, this::read);
        progress.at(0.1);
        Turning turning = new Turning(recipe, schedule);
        MoonlessFrames bare = MoonlessFrames.of(
                recipe,
                schedule,
                turning,
                new DiskFinder(recipe, schedule, sky, memory),
                planes,
                memory,
                warnings,
                progress.part(0.1, 0.55));
        List<FittedDisk> limbs = judged(planes, bare.disks());
        List<Plane> tilted = planes;
        planes = stored(progress, i -> limbs.get(i).withEvenSky(tilted.get(i)));
        if (bare.moons().any()) {
            List<Plane> all = planes;
            planes = stored(progress, i -> bare.moons().without(i, all.get(i)));
        }
        StruckPixels struck = StruckPixels.of(schedule, turning, planes, limbs, memory, progress);
        List<Plane> hit = planes;
        planes = stored(progress, i -> struck.without(i, hit.get(i)));
        struck.notes().forEach((i, note) -> blemishes.accumulateAndGet(i, List.of(note), Combiner::joined));
        DispersionDeconvolution.Extent extent = recipe.corrections().unsmear();
        if (limbs.stream().anyMatch(f -> DispersionDeconvolution.changes(f.shading(), extent))) {
            progress.doing("removing the dispersion blur");
            List<Plane> drawn = planes;
            planes = stored(
                    progress,
                    i -> DispersionRemoval.of(
                            drawn.get(i), limbs.get(i), schedule.exposures().get(i), extent, progress));
        }
        List<FittedDisk> found =
                limbs.stream().map(f -> DispersionDeconvolution.fit(f, extent)).toList();
        progress.doing("comparing detail");
        Details details = new Details(schedule, turning, planes, found, DETAIL_BLUR_PX);
        if (recipe.alignment().freeScale()) {
            found = new HeldDisks(recipe, schedule)
                    .kept(new BandScale(schedule, warnings).freed(details, found, progress));
        }
        found = new NorthRefinement(recipe, schedule, warnings).refined(details, found, progress);
        List<Registered> registered =
                new Registration(recipe, schedule, sky, warnings).register(details, found, progress.part(0.55, 0.75));
        warnings.addAll(PassbandCheck.warnings(
                schedule.exposures().stream().map(Exposure::band).toList(),
                limbs.stream().map(FittedDisk::passband).toList(),
                registered.stream().map(Registered::passband).toList()));
        Turning always = new Turning(recipe.with(recipe.corrections().with(Corrections::turn, true)), schedule);
        Details turned =
                recipe.corrections().turn() ? details : new Details(schedule, always, planes, found, DETAIL_BLUR_PX);
        progress.doing("measuring the alignment");
        Aligned aligned = aligned(registered, bare.moons(), turning, planes, turned, progress);
        CentroidAlignment centroids = new CentroidAlignment(recipe, schedule, planes);
        if (centroids.isBetterThan(aligned.quality)) {
            Aligned simple = aligned(centroids.of(registered), bare.moons(), turning, planes, turned, progress);
            if (aligned.quality.after().exceeds(simple.quality.after())) {
                warnings.add(CentroidAlignment.sentence(aligned.quality, simple.quality));
                aligned = simple;
            }
        }
        warnings.addAll(aligned.warnings);
        Moons moons = aligned.moons;
        View view = aligned.view;
        Merging merging = aligned.merging;
        progress.at(0.8);
        progress.doing("turning to the epoch and merging");
        Assignment assignment = recipe.assignment();
        MergedBands merged = MergedBands.of(assignment, merging, progress.part(0.8, moons.any() ? 0.9 : 1));
        warnAboutLuminance(merging);
        ColourCube cube = merged.cube();
        ColourCube globe = moons.any()
                ? MergedBands.of(assignment, merging.withoutMoons(), progress.part(0.9, 1))
                        .seen()
                : merged.seen();
        progress.at(1);
        return new Combination(
                recipe,
                schedule.epoch(),
                schedule.aspect(),
                cube,
                merged.brightness(),
                globe,
                view.disk(),
                results(limbs, aligned.registered, turning, sky, merging, moons),
                moons.found(view, schedule.epoch()).stream()
                        .filter(m -> m.isNear(
                                cube.width(), cube.height(), view.disk().equatorialRadiusPx()))
                        .toList(),
                merged.coverage(),
                aligned.quality,
                List.copyOf(warnings));
    }

    /** Where the exposures lie, what is merged there, and how well that is aligned. */
    private record Aligned(
            List<Registered> registered,
            Moons moons,
            View view,
            Merging merging,
            Combination.Quality quality,
            List<String> warnings) {}

    private Aligned aligned(
            List<Registered> registered,
            Moons bare,
            Turning turning,
            List<Plane> planes,
            Details turned,
            Progress progress) {
        List<FittedDisk> fits = Registration.nudged(
                recipe,
                schedule,
                registered.stream().map(Registered::fitted).toList(),
                registered.get(schedule.reference()).fitted().disk(),
                1);
        Moons moons = bare.against(registered.stream().map(Registered::fitted).toList())
                .inAll(schedule.of(recipe.assignment().bands(), i -> true));
        View view = turning.viewAtEpoch(registered.get(schedule.reference()).fitted());
        Merging merging = new Merging(schedule, turning, planes, moons, fits, view, memory);
        Plane output = planes.get(schedule.reference());
        List<String> cautions = new ArrayList<>(moons.leftOut(view, schedule.epoch(), output.width(), output.height()));
        Combination.Quality quality =
                new Fringe(recipe, schedule, turning, planes, fits, turned, merging::share).measure(cautions, progress);
        return new Aligned(registered, moons, view, merging, quality, cautions);
    }

    /** The disks, less sure on frames that look processed. */
    private List<FittedDisk> judged(List<Plane> planes, List<FittedDisk> limbs) {
        ProcessingCheck check = new ProcessingCheck(new DecodedFit(recipe.body()));
        List<FittedDisk> judged = new ArrayList<>();
        for (int i = 0; i < limbs.size(); i++) {
            Exposure exposure = schedule.exposures().get(i);
            judged.add(check.look(
                    exposure.name(), exposure.countsAsLinear(), planes.get(i), exposure.globe(), limbs.get(i)));
        }
        warnings.addAll(check.warnings());
        return List.copyOf(judged);
    }

    /** Reads a plane and keeps what was left out of it. */
    private Plane read(int index) {
        FrameDefects read = schedule.exposures().get(index).read();
        blemishes.set(index, read.notes());
        return read.masked();
    }

    private static List<String> joined(List<String> first, List<String> more) {
        List<String> all = new ArrayList<>(first);
        all.addAll(more);
        return all;
    }

    private List<Plane> stored(Progress progress, IntFunction<Plane> made) {
        IntFunction<Plane> asked = i -> {
            progress.check();
            return made.apply(i);
        };
        return new PlaneStore(schedule.exposures().size(), asked, memory.heldBytes()).filled();
    }

    private void warnAboutLuminance(Merging merging) {
        recipe.assignment()
                .luminance()
                .filter(band -> Sharpness.differs(
                        MergedBands.colourBlurPx(recipe.assignment(), merging, band), merging.bandBlurPx(band)))
                .ifPresent(band -> warnings.add("The frames in " + band
                        + " are more blurred than the colours; detail finer than their blur comes from the colours."));
    }

    private List<String> notes(int index) {
        Exposure exposure = schedule.exposures().get(index);
        List<String> notes = new ArrayList<>(exposure.frame().notes());
        notes.addAll(blemishes.get(index));
        if (recipe.frames().held(exposure).isPresent()) {
            notes.add("Its disk was set by hand.");
        }
        return List.copyOf(notes);
    }

    private List<Combination.FrameResult> results(
            List<FittedDisk> limbs,
            List<Registered> registered,
            Turning turning,
            AtmosphericDispersion sky,
            Merging merging,
            Moons moons) {
        List<Combination.FrameResult> results = new ArrayList<>();
        for (int i = 0; i < registered.size(); i++) {
            Exposure exposure = schedule.exposures().get(i);
            Registered found = registered.get(i);
            results.add(new Combination.FrameResult(
                    exposure,
                    limbs.get(i).withNorthSigma(found.fitted().northSigmaDeg()),
                    found.fitted().disk(),
                    found.correction(),
                    new Combination.Witnesses(
                            found.limb(),
                            found.detail(),
                            found.physics(),
                            found.place(),
                            found.leftOut(),
                            recipe.alignment().nudge(exposure)),
                    turning.turnedDeg(exposure),
                    sky.shift(exposure.band(), exposure.aspect(), found.fitted().disk()),
                    limbs.get(i).shading().smear(),
                    merging.share(i),
                    joined(notes(i), moons.notes(i, schedule.epoch()))));
        }
        return results;
    }
}
