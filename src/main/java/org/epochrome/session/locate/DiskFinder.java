package org.epochrome.session.locate;

import java.util.List;
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
import org.epochrome.session.schedule.HeldDisks;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Schedule;

/** Finds the disk in every exposure, and what the frames have in common: posture and plate scale. */
public final class DiskFinder {
    /** Part of the radius by which a disk may differ from the common size without being fitted again. */
    private static final double SAME_SIZE = 0.0005;
    /** Phase angle from which the lit side is plain to see. */
    private static final double CLEAR_PHASE_DEG = 5;
    /** Phase angle, degrees, from which the globe's shadow on Saturn's rings is plain to see. */
    private static final double CLEAR_SHADOW_DEG = 1.5;
    /** One sense must leave so many times less than the other for a shadow to be believed. */
    private static final double CLEAR_SENSE = 1.1;

    /** Standard error of a north angle in a header (common practice, no source). */
    private static final double HEADER_NORTH_SIGMA_DEG = 0.1;

    private final Recipe recipe;
    private final Schedule schedule;
    private final AtmosphericDispersion sky;
    private final Memory memory;
    private final HeldDisks held;
    private final GivenMirroring said;

    public DiskFinder(Recipe recipe, Schedule schedule, AtmosphericDispersion sky, Memory memory) {
        this(recipe, schedule, GivenMirroring.of(recipe, schedule), sky, memory);
    }

    private DiskFinder(
            Recipe recipe, Schedule schedule, GivenMirroring said, AtmosphericDispersion sky, Memory memory) {
        this.memory = memory;
        this.said = said;
        this.held = new HeldDisks(recipe, schedule);
        this.recipe = held.recipe().with(held.recipe().setup().with(Setup::mirroring, said.reference()));
        this.schedule = schedule;
        this.sky = sky;
    }

    /**
     * The disks of all exposures.
     *
     * @param planes pixels of the exposures
     * @param masking those that the disks are fitted to
     * @param warnings takes what the user should know
     * @throws NoDiskInFrame if one has none
     * @throws SessionRefused if north is needed and cannot be seen
     */
    public List<FittedDisk> find(List<Plane> planes, MoonMasks masking, List<String> warnings, Progress progress) {
        if (recipe.setup().northDeg().isEmpty() && !recipe.body().showsAxis()) {
            return headerNorth().isPresent()
                    ? findWithHeader(planes, masking, warnings, progress)
                    : findWithAxis(planes, masking, warnings, progress);
        }
        progress.doing("finding the disks");
        Mirroring mirroring = mirroring(planes, progress.part(0, 0.1));
        List<FittedDisk> first = rough(planes, mirroring == Mirroring.YES, progress.part(0.1, 0.5));
        progress.at(0.5);
        progress.doing("finding the orientation of the frames");
        List<ImageOrientation.Angle> angles = new ImageOrientation(
                        recipe, schedule, said, mirroring, planes, first, memory, warnings)
                .resolve(progress.part(0.5, 0.6));
        if (recipe.setup().mirroring() == Mirroring.AUTO
                && angles.get(schedule.reference()).mirrored()) {
            warnings.add("The frames were found to be mirrored; if they are not, use --mirrored no.");
        }
        boolean sense = angles.get(schedule.reference()).mirrored();
        for (int i = 0; i < angles.size(); i++) {
            if (angles.get(i).mirrored() != sense && !said.against(i)) {
                warnings.add(name(i) + " is mirrored relative to the reference frame; it was flipped.");
            }
        }
        for (int i : ImageOrientation.flipped(angles)) {
            warnings.add(name(i) + " is upside down relative to the reference frame; it was rotated by 180 degrees.");
        }
        progress.at(0.6);
        List<Plane> bare = masking.masked(IntStream.range(0, first.size())
                .mapToObj(i -> first.get(i).at(angles.get(i).on(first.get(i).disk())))
                .toList());
        progress.doing("fitting the disks");
        List<FittedDisk> fine = each(i -> refit(
                i, angles.get(i), held(angles.get(i), sense), first.get(i), bare.get(i), progress.part(0.6, 0.95)));
        List<FittedDisk> second = new DiskRecovery(
                        schedule, bare, (i, fit) -> fineFit(i, angles.get(i), held(angles.get(i), sense), fit.disk()))
                .recovered(fine, progress.part(0.95, 1));
        boolean told = recipe.setup().northDeg().isPresent();
        List<FittedDisk> sized = ofOneScale(second, angles, bare, warnings);
        return held.kept(told ? sized : new CameraNorth(recipe, schedule, held).common(sized, angles, warnings));
    }

    /** North of the reference frame by its header, if all frames have one and none is mirrored against the others. */
    private OptionalDouble headerNorth() {
        boolean all = schedule.exposures().stream()
                .allMatch(e -> e.headerNorthDeg().isPresent()
                        && e.headerMirrored()
                                .equals(schedule.referenceExposure().headerMirrored()));
        return all ? schedule.referenceExposure().headerNorthDeg() : OptionalDouble.empty();
    }

    /** The disks of a body that does not show its axis, with north as headers have it. */
    private List<FittedDisk> findWithHeader(
            List<Plane> planes, MoonMasks masking, List<String> warnings, Progress progress) {
        double north = headerNorth().orElseThrow();
        boolean mirrored = schedule.referenceExposure().headerMirrored().orElse(false);
        warnings.add(String.format(
                java.util.Locale.ROOT,
                "North was taken from the headers, %.1f degrees in the reference frame; use --north to change this.",
                north));
        Mirroring sense = mirrored ? Mirroring.YES : Mirroring.NO;
        Recipe posed = recipe.with(recipe.setup().posed(north, sense));
        return new DiskFinder(posed, schedule, new GivenMirroring(sense, said.against()), sky, memory)
                .find(planes, masking, warnings, progress).stream()
                        .map(f -> f.withNorthSigma(HEADER_NORTH_SIGMA_DEG))
                        .toList();
    }

    /** First the axis, from the motion of the detail, then the disks. */
    private List<FittedDisk> findWithAxis(
            List<Plane> planes, MoonMasks masking, List<String> warnings, Progress progress) {
        progress.doing("finding the axis");
        AxisByMotion.Axis axis = byMotion(planes)
                .find(progress.part(0, 0.6))
                .orElseThrow(() -> new SessionRefused("the axis of "
                        + recipe.body().displayName()
                        + " cannot be found from its disk or from the motion of its detail in these frames; give the"
                        + " north angle of the reference frame with --north DEG (from image up to north,"
                        + " counter-clockwise positive), or use frames over a longer time"));
        warnings.add(axis.sentence());
        Mirroring sense = axis.mirrored() ? Mirroring.YES : Mirroring.NO;
        Recipe posed = recipe.with(recipe.setup().posed(axis.northDeg(), sense));
        return new DiskFinder(posed, schedule, new GivenMirroring(sense, said.against()), sky, memory)
                .find(planes, masking, warnings, progress.part(0.6, 1)).stream()
                        .map(f -> f.withNorthSigma(axis.sigmaDeg()))
                        .toList();
    }

    /** Uses the frames that are mirrored like the reference, as far as the user or a header says so. */
    private AxisByMotion byMotion(List<Plane> planes) {
        List<Integer> alike = said.alike();
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
     * The disks in broad strokes, whatever posture fits.
     *
     * @param mirrored whether the reference frame is
     */
    public List<FittedDisk> rough(List<Plane> planes, boolean mirrored, Progress progress) {
        return each(i -> said.against(i)
                ? fit(i, OptionalDouble.empty(), !mirrored, planes.get(i), progress)
                : fit(i, recipe.setup().northDeg(), mirrored, planes.get(i), progress));
    }

    /** The disks fitted finely, in the posture that they have. */
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
                && (rings ? schedule.aspect().phaseAngleDeg() > CLEAR_SHADOW_DEG : tellsMirror());
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
    boolean tellsMirror() {
        return schedule.aspect().phaseAngleDeg() > CLEAR_PHASE_DEG;
    }

    /** What a fit of the reference frame in a posture leaves; endless if there is none. */
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
        OptionalDouble said = ImageOrientation.ringsTellNorth(aspect) ? OptionalDouble.empty() : north;
        return guarded(index, () -> diskFit(index, mirrored, SmearModel.exactly(Smear.NONE), said)
                .rough(plane, progress));
    }

    /** A given north angle, carried to a frame of the reference's sense; of others what detail told, if the disk does not. */
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
    private List<FittedDisk> ofOneScale(
            List<FittedDisk> fits, List<ImageOrientation.Angle> angles, List<Plane> planes, List<String> warnings) {
        if (recipe.setup().scaleArcsecPerPx().isPresent()) {
            return fits;
        }
        List<PlateScale.Size> sizes =
                new PlateScale(schedule, held, recipe.alignment().freeScale()).sizes(fits, warnings);
        return each(i -> {
            FittedDisk fit = fits.get(i);
            PlateScale.Size size = sizes.get(i);
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
                sized = guarded(i, () -> again.refit(planes.get(i), fit, Progress.NONE))
                        .withNorthSigma(fit.northSigmaDeg())
                        .withPassband(fit.passband());
            }
            // The common radius, too, is off by what the fit does not know, and the centre with it.
            return sized.withCommonRadius(size.sigmaPx(), fit.errors().centreByRadius());
        });
    }

    private Aspect aspect(int index) {
        return schedule.exposures().get(index).aspect();
    }

    private String name(int index) {
        return schedule.exposures().get(index).name();
    }
}
