package org.epochrome.session.combine;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.Disk;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.moon.removal.Moons;
import org.epochrome.session.compare.BandScale;
import org.epochrome.session.compare.Details;
import org.epochrome.session.diagnose.Duplicates;
import org.epochrome.session.diagnose.Examination;
import org.epochrome.session.locate.DecodedFit;
import org.epochrome.session.locate.DiskFinder;
import org.epochrome.session.locate.NoDiskInFrame;
import org.epochrome.session.locate.ProcessingCheck;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.register.NorthRefinement;
import org.epochrome.session.register.PassbandCheck;
import org.epochrome.session.register.RegisteredFrames;
import org.epochrome.session.register.Registration;
import org.epochrome.session.register.Registration.Registered;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.ExposureReader;
import org.epochrome.session.schedule.ManualDisks;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.session.verdict.Verdict;
import org.epochrome.text.Message;

/** Runs a recipe: reads, fits, turns, registers and merges. */
public final class Combiner {
    /** Blur on the pixels on which detail is compared. */
    private static final double DETAIL_BLUR_PX = 1;

    private final Recipe recipe;
    private final Schedule schedule;
    private final Memory memory;
    private final AtmosphericDispersion sky;
    private final Turning turning;
    private final ExposureReader reader;
    private final Duplicates duplicates;

    public Combiner(Recipe recipe) {
        this(recipe, Memory.ofThisHeap());
    }

    /** One that keeps to less memory; its results are the same. */
    public Combiner(Recipe recipe, Memory memory) {
        this.recipe = recipe;
        this.memory = memory;
        schedule = Schedule.of(recipe);
        sky = AtmosphericDispersion.over(recipe);
        turning = new Turning(recipe, schedule);
        reader = new ExposureReader(schedule);
        duplicates = new Duplicates(schedule.exposures());
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
        MoonlessFrames found = found(progress);
        WorkingFrames limbs = cleaned(found, progress);
        DispersionDeconvolution.Extent extent = recipe.corrections().unsmear();
        WorkingFrames frames = DispersionRemoval.of(limbs, extent, memory, progress);
        progress.doing(Message.text("progress.comparing"));
        Details details = new Details(turning, frames.reference().disk(), DETAIL_BLUR_PX);
        RegisteredFrames registered = registered(details, frames, progress.part(0.55, 0.75));
        List<Message> passbands = PassbandCheck.warnings(
                schedule.exposures().stream().map(Exposure::band).toList(),
                limbs.disks().stream().map(FittedDisk::passband).toList(),
                registered.measured().stream().map(Registered::passband).toList());
        progress.doing(Message.text("progress.alignment"));
        Aligned aligned = better(registered, found.moons(), turnedDetails(details, frames), progress);
        progress.at(0.8);
        progress.doing(Message.text("progress.merging"));
        Merging merging = aligned.merging;
        MergedBands.WithGlobe merged = MergedBands.withGlobe(recipe.assignment(), merging, progress.part(0.8, 1));
        progress.at(1);
        List<Diagnosis> diagnoses = new Examination(recipe, registered, limbs.disks(), turning)
                .diagnoses(aligned.quality.after(), duplicates, progress);
        MergedBands picture = merged.picture();
        Disk output = aligned.view.disk();
        return new Combination(
                recipe,
                schedule.epoch(),
                schedule.aspect(),
                picture.cube(),
                picture.brightness(),
                merged.globe().seen(),
                output,
                results(limbs, aligned),
                aligned.moons.found(aligned.view, schedule.epoch()).stream()
                        .filter(m ->
                                m.isNear(picture.cube().width(), picture.cube().height(), output.equatorialRadiusPx()))
                        .toList(),
                picture.coverage(),
                aligned.quality,
                verdict(limbs, aligned, diagnoses),
                Examination.without(
                        registered
                                .frames()
                                .warned(passbands)
                                .warned(aligned.warnings)
                                .warned(luminance(merging))
                                .warnings(),
                        diagnoses));
    }

    private static Verdict verdict(WorkingFrames limbs, Aligned aligned, List<Diagnosis> diagnoses) {
        FittedDisk base = limbs.reference().disk();
        double northDeg = aligned.registered.frames().reference().disk().northSigmaDeg();
        double centreDeg = Math.toDegrees(base.centreSigmaPx() / base.disk().equatorialRadiusPx());
        double limbsPx = aligned.registered.measured().stream()
                .mapToDouble(m -> Math.max(m.place().sigmaX(), m.place().sigmaY()))
                .max()
                .orElse(0);
        return Verdict.of(
                aligned.quality.before(), aligned.quality.after(), limbsPx, Math.hypot(northDeg, centreDeg), diagnoses);
    }

    /** Reads the frames and finds their disks and moons. */
    private MoonlessFrames found(Progress progress) {
        List<Message> warnings = new RecipeCheck(recipe, schedule).warnings(sky);
        progress.doing(Message.text("progress.reading"));
        List<Plane> planes = new PlaneStore(
                        schedule.exposures().size(),
                        i -> {
                            progress.check();
                            return duplicates.seen(i, reader.read(i));
                        },
                        memory.heldBytes())
                .filled();
        progress.at(0.1);
        MoonlessFrames found = MoonlessFrames.of(
                recipe,
                turning,
                new DiskFinder(recipe, schedule, sky, memory),
                schedule,
                planes,
                memory,
                progress.part(0.1, 0.55));
        WorkingFrames frames = new ProcessingCheck(new DecodedFit(recipe.body())).judged(found.frames());
        return new MoonlessFrames(frames.warnedFirst(warnings), found.moons());
    }

    /** The frames with an even sky, without moons and struck pixels. */
    private WorkingFrames cleaned(MoonlessFrames found, Progress progress) {
        Moons moons = found.moons();
        WorkingFrames even = found.frames()
                .remade(
                        i -> found.frames()
                                .get(i)
                                .disk()
                                .withEvenSky(found.frames().get(i).pixels()),
                        memory,
                        progress);
        return StruckPixels.leftOut(
                moons.any() ? even.remade(i -> moons.without(i, even.get(i).pixels()), memory, progress) : even,
                turning,
                memory,
                progress);
    }

    /** The frames with their disks where limb, detail and dispersion together put them. */
    private RegisteredFrames registered(Details details, WorkingFrames frames, Progress progress) {
        WorkingFrames scaled = frames;
        if (recipe.alignment().freeScale()) {
            WorkingFrames freed = new BandScale(details).freed(frames, progress);
            scaled = freed.at(new ManualDisks(recipe, schedule).kept(freed.disks()));
        }
        WorkingFrames north = new NorthRefinement(recipe, schedule).refined(details, scaled, progress);
        return new Registration(recipe, schedule, sky).register(details, north, progress);
    }

    /** What shows detail turned to the epoch, whether or not the picture is turned. */
    private Details turnedDetails(Details details, WorkingFrames frames) {
        return recipe.corrections().turn()
                ? details
                : new Details(
                        new Turning(recipe.with(recipe.corrections().with(Corrections::turn, true)), schedule),
                        frames.reference().disk(),
                        DETAIL_BLUR_PX);
    }

    /** Where the frames lie, what is merged there, and how well that is aligned. */
    private record Aligned(
            RegisteredFrames registered,
            Moons moons,
            View view,
            Merging merging,
            Combination.Quality quality,
            List<Message> warnings) {}

    /** The alignment, or that of a simple stack if it is worse. */
    private Aligned better(RegisteredFrames registered, Moons moons, Details turned, Progress progress) {
        Aligned aligned = aligned(registered, moons, turned, progress);
        CentroidAlignment centroids = new CentroidAlignment(recipe, registered);
        if (!centroids.isBetterThan(aligned.quality)) {
            return aligned;
        }
        Aligned simple = aligned(centroids.aligned(), moons, turned, progress);
        if (!aligned.quality.after().exceeds(simple.quality.after())) {
            return aligned;
        }
        List<Message> warnings = new ArrayList<>(List.of(CentroidAlignment.sentence(aligned.quality, simple.quality)));
        warnings.addAll(simple.warnings);
        return new Aligned(simple.registered, simple.moons, simple.view, simple.merging, simple.quality, warnings);
    }

    private Aligned aligned(RegisteredFrames registered, Moons bare, Details turned, Progress progress) {
        FittedDisk reference = registered.frames().reference().disk();
        WorkingFrames placed = Registration.nudged(recipe, registered.frames(), reference.disk(), 1);
        Moons moons = bare.against(registered.frames().disks())
                .inAll(schedule.of(recipe.assignment().bands(), i -> true));
        View view = turning.viewAtEpoch(reference);
        Merging merging = new Merging(placed, turning, moons, view, memory);
        Plane output = placed.reference().pixels();
        List<Message> warnings =
                new ArrayList<>(moons.leftOut(view, schedule.epoch(), output.width(), output.height()));
        Fringe.Measured fringe = new Fringe(recipe, placed, turning, turned, merging::share).measure(progress);
        warnings.addAll(fringe.warnings());
        return new Aligned(registered, moons, view, merging, fringe.quality(), warnings);
    }

    private List<Message> luminance(Merging merging) {
        return recipe
                .assignment()
                .luminance()
                .filter(band -> Sharpness.differs(
                        MergedBands.colourBlurPx(recipe.assignment(), merging, band), merging.bandBlurPx(band)))
                .map(band -> Message.of("result.lessSharpLuminance", band))
                .stream()
                .toList();
    }

    /** What was noted about a frame, a sentence each. */
    private List<Message> notes(int index, WorkingFrame frame, Moons moons) {
        List<Message> notes = new ArrayList<>(frame.exposure().frame().notes());
        notes.addAll(reader.notes(index));
        notes.addAll(frame.notes());
        if (recipe.frames().held(frame.exposure()).isPresent()) {
            notes.add(Message.of("result.heldDisk"));
        }
        notes.addAll(moons.notes(index, schedule.epoch()));
        return List.copyOf(notes);
    }

    private List<Combination.FrameResult> results(WorkingFrames limbs, Aligned aligned) {
        List<Combination.FrameResult> results = new ArrayList<>();
        for (int i = 0; i < limbs.size(); i++) {
            WorkingFrame frame = aligned.registered.frames().get(i);
            Exposure exposure = frame.exposure();
            Disk disk = frame.disk().disk();
            FittedDisk limb = limbs.get(i).disk();
            Registered measured = aligned.registered.measured().get(i);
            results.add(new Combination.FrameResult(
                    exposure,
                    limb.withNorthSigma(frame.disk().northSigmaDeg()),
                    disk,
                    measured.correction(),
                    new Combination.Witnesses(
                            measured.limb(),
                            measured.detail(),
                            measured.physics(),
                            measured.place(),
                            measured.leftOut(),
                            recipe.alignment().nudge(exposure)),
                    turning.turnedDeg(exposure),
                    sky.shift(exposure.band(), exposure.aspect(), disk),
                    limb.shading().smear(),
                    aligned.merging.share(i),
                    notes(i, frame, aligned.moons)));
        }
        return results;
    }
}
