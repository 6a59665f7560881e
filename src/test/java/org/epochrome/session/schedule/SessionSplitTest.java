package org.epochrome.session.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.epochrome.command.SmallEvening;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.io.identify.BandChoice;
import org.epochrome.io.identify.Timing;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames of several nights and planets in one list. */
class SessionSplitTest {
    private static final Instant EVENING = Instant.parse("2024-12-18T19:20:00Z");

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void anyFile() {
        file = new SmallEvening(folder).sound("R");
    }

    private DatedFrame frame(Body body, Duration later) {
        RecordingSpan span =
                new RecordingSpan(EVENING.plus(later), EVENING.plus(later).plusSeconds(60));
        return new DatedFrame(
                FrameRequest.of(file),
                FrameReader.head(file),
                new BandChoice(List.of(Band.R), "test", true, List.of()),
                new Timing(span, Message.of("source.given", "test"), List.of()),
                Optional.ofNullable(body));
    }

    @Test
    void framesOfOneEveningAreOneSession() {
        List<DatedFrame> frames = List.of(
                frame(Body.JUPITER, Duration.ofMinutes(4)),
                frame(Body.JUPITER, Duration.ZERO),
                frame(null, Duration.ofHours(5)));
        List<SessionSplit.Part> parts = SessionSplit.of(frames);
        assertEquals(1, parts.size());
        assertEquals(frames, parts.get(0).frames());
        assertEquals(Optional.of(Body.JUPITER), parts.get(0).body());
    }

    @Test
    void nightsAndPlanetsAreSeparated() {
        DatedFrame jupiter = frame(Body.JUPITER, Duration.ZERO);
        DatedFrame mars = frame(Body.MARS, Duration.ofMinutes(40));
        DatedFrame unnamed = frame(null, Duration.ofMinutes(41));
        DatedFrame nextNight = frame(Body.JUPITER, Duration.ofDays(1));
        List<SessionSplit.Part> parts = SessionSplit.of(List.of(nextNight, unnamed, jupiter, mars));
        assertEquals(
                List.of(List.of(jupiter), List.of(unnamed, mars), List.of(nextNight)),
                parts.stream().map(SessionSplit.Part::frames).toList());
        assertEquals(
                List.of(Optional.of(Body.JUPITER), Optional.of(Body.MARS), Optional.of(Body.JUPITER)),
                parts.stream().map(SessionSplit.Part::body).toList());
    }

    @Test
    void thePauseCanBeChosen() {
        List<DatedFrame> frames = List.of(frame(null, Duration.ZERO), frame(null, Duration.ofHours(2)));
        assertEquals(1, SessionSplit.of(frames).size());
        assertEquals(2, SessionSplit.of(frames, Duration.ofHours(1)).size());
        assertEquals(0, SessionSplit.of(List.of()).size());
    }
}
