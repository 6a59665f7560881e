package org.epochrome.session.diagnose;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.epochrome.align.Witness;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.job.Progress;
import org.epochrome.session.locate.ImageOrientation;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.register.Misalignment;
import org.epochrome.session.register.RegisteredFrames;
import org.epochrome.session.register.Registration.Registered;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.session.verdict.Confidence;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.text.Message;

/** Looks for what is wrong with a session where something contradicts itself; else it costs next to nothing. */
public final class Examination {
    /** Limb and detail that differ by more standard errors contradict each other. */
    private static final double CONTRADICTS = 5;
    /** So many frames are compared with each other. */
    private static final int MOST_FRAMES = 10;
    /** Belts of a frame that is the right way up leave so many times less than upside down. */
    private static final double UPSIDE_DOWN = 1.06;

    /** Messages of the stages before that may follow from a wrong statement about the frames. */
    private static final Set<String> SIGNS = Set.of(
            "north.mirrored",
            "north.framesMirrored",
            "north.endUnknown",
            "north.mountDiffers",
            "north.mountAltaz",
            "north.mountEquatorial",
            "north.noAxis");

    /** Messages that guess a cause from a part of the evidence; a diagnosis replaces them. */
    private static final Set<String> GUESSES = Set.of(
            "north.mirrored", "north.framesMirrored", "north.endUnknown", "north.mountDiffers", "north.upsideDown");

    private final Recipe recipe;
    private final RegisteredFrames registered;
    private final WorkingFrames byLimbs;
    private final Turning turning;

    /**
     * @param registered the frames where they are merged, and what was measured
     * @param limbs their disks as their limbs alone put them: where detail contradicts limbs, it may not move them
     */
    public Examination(Recipe recipe, RegisteredFrames registered, List<FittedDisk> limbs, Turning turning) {
        this.recipe = recipe;
        this.registered = registered;
        byLimbs = registered
                .frames()
                .at(IntStream.range(0, limbs.size())
                        .mapToObj(i -> {
                            Disk lies = registered.frames().get(i).disk().disk();
                            Disk limb = limbs.get(i).disk();
                            return limbs.get(i)
                                    .at(new Disk(
                                            limb.x(),
                                            limb.y(),
                                            limb.equatorialRadiusPx(),
                                            lies.northAngleDeg(),
                                            lies.mirrored()));
                        })
                        .toList());
        this.turning = turning;
    }

    /**
     * The diagnoses of a session.
     *
     * @param after misalignment of the result
     * @param duplicates what was seen of the frames' pixels
     */
    public List<Diagnosis> diagnoses(Misalignment after, Duplicates duplicates, Progress progress) {
        List<Diagnosis> found = new ArrayList<>();
        if (recipe.corrections().turn() && registered.frames().size() > 1 && contradicted(after, progress)) {
            found.addAll(litSide(progress));
        }
        if (found.isEmpty()
                && recipe.corrections().turn()
                && registered.frames().size() > 1
                && contradicted(after, progress)) {
            found.addAll(new MotionDiagnosis(recipe, byLimbs, turning, chosen(), progress).find());
        }
        Set<Path> blamed = new HashSet<>();
        found.forEach(d -> blamed.addAll(d.files()));
        List<Diagnosis> twice = duplicates.found(blamed);
        Set<Path> explained = new HashSet<>();
        twice.forEach(d -> explained.addAll(d.files()));
        found.removeIf(d -> !d.files().isEmpty() && explained.containsAll(d.files()));
        found.addAll(0, twice);
        found.addAll(Hints.of(registered, recipe, found));
        return found;
    }

    private List<Diagnosis> litSide(Progress progress) {
        return LitSide.of(recipe, byLimbs.reference(), progress).stream().toList();
    }

    /** What the user should know, without the guesses that a diagnosis replaces. */
    public static List<Message> without(List<Message> warnings, List<Diagnosis> diagnoses) {
        return diagnoses.stream().allMatch(d -> d.confidence() == Confidence.POSSIBLE)
                ? warnings
                : warnings.stream().filter(w -> !GUESSES.contains(w.key())).toList();
    }

    private boolean contradicted(Misalignment after, Progress progress) {
        boolean said = registered.frames().warnings().stream().anyMatch(w -> SIGNS.contains(w.key()));
        if (said || after.shows()) {
            return true;
        }
        if (recipe.alignment().uses(Witness.DETAIL)) {
            for (int i = 0; i < registered.measured().size(); i++) {
                if (i != registered.frames().schedule().reference() && contradicted(i)) {
                    return true;
                }
            }
        }
        return isUpsideDown(progress);
    }

    /** Whether a frame's detail was not found, or not where it should be. */
    private boolean contradicted(int index) {
        Registered measured = registered.measured().get(index);
        return !measured.detail().known()
                || !measured.leftOut().isEmpty()
                || Math.hypot(
                                measured.detail().x()
                                        / Math.hypot(
                                                measured.limb().sigmaX(),
                                                measured.detail().sigmaX()),
                                measured.detail().y()
                                        / Math.hypot(
                                                measured.limb().sigmaY(),
                                                measured.detail().sigmaY()))
                        > CONTRADICTS;
    }

    /** Whether the belts of the reference frame contradict the end of the axis that the motion of the detail gives. */
    private boolean isUpsideDown(Progress progress) {
        WorkingFrames frames = byLimbs;
        if (!recipe.body().belted()
                || ImageOrientation.ringsTellNorth(frames.schedule().aspect())) {
            return false;
        }
        FrameDetail detail = FrameDetail.of(frames.reference(), progress);
        DetailMap over = detail.map(Disk.wrapDeg(detail.northDeg() + 180), detail.mirrored());
        return detail.map().unevenness() > UPSIDE_DOWN * over.unevenness();
    }

    /** The frames to compare: those that contradict others, and others evenly over the session. */
    private List<Integer> chosen() {
        int size = registered.frames().size();
        Set<Integer> chosen = new LinkedHashSet<>();
        chosen.add(registered.frames().schedule().reference());
        for (int i = 0; i < size && chosen.size() < MOST_FRAMES / 2; i++) {
            if (contradicted(i)) {
                chosen.add(i);
            }
        }
        int more = Math.min(size, MOST_FRAMES) - chosen.size();
        List<Integer> others = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            if (!chosen.contains(i)) {
                others.add(i);
            }
        }
        for (int k = 0; k < Math.min(more, others.size()); k++) {
            chosen.add(others.get(k * others.size() / Math.min(more, others.size())));
        }
        return chosen.stream().sorted().toList();
    }
}
