package org.epochrome.plan.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.epochrome.image.Band;
import org.epochrome.plan.night.Interval;
import org.junit.jupiter.api.Test;

class SequencePlannerTest {
    private static final Instant START = Instant.parse("2031-06-20T21:00:00Z");
    private static final Instant END = Instant.parse("2031-06-21T01:00:00Z");
    private static final double JUPITER_DEG_PER_HOUR = 36.27;

    private static List<BandLimit> limits(double longestS) {
        // half of 1 arcsec at that speed takes as long
        double arcsecPerMin = 30 / longestS;
        return List.of(Band.R, Band.G, Band.B).stream()
                .map(b -> new BandLimit(b, 0.4, 1, arcsecPerMin, 0.5))
                .toList();
    }

    private static Optional<RecordingSequence> plan(double longestS, Interval window, Instant best) {
        return new SequencePlanner(limits(longestS), JUPITER_DEG_PER_HOUR, window, best).plan();
    }

    private static Instant meanMid(RecordingSequence sequence, Band band) {
        double mean = sequence.recordings().stream()
                .filter(r -> r.band().equals(band))
                .mapToLong(r -> r.mid().toEpochMilli())
                .average()
                .orElseThrow();
        return Instant.ofEpochMilli(Math.round(mean));
    }

    @Test
    void blueIsInTheMiddleAtTheCulmination() {
        Instant best = Instant.parse("2031-06-20T23:00:00Z");
        RecordingSequence sequence = plan(85, new Interval(START, END), best).orElseThrow();
        assertEquals("R-G-B-G-R", sequence.orderText());
        assertEquals(Duration.ofSeconds(80), sequence.recordings().get(0).length(), "rounded down");
        // a set takes 5 x 80 + 4 x 15 = 460 s, three 3 x 475 - 15 = 1410 s; 1625 s are allowed between mid-exposures
        assertEquals(3, sequence.sets());
        assertEquals(1410, Duration.between(sequence.start(), sequence.end()).toSeconds());
        assertTrue(Duration.between(sequence.epoch(), best).abs().toSeconds() <= 1);
        for (Band band : sequence.order()) {
            assertEquals(sequence.epoch(), meanMid(sequence, band), band + ": mid-exposures coincide");
        }
        assertTrue(sequence.largestTurnDeg() <= TurningLoss.largestTurnDeg());
        assertEquals(0, sequence.unseenBySomeBand(), 1e-9, "each band saw both limbs");
        assertTrue(sequence.losses().stream().allMatch(l -> l.worstBand() <= l.worstFrame()));
    }

    @Test
    void blueIsAtBothEndsWhileThePlanetRises() {
        RecordingSequence sequence = plan(85, new Interval(START, END), END).orElseThrow();
        assertEquals("B-G-R-G-B", sequence.orderText());
        assertTrue(Duration.between(sequence.end(), END).abs().toSeconds() <= 1, "as high as possible");
        RecordingSequence sets = plan(85, new Interval(START, END), START).orElseThrow();
        assertEquals(START, sets.start());
    }

    @Test
    void longRecordingsComeOnceEach() {
        RecordingSequence sequence = plan(540, new Interval(START, END), END).orElseThrow();
        assertEquals("R-G-B", sequence.orderText(), "blue last, where the planet is highest");
        assertEquals(1, sequence.sets());
        assertTrue(sequence.unseenBySomeBand() > 0, "red saw one limb only from afar");
        assertEquals(
                "B-G-R",
                plan(540, new Interval(START, END), START).orElseThrow().orderText());
    }

    @Test
    void recordingsShrinkToFit() {
        Interval window = new Interval(START, START.plusSeconds(300));
        RecordingSequence sequence = plan(540, window, window.end()).orElseThrow();
        assertFalse(sequence.end().isAfter(window.end()));
        assertFalse(sequence.start().isBefore(window.start()));
        assertEquals(Duration.ofSeconds(90), sequence.recordings().get(0).length());
        assertTrue(plan(540, new Interval(START, START.plusSeconds(30)), START).isEmpty(), "too short for three");
    }

    @Test
    void oneBandNeedsNoOrder() {
        List<BandLimit> one = List.of(new BandLimit(Band.IR, 0.4, 1, 0.25, 0.5));
        RecordingSequence sequence = new SequencePlanner(one, JUPITER_DEG_PER_HOUR, new Interval(START, END), END)
                .plan()
                .orElseThrow();
        assertEquals("IR", sequence.orderText());
        assertEquals(sequence.sets(), sequence.recordings().size());
    }
}
