package org.epochrome.time;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RecordingSpanTest {
    /** Against draws: of the 120 seconds of a recording 60 are picked at random, and their mean time is taken. */
    @Test
    void theTimeOfAStackIsUnsure() {
        Instant start = Instant.parse("2024-12-18T19:00:00Z");
        double stated = new RecordingSpan(start, start.plusSeconds(120)).midSigmaS();
        Random random = new Random(5);
        double sum = 0;
        int draws = 4000;
        for (int i = 0; i < draws; i++) {
            List<Integer> seconds = new ArrayList<>();
            for (int s = 0; s < 120; s++) {
                seconds.add(s);
            }
            Collections.shuffle(seconds, random);
            double mean = seconds.stream()
                            .limit(60)
                            .mapToDouble(s -> s + 0.5)
                            .average()
                            .orElseThrow()
                    - 60;
            sum += mean * mean;
        }
        // the scatter of 4000 draws is known to 1.1 %
        assertEquals(Math.sqrt(sum / draws), stated, 0.04 * stated);
        assertEquals(0, new RecordingSpan(start, start).midSigmaS(), 0);
    }
}
