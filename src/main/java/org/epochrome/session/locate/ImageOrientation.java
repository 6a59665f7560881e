package org.epochrome.session.locate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.job.Progress;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.GivenMirroring;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/**
 * Which way up the frames are. A disk fit finds the direction of the axis but not which end is north, nor whether the
 * image is mirrored. Detail can tell: it moves the right way from frame to frame only in the right orientation. Frames turned
 * by 180 degrees against the others (a mount that flipped) show in the same way.
 *
 * <p>Saturn's rings, unless they are seen edge-on, tell by themselves which end of the axis is north, for only their near
 * side crosses the globe; then detail is asked for nothing but reflections.
 */
public final class ImageOrientation {
    /** The best hypothesis must explain this much more than the next to be believed. */
    private static final double CLEAR = 1.03;
    /** A frame must fit this many times better upside down or mirrored to be treated as such. */
    private static final double CLEAR_FLIP = 1.25;
    /**
     * And upside down agree so well: a mount flips once in a night, and blue frames blurred by dispersion low in the sky have agreed by chance up to
     * 0.11.
     */
    private static final double LEAST_FLIP_AGREEMENT = 0.2;
    /** Part of the detail beyond which agreement is no chance; upside down, belts give up to 0.11. */
    private static final double LEAST_AGREEMENT = 0.15;
    /** Less is believed if it is so many times more than in the other orientation. */
    private static final double CLEAR_OVER_CHANCE = 3;
    /** Detail that agrees so well needs no other explanation. */
    private static final double DOUBTFUL_AGREEMENT = 0.5;
    /** Latitude of observer or Sun from which on rings in front of the globe or their shadow tell one end from the other. */
    private static final double CLEAR_OPENING_DEG = 0.6;
    /** A given north angle that differs from that of the rings by more is reported. */
    private static final double DOUBTFUL_NORTH_DEG = 2;

    /** Steps in which a north angle is searched for that only detail shows: the widest, and one that is fine enough. */
    private static final double WIDE_STEP_DEG = 8;

    private static final double FINE_STEP_DEG = 0.03;

    private final Recipe recipe;
    private final Schedule schedule;
    private final GivenMirroring given;
    private final Mirroring mirroring;
    private final SmallFrames small;
    private final List<FittedDisk> fits;
    private final List<Message> warnings = new ArrayList<>();
    private final boolean ringsShowNorth;

    /**
     * @param given the user's setting of reflections
     * @param mirroring what is known about reflections
     * @param frames with their disks so far, north right up to 180 degrees
     */
    public ImageOrientation(
            Recipe recipe, GivenMirroring given, Mirroring mirroring, WorkingFrames frames, Memory memory) {
        this.recipe = recipe;
        this.schedule = frames.schedule();
        this.given = given;
        this.mirroring = mirroring;
        fits = frames.disks();
        small = new SmallFrames(new Turning(recipe, schedule), frames, memory);
        ringsShowNorth = ringsTellNorth(schedule.aspect());
    }

    /** Whether a body has rings that show which end of its axis is north. */
    public static boolean ringsTellNorth(Aspect aspect) {
        double opening =
                Math.max(Math.abs(aspect.subEarthLatitudeCentricDeg()), Math.abs(aspect.subSolarLatitudeCentricDeg()));
        return aspect.body().rings().isPresent() && opening > CLEAR_OPENING_DEG;
    }

    /**
     * How the frames lie.
     *
     * @param angles north angle and mirroring of every frame
     * @param warnings what the user should know, a sentence each
     */
    public record Oriented(List<Angle> angles, List<Message> warnings) {
        /** The frames with their disks as they lie. */
        public WorkingFrames on(WorkingFrames frames) {
            return frames.at(IntStream.range(0, angles.size())
                            .mapToObj(i -> frames.get(i)
                                    .disk()
                                    .at(angles.get(i).on(frames.get(i).disk().disk())))
                            .toList())
                    .warned(warnings);
        }
    }

    /** North angle and mirroring of every frame. */
    public Oriented resolve(Progress progress) {
        double axis = recipe.setup().northDeg().orElseGet(this::commonAxis);
        double off = Disk.wrapDeg(axis - fits.get(schedule.reference()).disk().northAngleDeg());
        if (ringsShowNorth && Math.abs(off) > DOUBTFUL_NORTH_DEG) {
            warnings.add(Message.of("north.rings", recipe.body().displayName(), Math.round(Disk.wrapDeg(axis - off))));
        }
        List<Hypothesis> hypotheses = hypotheses(axis);
        List<Outcome> outcomes = new ArrayList<>();
        for (Hypothesis h : hypotheses) {
            progress.check();
            outcomes.add(test(h, progress));
        }
        outcomes.sort((a, b) -> Double.compare(b.score, a.score));
        Outcome best = outcomes.get(0);
        boolean clear = outcomes.size() == 1 || best.score > CLEAR * outcomes.get(1).score;
        if (!clear) {
            Hypothesis first = hypotheses.get(0);
            best = outcomes.stream()
                    .filter(o -> o.hypothesis.equals(first))
                    .findFirst()
                    .orElseThrow();
            warnings.add(
                    endsKnown()
                            ? Message.of("north.mirroringUnknown")
                            : Message.of("north.endUnknown", Math.round(Disk.wrapDeg(first.northDeg + 180))));
        } else if (!endsKnown() && mirroring == Mirroring.AUTO) {
            warnings.add(Message.of("north.byRotation"));
        }
        return new Oriented(best.angles, List.copyOf(warnings));
    }

    /** The axis' direction in the reference frame by all frames, weighted; up to 180 degrees. */
    private double commonAxis() {
        Exposure reference = schedule.referenceExposure();
        double start = fits.get(schedule.reference()).disk().northAngleDeg();
        double sum = 0;
        double weights = 0;
        for (int i : given.alike()) {
            double north = recipe.setup()
                    .mount()
                    .carriedNorthDeg(
                            fits.get(i).disk().northAngleDeg(),
                            schedule.exposures().get(i).aspect(),
                            reference.aspect(),
                            mirroring == Mirroring.YES);
            double off = Disk.wrapDeg(2 * (north - start)) / 2;
            double weight = 1 / (Math.pow(fits.get(i).northSigmaDeg(), 2) + 1e-4);
            sum += weight * off;
            weights += weight;
        }
        return Disk.wrapDeg(start + sum / weights);
    }

    private boolean endsKnown() {
        return recipe.setup().northDeg().isPresent() || ringsShowNorth;
    }

    private record Hypothesis(double northDeg, boolean mirrored) {}

    private List<Hypothesis> hypotheses(double axis) {
        boolean known = mirroring == Mirroring.YES;
        List<Hypothesis> list = new ArrayList<>();
        list.add(new Hypothesis(axis, known));
        if (!endsKnown()) {
            list.add(new Hypothesis(Disk.wrapDeg(axis + 180), known));
        } else if (mirroring == Mirroring.AUTO) {
            list.add(new Hypothesis(axis, true));
        }
        return list;
    }

    /** How one exposure lies. */
    public record Angle(double northDeg, boolean mirrored, boolean flipped) {
        /** A disk of its place and size that lies so. */
        public Disk on(Disk disk) {
            return new Disk(disk.x(), disk.y(), disk.equatorialRadiusPx(), northDeg, mirrored);
        }
    }

    private record Outcome(Hypothesis hypothesis, double score, List<Angle> angles) {}

    private Outcome test(Hypothesis h, Progress progress) {
        Angle place = new Angle(h.northDeg, h.mirrored, false);
        Detail reference = small.detail(schedule.reference(), place, place, progress);
        List<Optional<Angle>> known = new ArrayList<>();
        double score = 0;
        for (int i = 0; i < fits.size(); i++) {
            if (i == schedule.reference()) {
                known.add(Optional.of(place));
                continue;
            }
            if (given.against(i)) {
                ByDetail over = turnedOver(i, h, reference, place, progress);
                known.add(Optional.of(over.angle));
                score += over.agreement;
                continue;
            }
            Angle upright = angle(h, i, false);
            if (ringsShowNorth) {
                double own = fits.get(i).disk().northAngleDeg();
                boolean over = Math.abs(Disk.wrapDeg(own - upright.northDeg)) > 90;
                known.add(Optional.of(angle(h, i, over)));
                score += DetailWitness.agreement(reference, small.detail(i, angle(h, i, over), place, progress));
                continue;
            }
            double asIs = DetailWitness.agreement(reference, small.detail(i, upright, place, progress));
            double turned = DetailWitness.agreement(reference, small.detail(i, angle(h, i, true), place, progress));
            boolean flipped = turned > CLEAR_FLIP * asIs;
            Angle found = angle(h, i, flipped);
            double agreement = Math.max(asIs, turned);
            boolean sure = flipped ? turned > LEAST_FLIP_AGREEMENT : sure(asIs, turned);
            if (recipe.setup().mirroring() == Mirroring.AUTO && agreement < DOUBTFUL_AGREEMENT) {
                double unreflected = agreement;
                for (Angle candidate : reflected(i, h)) {
                    double other = DetailWitness.agreement(reference, small.detail(i, candidate, place, progress));
                    if (other > agreement && other > CLEAR_FLIP * unreflected && sure(other, unreflected)) {
                        found = candidate;
                        agreement = other;
                        sure = true;
                    }
                }
            }
            known.add(sure ? Optional.of(found) : Optional.empty());
            score += agreement;
        }
        List<Angle> angles = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            boolean flipped = known.get(neighbour(i, known)).orElseThrow().flipped();
            angles.add(known.get(i).orElse(angle(h, i, flipped)));
        }
        return new Outcome(h, score, angles);
    }

    /** Whether agreement is more than chance. */
    private static boolean sure(double agreement, double otherwise) {
        return agreement > LEAST_AGREEMENT || agreement > CLEAR_OVER_CHANCE * otherwise;
    }

    /** How an exposure lies if the mount carried it from the reference, or was flipped in between. */
    private Angle angle(Hypothesis h, int index, boolean flipped) {
        double north = recipe.setup()
                .mount()
                .carriedNorthDeg(
                        h.northDeg,
                        schedule.referenceExposure().aspect(),
                        schedule.exposures().get(index).aspect(),
                        h.mirrored);
        return new Angle(flipped ? Disk.wrapDeg(north + 180) : north, h.mirrored, flipped);
    }

    /** The exposure next in time that tells how it lies: a mount flips once in a night. */
    private int neighbour(int index, List<Optional<Angle>> known) {
        Instant mid = schedule.exposures().get(index).mid();
        return IntStream.range(0, known.size())
                .filter(i -> known.get(i).isPresent() && !given.against(i))
                .boxed()
                .min(Comparator.comparing(i ->
                        Duration.between(mid, schedule.exposures().get(i).mid()).abs()))
                .orElseThrow();
    }

    /** What detail says of an exposure. */
    private record ByDetail(Angle angle, double agreement) {}

    /** How an exposure lies that has a reflection more or less: by its rings, by its axis, or by nothing but its detail. */
    private ByDetail turnedOver(int index, Hypothesis h, Detail reference, Angle place, Progress progress) {
        double own = fits.get(index).disk().northAngleDeg();
        boolean free = !recipe.body().showsAxis();
        double step = ringsShowNorth ? 360 : free ? WIDE_STEP_DEG : 180;
        ByDetail best = new ByDetail(new Angle(own, !h.mirrored, false), Double.NEGATIVE_INFINITY);
        for (double turn = 0; turn < 360; turn += step) {
            best = better(best, index, own + turn, reference, place, progress);
        }
        for (double fine = step / 2; free && fine > FINE_STEP_DEG; fine /= 2) {
            double middle = best.angle.northDeg;
            best = better(best, index, middle - fine, reference, place, progress);
            best = better(best, index, middle + fine, reference, place, progress);
        }
        if (free && best.agreement < LEAST_AGREEMENT) {
            warnings.add(Message.of(
                    "north.markedMirrored", schedule.exposures().get(index).name()));
        }
        return best;
    }

    private ByDetail better(
            ByDetail best, int index, double northDeg, Detail reference, Angle place, Progress progress) {
        Angle angle = new Angle(Disk.wrapDeg(northDeg), best.angle.mirrored, false);
        double agreement = DetailWitness.agreement(reference, small.detail(index, angle, place, progress));
        return agreement > best.agreement ? new ByDetail(angle, agreement) : best;
    }

    /** How an exposure would lie if it had a reflection more or less than the others: its own axis, either end up. */
    private List<Angle> reflected(int index, Hypothesis h) {
        if (!recipe.body().showsAxis()) {
            return List.of();
        }
        double own = fits.get(index).disk().northAngleDeg();
        return List.of(new Angle(own, !h.mirrored, false), new Angle(Disk.wrapDeg(own + 180), !h.mirrored, false));
    }

    /** Numbers of the exposures that are upside down against the reference. */
    static List<Integer> flipped(List<Angle> angles) {
        return IntStream.range(0, angles.size())
                .filter(i -> angles.get(i).flipped())
                .boxed()
                .toList();
    }
}
