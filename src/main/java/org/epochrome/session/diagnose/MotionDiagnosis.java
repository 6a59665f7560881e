package org.epochrome.session.diagnose;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.disk.Disk;
import org.epochrome.job.Progress;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.RotationLaw;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.session.verdict.Confidence;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.session.verdict.Remedy;
import org.epochrome.text.Message;
import org.epochrome.time.UtcText;

/**
 * What is wrong if detail does not move from frame to frame as the globe turns: all frames in other orientations and in
 * the reverse order, then each frame that still does not fit at another time or in another orientation. What needs the
 * fewest wrong statements explains it.
 */
final class MotionDiagnosis {
    /** Error of an angle between frames, degrees. */
    private static final double ANGLE_SIGMA_DEG = 0.4;
    /** A turn of one frame that the limbs do not show either is none, degrees. */
    private static final double LEAST_TURN_DEG = 2;
    /** So many times better a frame must agree that is turned. */
    private static final double FAR_BETTER = 1.3;
    /** An explanation is sure if the next needs so much more to be wrong. */
    private static final double SURE = 0.5;
    /** Times that are off by less turn nothing visible. */
    private static final Duration LEAST_OFFSET = Duration.ofSeconds(40);

    private final Recipe recipe;
    private final List<WorkingFrame> frames;
    private final List<FrameDetail> details = new ArrayList<>();
    private final double[] byTime;
    private final double eastwardDegPerDay;
    private final double referenceNorthDeg;

    /** @param frames those to compare, not too many, with their disks */
    MotionDiagnosis(Recipe recipe, WorkingFrames frames, Turning turning, List<Integer> chosen, Progress progress) {
        this.recipe = recipe;
        this.frames = chosen.stream().map(frames::get).toList();
        Disk reference = frames.reference().disk().disk();
        referenceNorthDeg = reference.northAngleDeg();
        byTime = new double[chosen.size()];
        for (int i = 0; i < byTime.length; i++) {
            WorkingFrame frame = this.frames.get(i);
            Disk disk = frame.disk().disk();
            boolean alone = disk.mirrored() != reference.mirrored()
                    && frame.exposure().frame().givenMirrored().isEmpty();
            double north = recipe.setup()
                    .mount()
                    .carriedNorthDeg(
                            reference.northAngleDeg(),
                            frames.reference().exposure().aspect(),
                            frame.exposure().aspect(),
                            reference.mirrored());
            details.add(FrameDetail.of(frame, progress)
                    .lying(alone ? north : disk.northAngleDeg(), alone ? reference.mirrored() : disk.mirrored()));
            byTime[i] = Math.toDegrees(turning.eastwardRad(frame.exposure()));
        }
        double rate = RotationLaw.of(recipe, recipe.assignment().green()).equatorDegPerDay(recipe.body());
        eastwardDegPerDay = recipe.body().prograde() ? rate : -rate;
    }

    /** The explanations; none if detail moves as it should, or is too faint to decide. */
    List<Diagnosis> find() {
        List<MotionHypothesis> ranked = MotionHypothesis.ranked(recipe, details, byTime);
        MotionHypothesis best = ranked.get(0);
        if (best.group().size() < 2) {
            return northElsewhere(ranked);
        }
        double next = ranked.stream()
                .skip(1)
                .filter(h -> !sameStatement(h, best))
                .mapToDouble(MotionHypothesis::cost)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        Confidence confidence = next - best.cost() > SURE ? Confidence.SURE : Confidence.LIKELY;
        List<Diagnosis> found = new ArrayList<>(ofAll(best, confidence));
        List<Exposure> agreeing =
                best.group().stream().map(i -> frames.get(i).exposure()).toList();
        Map<Integer, Duration> offsets = new HashMap<>();
        for (int i : best.suspects()) {
            ofOne(best, i, agreeing, confidence, offsets).ifPresent(found::add);
        }
        if (found.isEmpty()) {
            turnedMost(best).ifPresent(found::add);
        }
        return exchanged(offsets, found);
    }

    /** The frame that agrees far better with the others if it is turned, where all agree more or less. */
    private Optional<Diagnosis> turnedMost(MotionHypothesis best) {
        double most = FAR_BETTER;
        Optional<Diagnosis> found = Optional.empty();
        for (int i : best.group().size() > 2 ? best.group() : List.<Integer>of()) {
            SuspectFrame.Turn turn = new SuspectFrame(best, details.get(i), i).turn();
            if (turn.gain() > most && Math.abs(turn.deg()) >= LEAST_TURN_DEG) {
                most = turn.gain();
                found = Optional.of(rotated(frames.get(i), details.get(i).northDeg() + turn.deg(), turn.deg()));
            }
        }
        return found;
    }

    /** Whether two hypotheses say the same of what the user stated. */
    private boolean sameStatement(MotionHypothesis a, MotionHypothesis b) {
        return a.orientation().reversed() == b.orientation().reversed()
                && a.orientation().reflected() == b.orientation().reflected()
                && a.suspects().equals(b.suspects());
    }

    private List<Diagnosis> ofAll(MotionHypothesis best, Confidence confidence) {
        Orientation o = best.orientation();
        boolean mirrored = details.get(0).mirrored() != o.reflected();
        List<Diagnosis> found = new ArrayList<>();
        Mirroring stated = recipe.setup().mirroring();
        boolean north = recipe.setup().northDeg().isPresent();
        boolean otherSense = mirrored != (stated == Mirroring.YES);
        boolean handled = stated == Mirroring.AUTO && o.equals(Orientation.AS_ASSUMED);
        // Reflected frames move like frames in the reverse order: names that count tell which.
        NameOrder names =
                NameOrder.of(frames.stream().map(WorkingFrame::exposure).toList());
        boolean backwards = o.reversed() != otherSense && !(otherSense && handled && names != NameOrder.AGAINST_TIMES);
        if (backwards && (names == NameOrder.AGAINST_TIMES || (o.reversed() && names == NameOrder.UNKNOWN))) {
            found.add(reversed(names == NameOrder.AGAINST_TIMES ? Confidence.SURE : Confidence.LIKELY));
        } else if (backwards) {
            boolean otherwise = stated != Mirroring.YES;
            found.add(new Diagnosis(
                    Diagnosis.Cause.MIRRORED,
                    List.of(),
                    Message.of(otherwise ? "diagnosis.mirroredAll" : "diagnosis.notMirrored"),
                    names == NameOrder.WITH_TIMES ? Confidence.SURE : Confidence.LIKELY,
                    Optional.of(new Remedy.Mirrored(otherwise))));
        }
        if (o.turnedDeg() != 0 && north) {
            double there = Disk.wrapDeg(recipe.setup().northDeg().getAsDouble() + o.turnedDeg());
            found.add(new Diagnosis(
                    Diagnosis.Cause.NORTH,
                    List.of(),
                    Message.of("diagnosis.north", Math.abs(o.turnedDeg()), there),
                    confidence,
                    Optional.of(new Remedy.North(there))));
        }
        return found;
    }

    private Diagnosis reversed(Confidence confidence) {
        Map<Path, Duration> later = new HashMap<>();
        List<WorkingFrame> sorted = new ArrayList<>(frames);
        sorted.sort((a, b) -> a.exposure().mid().compareTo(b.exposure().mid()));
        for (int i = 0; i < sorted.size(); i++) {
            Duration by = Duration.between(
                    sorted.get(i).exposure().mid(),
                    sorted.get(sorted.size() - 1 - i).exposure().mid());
            later.put(file(sorted.get(i)), by);
        }
        return new Diagnosis(
                Diagnosis.Cause.REVERSED_TIMES,
                List.of(),
                Message.of("diagnosis.reversed"),
                confidence,
                Optional.of(new Remedy.Times(later)));
    }

    private Optional<Diagnosis> ofOne(
            MotionHypothesis best,
            int index,
            List<Exposure> agreeing,
            Confidence confidence,
            Map<Integer, Duration> offsets) {
        WorkingFrame frame = frames.get(index);
        List<SuspectFrame.Change> changes = new SuspectFrame(best, details.get(index), index).changes();
        if (changes.isEmpty()) {
            return Optional.empty();
        }
        SuspectFrame.Change change = changes.get(0);
        String name = frame.exposure().name();
        List<Path> files = List.of(file(frame));
        if (change.inTime()) {
            Instant stated = frame.exposure().mid();
            Duration by = TimeOffset.of(
                    change.offDeg(),
                    eastwardDegPerDay,
                    ANGLE_SIGMA_DEG,
                    stated,
                    agreeing.stream().map(Exposure::mid).toList());
            if (by.abs().compareTo(LEAST_OFFSET) < 0) {
                return Optional.empty();
            }
            offsets.put(index, by);
            return Optional.of(new Diagnosis(
                    Diagnosis.Cause.TIME,
                    files,
                    Message.of(
                            by.isNegative() ? "diagnosis.late" : "diagnosis.early",
                            name,
                            TimeOffset.words(by),
                            UtcText.format(stated.plus(by).truncatedTo(ChronoUnit.SECONDS))),
                    confidence,
                    Optional.of(new Remedy.Times(Map.of(files.get(0), by)))));
        }
        if (change.reflected()) {
            return Optional.of(new Diagnosis(
                    Diagnosis.Cause.MIRRORED,
                    files,
                    Message.of("diagnosis.mirrored", name),
                    Confidence.POSSIBLE,
                    Optional.empty()));
        }
        return Math.abs(change.turnedDeg()) < LEAST_TURN_DEG
                ? Optional.empty()
                : Optional.of(rotated(frame, details.get(index).northDeg() + change.turnedDeg(), change.turnedDeg()));
    }

    private static Diagnosis rotated(WorkingFrame frame, double northDeg, double turnedDeg) {
        Disk disk = frame.disk().disk();
        return new Diagnosis(
                Diagnosis.Cause.ROTATED,
                List.of(file(frame)),
                Message.of("diagnosis.rotated", frame.exposure().name(), Math.abs(turnedDeg)),
                Confidence.LIKELY,
                Optional.of(new Remedy.OwnNorth(
                        file(frame),
                        new ManualDisk(
                                disk.x(),
                                disk.y(),
                                disk.equatorialRadiusPx(),
                                OptionalDouble.of(Disk.wrapDeg(northDeg))))));
    }

    /** Two frames each of which was taken when the other was are exchanged. */
    private List<Diagnosis> exchanged(Map<Integer, Duration> offsets, List<Diagnosis> found) {
        if (offsets.size() != 2) {
            return found;
        }
        List<Integer> both = new ArrayList<>(offsets.keySet());
        WorkingFrame one = frames.get(both.get(0));
        WorkingFrame other = frames.get(both.get(1));
        Duration between =
                Duration.between(one.exposure().mid(), other.exposure().mid());
        Duration slack = Duration.ofSeconds(Math.round(86400 * ANGLE_SIGMA_DEG * 2 / Math.abs(eastwardDegPerDay)));
        boolean exchanged = offsets.get(both.get(0)).minus(between).abs().compareTo(slack) < 0
                && offsets.get(both.get(1)).plus(between).abs().compareTo(slack) < 0;
        if (!exchanged) {
            return found;
        }
        List<Diagnosis> rest = new ArrayList<>(
                found.stream().filter(d -> d.cause() != Diagnosis.Cause.TIME).toList());
        rest.add(new Diagnosis(
                Diagnosis.Cause.EXCHANGED_TIMES,
                List.of(file(one), file(other)),
                Message.of(
                        "diagnosis.exchanged",
                        one.exposure().name(),
                        other.exposure().name()),
                Confidence.LIKELY,
                Optional.of(new Remedy.Times(Map.of(file(one), between, file(other), between.negated())))));
        return rest;
    }

    /** The frames agree in no orientation of the axis: it may lie in another direction than the one that was stated. */
    private List<Diagnosis> northElsewhere(List<MotionHypothesis> ranked) {
        if (recipe.setup().northDeg().isEmpty()) {
            return List.of();
        }
        return new AxisSearch(details, byTime)
                .turnedDeg(ranked.get(0).table())
                .map(turned -> {
                    double there = Disk.wrapDeg(referenceNorthDeg + turned);
                    return new Diagnosis(
                            Diagnosis.Cause.NORTH,
                            List.of(),
                            Message.of("diagnosis.north", Math.abs(turned), there),
                            Confidence.LIKELY,
                            Optional.of(new Remedy.North(there)));
                })
                .map(List::of)
                .orElse(List.of());
    }

    private static Path file(WorkingFrame frame) {
        return frame.exposure().frame().head().file();
    }
}
