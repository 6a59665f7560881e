package org.epochrome.desktop.state;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Test;

class TimeAxisTest {
    private static final Instant START = Instant.parse("2031-05-02T21:00:00Z");

    private static RecordingSpan span(long from, long to) {
        return new RecordingSpan(START.plusSeconds(from), START.plusSeconds(to));
    }

    /** Rounds of three recordings of two minutes with a quarter of an hour between the rounds. */
    private static List<RecordingSpan> rounds(int count) {
        List<RecordingSpan> spans = new ArrayList<>();
        for (int round = 0; round < count; round++) {
            for (int k = 0; k < 3; k++) {
                long from = round * 1300L + k * 130L;
                spans.add(span(from, from + 120));
            }
        }
        return spans;
    }

    @Test
    void backAndForthGivesTheSameSecond() {
        TimeAxis axis = TimeAxis.of(rounds(4), 1200);
        for (long s = -20; s < 4200; s += 7) {
            Instant at = START.plusSeconds(s);
            // Inside a fold a pixel is many seconds wide, but numbers are not cut to pixels.
            assertEquals(at, axis.at(axis.x(at)), "second " + s);
        }
    }

    @Test
    void timeGrowsToTheRightWithinTheWidth() {
        TimeAxis axis = TimeAxis.of(rounds(3), 900);
        double last = Double.NEGATIVE_INFINITY;
        for (RecordingSpan span : rounds(3)) {
            assertTrue(axis.x(span.start()) > last);
            last = axis.x(span.end());
        }
        assertTrue(axis.x(START) > 0);
        assertTrue(last < 900);
    }

    @Test
    void longBreaksBetweenSetsAreFolded() {
        TimeAxis three = TimeAxis.of(rounds(3), 900);
        assertEquals(2, three.folds().size());
        double bar = three.x(START.plusSeconds(120)) - three.x(START);
        double evenly = 900.0 * 120 / (2 * 1300 + 380);
        assertTrue(bar > 2 * evenly, bar + " px instead of " + evenly);
        assertEquals(0, TimeAxis.of(rounds(1), 900).folds().size());
    }

    @Test
    void aHundredFramesStayApart() {
        List<RecordingSpan> spans = rounds(34).subList(0, 100);
        TimeAxis axis = TimeAxis.of(spans, 1400);
        for (int i = 1; i < spans.size(); i++) {
            assertTrue(axis.x(spans.get(i).start()) > axis.x(spans.get(i - 1).end()) - 1e-9);
        }
        assertTrue(axis.x(spans.get(99).end()) <= 1400);
    }

    @Test
    void oneInstantIsAnAxisToo() {
        TimeAxis axis = TimeAxis.of(List.of(span(0, 0)), 500);
        assertEquals(250, axis.x(START), 1e-6);
    }

    @Test
    void ticksAreRoundAndInOrder() {
        List<Instant> ticks = TimeAxis.of(rounds(2), 1000).ticks(90);
        assertTrue(ticks.size() > 3);
        for (int i = 0; i < ticks.size(); i++) {
            assertEquals(0, ticks.get(i).getEpochSecond() % 10);
            assertTrue(i == 0 || ticks.get(i).isAfter(ticks.get(i - 1)));
        }
    }
}
