package org.epochrome.session.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.SmearModel;
import org.epochrome.job.Progress;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.recipe.Setup;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.GivenMirroring;
import org.epochrome.session.schedule.ManualDisks;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/** Finds the disk in every exposure, and what the frames have in common: orientation and plate scale. */
public final class DiskFinder {
    /** Part of the radius by which a disk may differ from the common size without being fitted again. */
    private static final double SAME_SIZE = 0.0005;
    /** Phase angle from which the lit side is plain to see. */
    private static final double CLEAR_PHASE_DEG = 5;
    /** Phase angle, degrees, from which the globe's shadow on Saturn's rings is plain to see. */
    private static final double CLEAR_SHADOW_DEG = 1.5;
    /** One sense must leave so many times less than the other for a shadow to be believed. */
    private static final double CLEAR_SENSE = 1.1;

    private final Recipe recipe;
    private final Schedule schedule;
    private final AtmosphericDispersion sky;
    private final Memory memory;
    private final ManualDisks held;
    private final GivenMirroring given;

    public DiskFinder(Recipe recipe, Schedule schedule, AtmosphericDispersion sky, Memory memory) {
        this(recipe, schedule, GivenMirroring.of(recipe, schedule), sky, memory);
    }

    private DiskFinder(
            Recipe recipe, Schedule schedule, GivenMirroring given, AtmosphericDispersion sky, Memory memory) {
        this.memory = memory;
        this.given = given;
        this.held = new ManualDisks(recipe, schedule);
        this.recipe = held.recipe().with(held.recipe().setup().with(Setup::mirroring, given.reference()));
        this.schedule = schedule;
        this.sky = sky;
    }

    /**
     * The exposures with their disks, and what the user should know of these.
     *
     * @param planes pixels of the exposures
     * @param masking those that the disks are fitted to
     * @throws NoDiskInFrame if one has none
     * @throws SessionRefused if north is needed and cannot be seen
     */
    public WorkingFrames find(List<Plane> planes, MoonMasks masking, Progress progress) {
        if (recipe.setup().northDeg().isEmpty() && !recipe.body().showsAxis()) {
            Optional<KnownNorth> header = KnownNorth.byHeaders(schedule);
            return header.isPresent()
                    ? findWith(header.get(), planes, masking, progress)
                    : findWithAxis(planes, masking, progress);
        }
        progress.doing(Message.text("progress.disks"));
        Mirroring mirroring = mirroring(planes, progress.part(0, 0.1));
        WorkingFrames first =
                WorkingFrames.of(schedule, planes, rough(planes, mirroring == Mirroring.YES, progress.part(0.1, 0.5)));
        progress.at(0.5);
        progress.doing(Message.text("progress.orientation"));
        ImageOrientation.Oriented oriented =
                new ImageOrientation(recipe, given, mirroring, first, memory).resolve(progress.part(0.5, 0.6));
        List<ImageOrientation.Angle> angles = oriented.angles();
        WorkingFrames posed = oriented.on(first).warned(reflections(angles));
        progress.at(0.6);
        List<Plane> bare = masking.masked(posed.disks());
        progress.doing(Message.text("progress.fitting"));
        boolean sense = angles.get(schedule.reference()).mirrored();
        List<FittedDisk> fine = each(i -> refit(
                i,
                angles.get(i),
                held(angles.get(i), sense),
                first.get(i).disk(),
                bare.get(i),
                progress.part(0.6, 0.95)));
        WorkingFrames second = new DiskRecovery(
                        posed.with(bare).at(fine),
                        (i, fit) -> fineFit(i, angles.get(i), held(angles.get(i), sense), fit.disk()))
                .recovered(progress.part(0.95, 1));
        WorkingFrames sized = ofOneScale(second, angles);
        WorkingFrames common = recipe.setup().northDeg().isPresent()
                ? sized
                : new CameraNorth(recipe, schedule, held).common(sized, angles);
        return common.with(planes).at(held.kept(common.disks()));
    }

    /** The exposures with their disks in broad strokes: enough for a quick picture. */
    public WorkingFrames findRoughly(List<Plane> planes, Progress progress) {
        WorkingFrames first = WorkingFrames.of(
                schedule, planes, rough(planes, given.reference() == Mirroring.YES, progress.part(0, 0.8)));
        return new ImageOrientation(recipe, given, given.reference(), first, memory)
                .resolve(progress.part(0.8, 1))
                .on(first);
    }

    /** What the user should know of frames that lie otherwise than others. */
    private List<Message> reflections(List<ImageOrientation.Angle> angles) {
        List<Message> warnings = new ArrayList<>();
        boolean sense = angles.get(schedule.reference()).mirrored();
        if (recipe.setup().mirroring() == Mirroring.AUTO && sense) {
            warnings.add(Message.of("north.framesMirrored"));
        }
        for (int i = 0; i < angles.size(); i++) {
            if (angles.get(i).mirrored() != sense && !given.against(i)) {
                warnings.add(Message.of("north.mirrored", name(i)));
            }
        }
        for (int i : ImageOrientation.flipped(angles)) {
            warnings.add(Message.of("north.upsideDown", name(i)));
        }
        return warnings;
    }

    /** The disks with north as it is known. */
    private WorkingFrames findWith(KnownNorth north, List<Plane> planes, MoonMasks masking, Progress progress) {
        Mirroring sense = north.mirrored() ? Mirroring.YES : Mirroring.NO;
        Recipe posed = recipe.with(recipe.setup().oriented(north.northDeg(), sense));
        return new DiskFinder(posed, schedule, new GivenMirroring(sense, given.against()), sky, memory)
                .find(planes, masking, progress)
                .warnedFirst(List.of(north.sentence()))
                .map(f -> f.at(f.disk().withNorthSigma(north.sigmaDeg())));
    }

    /** First the axis, from the motion of the detail, then the disks. */
    private WorkingFrames findWithAxis(List<Plane> planes, MoonMasks masking, Progress progress) {
        progress.doing(Message.text("progress.axis"));
        KnownNorth axis = byMotion(planes)
                .find(progress.part(0, 0.6))
                .orElseThrow(() -> new SessionRefused(
                        Message.of("north.noAxis", recipe.body().displayName())));
        return findWith(axis, planes, masking, progress.part(0.6, 1));
    }

    /** Uses the frames that are mirrored like the reference, as far as the user or a header says so. */
    private AxisByMotion byMotion(List<Plane> planes) {
        List<Integer> alike = given.alike();
        if (alike.size() == planes.size()) {
            return new AxisByMotion(recipe, schedule, planes, this, memory);
        }
        Schedule some = schedule.only(alike);
        return new AxisByMotion(
                recipe,
                some,
                new PlaneStore(alike.size(), k -> planes.get(alike.get(k)), memory.heldBytes()).filled(),
                new DiskFinder(recipe, some, sky, memory),
                memory);
    }

    /**
     * The disks in broad strokes, whatever orientation fits.
     *
     * @param mirrored whether the reference frame is
     */
    List<FittedDisk> rough(List<Plane> planes, boolean mirrored, Progress progress) {
        return each(i -> given.against(i)
                ? fit(i, OptionalDouble.empty(), !mirrored, planes.get(i), progress)
                : fit(i, recipe.setup().northDeg(), mirrored, planes.get(i), progress));
    }

    /** The disks fitted finely, in the orientation that they have. */
    List<FittedDisk> fine(List<Plane> planes, List<FittedDisk> posed, Progress progress) {
        return each(i -> {
            Disk disk = posed.get(i).disk();
            ImageOrientation.Angle angle = new ImageOrientation.Angle(disk.northAngleDeg(), disk.mirrored(), false);
            return refit(i, angle, OptionalDouble.of(angle.northDeg()), posed.get(i), planes.get(i), progress);
        });
    }

    /**
     * What is known about reflections. Where north is given, the lit side of a body that is not full lies left or right
     * of it: the reference frame fits better in the right sense. So does the globe's shadow on Saturn's rings, whatever
     * is given.
     */
    private Mirroring mirroring(List<Plane> planes, Progress progress) {
        boolean rings = ImageOrientation.ringsTellNorth(schedule.aspect());
        boolean tells = recipe.setup().mirroring() == Mirroring.AUTO
                && (rings || recipe.setup().northDeg().isPresent())
                && (rings ? schedule.aspect().phaseAngleDeg() > CLEAR_SHADOW_DEG : showsMirroring());
        if (!tells) {
            return recipe.setup().mirroring();
        }
        Plane reference = planes.get(schedule.reference());
        double plain = residual(reference, recipe.setup().northDeg(), false, progress.part(0, 0.5));
        double mirrored = residual(reference, recipe.setup().northDeg(), true, progress.part(0.5, 1));
        if (rings && Math.max(plain, mirrored) < CLEAR_SENSE * Math.min(plain, mirrored)) {
            return Mirroring.AUTO;
        }
        return plain <= mirrored ? Mirroring.NO : Mirroring.YES;
    }

    /** Whether the body's lit side is plain to see. */
    boolean showsMirroring() {
        return schedule.aspect().phaseAngleDeg() > CLEAR_PHASE_DEG;
    }

    /** What a fit of the reference frame in an orientation leaves; endless if there is none. */
    private double residual(Plane plane, OptionalDouble north, boolean mirrored, Progress progress) {
        try {
            return fit(schedule.reference(), north, mirrored, plane, progress).residual();
        } catch (NoDiskInFrame e) {
            return Double.POSITIVE_INFINITY;
        }
    }

    private List<FittedDisk> each(IntFunction<FittedDisk> fit) {
        return IntStream.range(0, schedule.exposures().size())
                .parallel()
                .mapToObj(fit)
                .toList();
    }

    private FittedDisk fit(int index, OptionalDouble north, boolean mirrored, Plane plane, Progress progress) {
        Aspect aspect = schedule.exposures().get(index).aspect();
        // Rings show the angle, and frames that are upside down, more accurately than the user can give it.
        OptionalDouble given = ImageOrientation.ringsTellNorth(aspect) ? OptionalDouble.empty() : north;
        return guarded(index, () -> diskFit(index, mirrored, SmearModel.exactly(Smear.NONE), given)
                .rough(plane, progress));
    }

    /** A given north angle, carried to a frame of the reference's sense; for others that from the detail, if the disk shows none. */
    private OptionalDouble held(ImageOrientation.Angle angle, boolean sense) {
        return recipe.setup().northDeg().isPresent()
                        && (angle.mirrored() == sense || !recipe.body().showsAxis())
                ? OptionalDouble.of(angle.northDeg())
                : OptionalDouble.empty();
    }

    private FittedDisk refit(
            int index,
            ImageOrientation.Angle angle,
            OptionalDouble north,
            FittedDisk first,
            Plane plane,
            Progress progress) {
        Exposure exposure = schedule.exposures().get(index);
        Disk posed = angle.on(first.disk());
        return guarded(index, () -> {
            SmearModel smear = sky.smear(exposure.band(), exposure.aspect(), posed);
            FittedDisk start = diskFit(index, angle.mirrored(), smear, north)
                    .refitSmeared(plane, first.at(posed), progress.part(0, 0.2));
            // The blur by dispersion was mistaken for a larger disk: the scale of the sky was wrong, and with it the
            // smear.
            return fineFit(index, angle, north, start.disk()).refit(plane, start, progress.part(0.2, 1));
        });
    }

    private DiskFit fineFit(int index, ImageOrientation.Angle angle, OptionalDouble north, Disk near) {
        Exposure exposure = schedule.exposures().get(index);
        return diskFit(index, angle.mirrored(), sky.smear(exposure.band(), exposure.aspect(), near), north);
    }

    private DiskFit diskFit(int index, boolean mirrored, SmearModel smear, OptionalDouble north) {
        return held.placed(
                index,
                new DiskFit(
                        schedule.exposures().get(index).globe(),
                        recipe.body().belted(),
                        mirrored,
                        smear,
                        held.northDeg(index).isPresent() ? held.northDeg(index) : north,
                        held.any(index) ? held.radiusPx(index) : radius(aspect(index))));
    }

    private OptionalDouble radius(Aspect aspect) {
        return recipe.setup().scaleArcsecPerPx().isPresent()
                ? OptionalDouble.of(0.5
                        * aspect.equatorialDiameterArcsec()
                        / recipe.setup().scaleArcsecPerPx().getAsDouble())
                : OptionalDouble.empty();
    }

    private FittedDisk guarded(int index, java.util.function.Supplier<FittedDisk> fit) {
        try {
            return fit.get();
        } catch (DiskNotFound e) {
            throw new NoDiskInFrame(
                    schedule.exposures().get(index).frame().head().file(), e);
        }
    }

    /** The disks at the size that the frames of a camera share, fitted again where that is another than they had. */
    private WorkingFrames ofOneScale(WorkingFrames frames, List<ImageOrientation.Angle> angles) {
        if (recipe.setup().scaleArcsecPerPx().isPresent()) {
            return frames;
        }
        PlateScale.Sizes sizes =
                new PlateScale(schedule, held, recipe.alignment().freeScale()).sizes(frames.disks());
        List<FittedDisk> sizedDisks = each(i -> {
            FittedDisk fit = frames.get(i).disk();
            PlateScale.Size size = sizes.all().get(i);
            if (size.own()) {
                return fit;
            }
            double off = Math.abs(fit.disk().equatorialRadiusPx() / size.radiusPx() - 1);
            FittedDisk sized = fit.at(fit.disk().withRadius(size.radiusPx()));
            if (off > SAME_SIZE && !ImageOrientation.ringsTellNorth(aspect(i))) {
                OptionalDouble north = OptionalDouble.of(fit.disk().northAngleDeg());
                DiskFit again = held.placed(
                        i,
                        new DiskFit(
                                schedule.exposures().get(i).globe(),
                                recipe.body().belted(),
                                angles.get(i).mirrored(),
                                fit.shading().smear(),
                                north,
                                OptionalDouble.of(size.radiusPx())));
                sized = guarded(i, () -> again.refit(frames.get(i).pixels(), fit, Progress.NONE))
                        .withNorthSigma(fit.northSigmaDeg())
                        .withPassband(fit.passband());
            }
            // The common radius, too, is off by what the fit does not know, and the centre with it.
            return sized.withCommonRadius(size.sigmaPx(), fit.errors().centreByRadius());
        });
        return frames.at(sizedDisks).warned(sizes.warnings());
    }

    private Aspect aspect(int index) {
        return schedule.exposures().get(index).aspect();
    }

    private String name(int index) {
        return schedule.exposures().get(index).name();
    }
}
