package org.epochrome.plan.limit;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.epochrome.plan.night.Interval;
import org.epochrome.text.Message;

/**
 * Finds an order of filters, the length of recordings and the number of sets.
 *
 * <p>Of the bands the one of the shortest waves suffers most from the air. Where the planet culminates within the time, that
 * band stands in the middle of a symmetric order (R-G-B-G-R) and the sequence about the culmination. Where the planet is
 * highest at the beginning or end, that band stands at both ends (B-G-R-G-B), so that one of its recordings is the highest of
 * all. In a symmetric order the mid-exposures of all bands coincide on average. Sets are added while turning still mends
 * what lies between them ({@link TurningLoss}).
 *
 * @param limits of the bands
 * @param turnDegPerHour of the planet
 * @param window when the planet can be recorded
 * @param best when it stands highest in that time
 */
public record SequencePlanner(List<BandLimit> limits, double turnDegPerHour, Interval window, Instant best) {
    /** For changing the filter and starting the next recording: common practice, no source. */
    public static final Duration PAUSE = Duration.ofSeconds(15);

    /** Focus and seeing drift in longer recordings: common practice, no source. */
    public static final Duration LONGEST_RECORDING = Duration.ofMinutes(10);

    private static final Duration SHORTEST_RECORDING = Duration.ofSeconds(5);
    private static final int MOST_SETS = 50;

    public SequencePlanner {
        limits = List.copyOf(limits);
    }

    /** The longest sequence that turning still mends, from the first to the last mid-exposure, seconds. */
    public double longestSequenceS() {
        return longestSequenceS(turnDegPerHour);
    }

    /** The same for a turn in degrees an hour. */
    public static double longestSequenceS(double turnDegPerHour) {
        return 2 * TurningLoss.largestTurnDeg() / turnDegPerHour * 3600;
    }

    /** The sequence; empty if not even one recording of each band fits into the window. */
    public Optional<RecordingSequence> plan() {
        List<Message> reasons = new ArrayList<>();
        List<BandLimit> order = order(reasons);
        List<Duration> lengths = order.stream().map(SequencePlanner::length).toList();
        double allowed = allowedS(lengths);
        if (seconds(total(lengths)) > allowed && order.size() > limits.size()) {
            order = inAltitude();
            lengths = order.stream().map(SequencePlanner::length).toList();
            reasons.clear();
            reasons.add(Message.of("plan.order.once", text(order), allowed / 60));
        }
        allowed = allowedS(lengths);
        if (seconds(total(lengths)) > allowed) {
            double pauses = seconds(PAUSE) * (order.size() - 1);
            double part = Math.max(0, (allowed - pauses) / (seconds(total(lengths)) - pauses));
            lengths = lengths.stream().map(l -> shortened(l, part)).toList();
            reasons.add(Message.of("plan.order.shortened", allowed / 60));
        }
        Duration set = total(lengths);
        if (set.compareTo(window.duration()) > 0
                || lengths.stream().anyMatch(l -> l.compareTo(SHORTEST_RECORDING) < 0)) {
            return Optional.empty();
        }
        long each = set.plus(PAUSE).toSeconds();
        int sets = (int) Math.max(1, Math.min(MOST_SETS, ((long) allowedS(lengths) + PAUSE.toSeconds()) / each));
        Duration whole = Duration.ofSeconds(each * sets).minus(PAUSE);
        reasons.add(Message.of("plan.order.sets", sets, seconds(whole) / 60, longestSequenceS() / 60));
        return Optional.of(new RecordingSequence(
                recordings(order, lengths, sets, start(whole)),
                sets,
                order.stream().map(BandLimit::band).toList(),
                turnDegPerHour,
                reasons));
    }

    /** How long recordings may take in all: their first and last mid-exposures are what turning must bring together. */
    private double allowedS(List<Duration> lengths) {
        Duration ends = lengths.get(0).plus(lengths.get(lengths.size() - 1)).dividedBy(2);
        return Math.min(longestSequenceS() + seconds(ends), seconds(window.duration()));
    }

    private List<PlannedRecording> recordings(List<BandLimit> order, List<Duration> lengths, int sets, Instant start) {
        List<PlannedRecording> recordings = new ArrayList<>();
        Instant next = start;
        for (int set = 1; set <= sets; set++) {
            for (int i = 0; i < order.size(); i++) {
                recordings.add(new PlannedRecording(set, order.get(i).band(), next, lengths.get(i)));
                next = next.plus(lengths.get(i)).plus(PAUSE);
            }
        }
        return recordings;
    }

    /** As near to the best time as the window allows, to the full second. */
    private Instant start(Duration whole) {
        Instant latest = window.end().minus(whole);
        Instant wanted = best.minus(whole.dividedBy(2));
        Instant start = wanted.isAfter(latest) ? latest : wanted;
        return (start.isBefore(window.start()) ? window.start() : start).truncatedTo(ChronoUnit.SECONDS);
    }

    private List<BandLimit> order(List<Message> reasons) {
        List<BandLimit> longFirst = byWavelength();
        if (limits.size() == 1) {
            return longFirst;
        }
        List<BandLimit> half = longFirst;
        if (!culminates()) {
            half = new ArrayList<>(longFirst);
            Collections.reverse(half);
        }
        List<BandLimit> order = new ArrayList<>(half);
        for (int i = half.size() - 2; i >= 0; i--) {
            order.add(half.get(i));
        }
        String shortest = longFirst.get(longFirst.size() - 1).band().name();
        reasons.add(
                culminates()
                        ? Message.of("plan.order.culmination", text(order), shortest)
                        : Message.of("plan.order.ends", text(order), shortest));
        return order;
    }

    private boolean culminates() {
        return best.isAfter(window.start()) && best.isBefore(window.end());
    }

    /** Each band once, the shortest waves at the highest altitude: last while the planet rises, else first. */
    private List<BandLimit> inAltitude() {
        List<BandLimit> order = new ArrayList<>(byWavelength());
        if (best.equals(window.start())) {
            Collections.reverse(order);
        }
        return order;
    }

    private List<BandLimit> byWavelength() {
        return limits.stream()
                .sorted(Comparator.comparingDouble(
                                (BandLimit l) -> -l.band().passband().effectiveNm())
                        .thenComparing(l -> l.band().name()))
                .toList();
    }

    private static String text(List<BandLimit> order) {
        return String.join("-", order.stream().map(l -> l.band().name()).toList());
    }

    /** The limit in round numbers: full 10 seconds from a minute on, else 5. */
    private static Duration length(BandLimit limit) {
        return rounded(Math.min(seconds(LONGEST_RECORDING), limit.longestS()));
    }

    private static Duration shortened(Duration length, double part) {
        return rounded(length.toSeconds() * part);
    }

    private static Duration rounded(double seconds) {
        double step = seconds >= 60 ? 10 : 5;
        return Duration.ofSeconds((long) (step * Math.floor(seconds / step + 1e-9)));
    }

    private static double seconds(Duration length) {
        return length.toMillis() / 1000.0;
    }

    private static Duration total(List<Duration> lengths) {
        return lengths.stream().reduce(Duration.ZERO, Duration::plus).plus(PAUSE.multipliedBy(lengths.size() - 1));
    }
}
