package org.epochrome.session.register;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.epochrome.align.Fusion;
import org.epochrome.align.Limb;
import org.epochrome.align.Link;
import org.epochrome.align.SharedError;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FitErrors;
import org.epochrome.disk.FittedDisk;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.Comparison;
import org.epochrome.session.compare.Details;
import org.epochrome.session.locate.Camera;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.RotationLaw;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/** Co-registers the exposures: limb, detail after turning, and physics, weighed against each other. */
public final class Registration {
    /** A disk fit is never trusted better than this: blur is not quite Gaussian, limbs are not quite even. */
    private static final double LIMB_FLOOR_PX = 0.005;

    /**
     * By how much of the radius detail moves, in the mean over the light of a disk that is bright as the cosine, while the
     * globe turns by a radian.
     */
    public static final double MEAN_PATH = 0.75;

    /** Smallest standard error assumed for a position from detail, as for limbs. */
    private static final double DETAIL_FLOOR_PX = 0.01;
    /** Part of the disk's brightness that its model may leave at the limb; more has structure that displaces it. */
    private static final double MOST_RESIDUAL = 0.02;
    /** Measurements that differ by more than this many standard errors disagree. */
    private static final double DISAGREE = 5;

    /**
     * What was found for one exposure.
     *
     * @param correction by which the limb's centre was moved, pixels of the exposure
     * @param detail shift of its detail against the reference's on the output's pixels, before the correction
     * @param physics the same by the predicted dispersion, against green of the same frame; unknown between frames, because
     *     between them the mount drifts
     * @param limb how sure the limb is, on the output's pixels
     * @param passband where the middle of its passband lies by its place against green of the same frame
     * @param place where it comes to lie on the reference, with the standard errors of all witnesses together
     * @param leftOut measurements that contradicted the others and were ignored
     */
    public record Registered(
            PixelOffset correction,
            Limb limb,
            Shift detail,
            Shift physics,
            PassbandMiddle passband,
            Shift place,
            Set<Witness> leftOut) {}

    private final Recipe recipe;
    private final Schedule schedule;
    private final AtmosphericDispersion sky;

    public Registration(Recipe recipe, Schedule schedule, AtmosphericDispersion sky) {
        this.recipe = recipe;
        this.schedule = schedule;
        this.sky = sky;
    }

    /**
     * Registers the frames.
     *
     * @param details what shows their detail
     */
    public RegisteredFrames register(Details details, WorkingFrames frames, Progress progress) {
        Disk output = frames.reference().disk().disk();
        List<Link> links = new ArrayList<>();
        if (recipe.alignment().uses(Witness.DETAIL)) {
            new Comparison(details, frames)
                    .links(progress)
                    .forEach(link -> links.add(onOutput(link, details.factor())));
        }
        List<PredictedDispersion> physics = PredictedDispersion.of(frames, sky, output);
        if (recipe.alignment().uses(Witness.PHYSICS)) {
            physics.forEach(p -> links.add(p.link()));
        }
        return fuse(frames, links, physics, output);
    }

    /** A link on the output's pixels, trusted no more than detail deserves. */
    private static Link onOutput(Link link, int factor) {
        Shift s = link.shift();
        return new Link(
                link.from(),
                link.to(),
                s.known() ? s.times(factor).withAddedSigma(DETAIL_FLOOR_PX) : s,
                link.witness());
    }

    private RegisteredFrames fuse(
            WorkingFrames frames, List<Link> links, List<PredictedDispersion> physics, Disk output) {
        List<FittedDisk> found = frames.disks();
        List<Limb> limbs = limbs(found, output);
        Fusion.Fused fused = Fusion.of(
                IntStream.range(0, limbs.size())
                        .mapToObj(i -> held(i) || usesLimb(i) ? limbs.get(i) : Limb.alone(Double.POSITIVE_INFINITY))
                        .toList(),
                links,
                schedule.reference());
        List<Message> warnings = new ArrayList<>();
        List<Set<Witness>> leftOut = leftOut(fused, links, limbs, warnings);
        List<Link> detail =
                links.stream().filter(l -> l.witness() == Witness.DETAIL).toList();
        List<FittedDisk> places = new ArrayList<>();
        List<Registered> measured = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            int index = i;
            FittedDisk fit = found.get(i);
            Optional<PredictedDispersion> predicted =
                    physics.stream().filter(p -> p.link().to() == index).findFirst();
            Shift correction = fused.corrections().get(i);
            PixelOffset moved = held(i)
                    ? new PixelOffset(0, 0)
                    : carried(new PixelOffset(correction.x(), correction.y()), output, fit.disk());
            places.add(fit.at(fit.disk().movedBy(moved.x(), moved.y())));
            measured.add(new Registered(
                    moved,
                    limbs.get(i),
                    Comparison.against(schedule.reference(), i, detail),
                    predicted.map(p -> p.link().shift()).orElse(Shift.UNKNOWN),
                    predicted.map(p -> p.middle(seen(p.link(), fused))).orElse(PassbandMiddle.UNKNOWN),
                    fused.places().get(i),
                    leftOut.get(i)));
        }
        return new RegisteredFrames(frames.at(places).warned(warnings), measured);
    }

    /** Where all witnesses see a plane against another one, beyond what the limb says. */
    private static Shift seen(Link link, Fusion.Fused fused) {
        Shift to = fused.corrections().get(link.to());
        Shift from = fused.corrections().get(link.from());
        Shift place = fused.places().get(link.to()).then(fused.places().get(link.from()));
        return new Shift(to.x() - from.x(), to.y() - from.y(), place.sigmaX(), place.sigmaY());
    }

    /**
     * How sure each limb is of where it puts what is turned with its disk: each of the centre, all of one camera of the path
     * on which its north angle turns detail (an angle that is a little off takes it off along the axis), and all of one plate scale
     * of the size, which moves the centres of gibbous and cut disks. The time that the stack shows is not quite the middle of its
     * recording: that takes detail off along the rotation, in each frame its own way.
     */
    private List<Limb> limbs(List<FittedDisk> found, Disk output) {
        Turning turning = new Turning(recipe, schedule);
        List<Object> causes = new ArrayList<>();
        List<Limb> limbs = new ArrayList<>();
        double north = Math.toRadians(output.northAngleDeg());
        for (int i = 0; i < found.size(); i++) {
            FittedDisk f = found.get(i);
            Exposure exposure = schedule.exposures().get(i);
            double path = held(i)
                    ? 0
                    : MEAN_PATH
                            * output.equatorialRadiusPx()
                            * Math.toRadians(turning.turnedDeg(exposure))
                            * Math.toRadians(f.northSigmaDeg());
            double centre = Math.hypot(f.errors().centrePx(), LIMB_FLOOR_PX)
                    * output.equatorialRadiusPx()
                    / f.disk().equatorialRadiusPx();
            double late = held(i) ? 0 : MEAN_PATH * output.equatorialRadiusPx() * turnedByTimeRad(exposure);
            SharedError byNorth = new SharedError(
                    SharedError.Kind.NORTH,
                    number(causes, Camera.of(exposure, f.disk().mirrored())),
                    -path * Math.sin(north),
                    -path * Math.cos(north));
            List<SharedError> shared = new ArrayList<>(List.of(byNorth));
            if (f.errors().commonRadius() && !held(i)) {
                PixelOffset bySize = bySize(f, output);
                shared.add(new SharedError(
                        SharedError.Kind.SIZE, number(causes, commonScale(exposure, f)), bySize.x(), bySize.y()));
            }
            limbs.add(new Limb(
                    held(i) ? 0 : centre,
                    late * Math.cos(north),
                    -late * Math.sin(north),
                    shared,
                    f.residual() > MOST_RESIDUAL));
        }
        return limbs;
    }

    /** By how much a disk's centre moves for one standard error of the common radius, on the output image. */
    private static PixelOffset bySize(FittedDisk fit, Disk output) {
        FitErrors errors = fit.errors();
        return carried(
                new PixelOffset(
                        errors.radiusPx() * errors.centreByRadius().x(),
                        errors.radiusPx() * errors.centreByRadius().y()),
                fit.disk(),
                output);
    }

    /** A plate scale in millionths of an arcsecond per pixel: frames that share one have it to rounding. */
    private static Long commonScale(Exposure exposure, FittedDisk fit) {
        return Math.round(1e6 * AtmosphericDispersion.arcsecPerPx(exposure.aspect(), fit.disk()));
    }

    /** The number of a cause among those met so far. */
    private static int number(List<Object> causes, Object cause) {
        if (!causes.contains(cause)) {
            causes.add(cause);
        }
        return causes.indexOf(cause);
    }

    /** By how much the globe turns in the standard error of a recording's time. */
    private double turnedByTimeRad(Exposure exposure) {
        if (!recipe.corrections().turn()) {
            return 0;
        }
        double degPerDay = RotationLaw.of(recipe, exposure.band().name()).equatorDegPerDay(recipe.body());
        return Math.toRadians(
                degPerDay / 86400 * exposure.frame().timing().span().midSigmaS());
    }

    private boolean usesLimb(int index) {
        return index == schedule.reference() || recipe.alignment().uses(Witness.LIMB);
    }

    /** Whether an exposure's position is set by hand. */
    private boolean held(int index) {
        return recipe.frames().placed(schedule.exposures().get(index));
    }

    /** The measurements that were ignored for each exposure, with a warning for each. */
    private List<Set<Witness>> leftOut(Fusion.Fused fused, List<Link> links, List<Limb> limbs, List<Message> warnings) {
        List<Set<Witness>> leftOut = new ArrayList<>();
        for (int i = 0; i < limbs.size(); i++) {
            leftOut.add(EnumSet.noneOf(Witness.class));
            if (fused.limbsLeftOut().get(i)) {
                leftOut.get(i).add(Witness.LIMB);
                warnings.add(Message.of(
                        "align.limbIgnored", schedule.exposures().get(i).name()));
            }
        }
        for (int k = 0; k < links.size(); k++) {
            Link link = links.get(k);
            String name = schedule.exposures().get(link.to()).name();
            if (fused.linksLeftOut().get(k)) {
                leftOut.get(link.to()).add(link.witness());
                warnings.add(Message.of(
                        "align.ignored",
                        name,
                        Message.of(link.witness() == Witness.DETAIL ? "align.detail" : "align.dispersion"),
                        link.shift().lengthPx()));
            } else {
                apart(link, name, Math.hypot(sigma(link.from(), limbs), sigma(link.to(), limbs)))
                        .ifPresent(warnings::add);
            }
        }
        return leftOut;
    }

    private double sigma(int index, List<Limb> limbs) {
        Limb limb = limbs.get(index);
        return usesLimb(index) ? Math.max(limb.sigmaX(), limb.sigmaY()) : Double.POSITIVE_INFINITY;
    }

    private static Optional<Message> apart(Link link, String name, double limbSigma) {
        Shift s = link.shift();
        double off = Math.max(
                Math.abs(s.x()) / Math.hypot(limbSigma, s.sigmaX()),
                Math.abs(s.y()) / Math.hypot(limbSigma, s.sigmaY()));
        return s.known() && off > DISAGREE
                ? Optional.of(Message.of(
                        "align.differs",
                        name,
                        Message.of(link.witness() == Witness.DETAIL ? "align.detail" : "align.dispersion"),
                        s.lengthPx()))
                : Optional.empty();
    }

    /**
     * The frames, displaced by the shifts that the user added by hand.
     *
     * @param frames on pixels that are {@code factor} times as coarse as the exposures'
     * @param output the disk of the picture
     */
    public static WorkingFrames nudged(Recipe recipe, WorkingFrames frames, Disk output, int factor) {
        return frames.map(frame -> {
            Disk disk = frame.disk().disk();
            PixelOffset nudge = carried(recipe.alignment().nudge(frame.exposure()), output, disk);
            return frame.at(frame.disk().at(disk.movedBy(-nudge.x() / factor, -nudge.y() / factor)));
        });
    }

    /** A displacement on one image as one on another: through the body's own axes. */
    public static PixelOffset carried(PixelOffset shift, Disk from, Disk to) {
        double out = Math.toRadians(from.northAngleDeg());
        double pole = -shift.x() * Math.sin(out) - shift.y() * Math.cos(out);
        double side = (from.mirrored() ? -1 : 1) * (shift.x() * Math.cos(out) - shift.y() * Math.sin(out));
        double scale = to.equatorialRadiusPx() / from.equatorialRadiusPx();
        double in = Math.toRadians(to.northAngleDeg());
        double across = to.mirrored() ? -side : side;
        return new PixelOffset(
                scale * (-pole * Math.sin(in) + across * Math.cos(in)),
                scale * (-pole * Math.cos(in) - across * Math.sin(in)));
    }
}
