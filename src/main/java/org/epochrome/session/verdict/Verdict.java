package org.epochrome.session.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.session.register.Misalignment;
import org.epochrome.text.Message;

/**
 * Whether a result can be trusted, in one line.
 *
 * @param level how far
 * @param words the line: the figures, or what is doubtful and why
 * @param diagnoses what is probably wrong, the surest first
 */
public record Verdict(Level level, Message words, List<Diagnosis> diagnoses) {
    /** Misalignment with its standard error, pixels, up to which a result is good: what shows no coloured edges. */
    private static final double GOOD_PX = 0.3;
    /** Standard error of the geometry, degrees on the globe, up to which a result is good: a pixel of a large image. */
    private static final double GOOD_DEG = 1;

    /** How far a result can be trusted. */
    public enum Level {
        GOOD,
        FAIR,
        DOUBTFUL;

        /** For programs. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Verdict {
        diagnoses = List.copyOf(diagnoses);
    }

    /**
     * The verdict on a result.
     *
     * @param before misalignment in a simple stack
     * @param after misalignment in the result
     * @param limbsPx standard error of the positions by their limbs and all else, for results whose misalignment cannot be
     *     measured, pixels
     * @param geometryDeg standard error of places on the globe, degrees
     * @param diagnoses what is probably wrong
     */
    public static Verdict of(
            Misalignment before, Misalignment after, double limbsPx, double geometryDeg, List<Diagnosis> diagnoses) {
        List<Diagnosis> sorted = new ArrayList<>(diagnoses);
        sorted.sort((a, b) -> a.confidence().compareTo(b.confidence()));
        Optional<Diagnosis> first = sorted.stream().findFirst();
        if (first.isPresent()) {
            Level level = first.get().confidence() == Confidence.POSSIBLE ? Level.FAIR : Level.DOUBTFUL;
            return new Verdict(
                    level,
                    Message.of(
                            level == Level.FAIR ? "verdict.fairBecause" : "verdict.doubtfulBecause",
                            first.get().words()),
                    sorted);
        }
        if (after.exceeds(before)) {
            return doubtful(Message.of("verdict.worse", after.px(), before.px()));
        }
        if (!after.known()) {
            return new Verdict(Level.FAIR, Message.of("verdict.byLimbs", limbsPx, geometryDeg), sorted);
        }
        double px = Math.hypot(after.px(), after.sigmaPx());
        if (after.shows()) {
            return doubtful(Message.of("verdict.misaligned", after.px(), after.sigmaPx(), after.worstBand()));
        }
        if (px > GOOD_PX) {
            return new Verdict(Level.FAIR, Message.of("verdict.unsure", px, geometryDeg), sorted);
        }
        if (geometryDeg > GOOD_DEG) {
            return new Verdict(Level.FAIR, Message.of("verdict.geometry", px, geometryDeg), sorted);
        }
        return new Verdict(Level.GOOD, Message.of("verdict.good", px, geometryDeg), sorted);
    }

    private static Verdict doubtful(Message words) {
        return new Verdict(Level.DOUBTFUL, words, List.of());
    }
}
