package org.epochrome.io.identify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.epochrome.io.Sentences;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NameTimesTest {

    private static Optional<Instant> find(String name) {
        return NameTimes.find(Path.of(name), ZoneOffset.UTC).map(NameTimes.Stamp::instant);
    }

    @ParameterizedTest
    @CsvSource({
        "2024-12-18T19_24_30-R.fits, 2024-12-18T19:24:30Z",
        "20241218_192430.fit, 2024-12-18T19:24:30Z",
        "2024-12-18-1924_5.tif, 2024-12-18T19:24:30Z",
        "2024-12-18-1924_5-jup-R.tif, 2024-12-18T19:24:30Z",
        "2024-12-18-1924_0.tif, 2024-12-18T19:24:00Z",
        "2024-12-18-1924.5.tif, 2024-12-18T19:24:30Z",
        "2024-12-18-1924.25-R.tif, 2024-12-18T19:24:15Z",
        "20241218T192430Z.png, 2024-12-18T19:24:30Z",
        "2024-12-18_19-24-30.5.png, 2024-12-18T19:24:30.500Z",
        "2024_12_18 192430.png, 2024-12-18T19:24:30Z",
        "jupiter_R_20241218192430_stack.fits.gz, 2024-12-18T19:24:30Z",
        "R 2024-12-18 19.24.30.fits, 2024-12-18T19:24:30Z",
        "2024.12.18_19.24.30.125.fits, 2024-12-18T19:24:30.125Z",
        "2024-12-18T19:24:30.123456Z.fits, 2024-12-18T19:24:30.123456Z",
        "2024-12-18 19h24m30s red.fits, 2024-12-18T19:24:30Z",
        "2024-12-18_19h24m.fits, 2024-12-18T19:24:00Z",
        "2024-12-18-1924-R-01.fits, 2024-12-18T19:24:00Z",
        "2024-12-18_19-24_R.fits, 2024-12-18T19:24:00Z",
        "2024-12-18_19-24Z_5.fits, 2024-12-18T19:24:00Z",
        "20241218-1924-jup.fits, 2024-12-18T19:24:00Z",
        "20241218_1924UT.fits, 2024-12-18T19:24:00Z",
        "2024-12-18_192430_UTC_g4_ap12.fits, 2024-12-18T19:24:30Z",
        "2024-12-18T21_24_30+0200.fits, 2024-12-18T19:24:30Z",
        "2024-12-18T21_24_30+02.fits, 2024-12-18T19:24:30Z",
        "1924-12-18_000000.fits, 1924-12-18T00:00:00Z",
        "2016-12-31_235960.fits, 2017-01-01T00:00:00Z",
        "2024-12-18-jup-20241218_192430.fits, 2024-12-18T19:24:30Z",
        "20241218_192430_2024-12-18T19_24_30.fits, 2024-12-18T19:24:30Z",
        "p30_640x480_2024-12-18_192430_0001.fits, 2024-12-18T19:24:30Z",
        "IMG12345678_2024-12-18_192430.fits, 2024-12-18T19:24:30Z",
    })
    void findsTheTimestamp(String name, Instant expected) {
        assertEquals(Optional.of(expected), find(name));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "jup-R.fits",
                "2024-12-18.fits",
                "20241218.fits",
                "2024-13-18_192430.fits",
                "2024-02-30_192430.fits",
                "2024-12-18_256130.fits",
                "2024-12-18_1.fits",
                "18-12-2024_192430.fits",
                "241218_192430.fits",
                "192430.fits",
                "stack_20481024.fits",
                "123420241218192430.fits"
            })
    void findsNoneWhereThereIsNone(String name) {
        assertEquals(Optional.empty(), find(name));
    }

    @ParameterizedTest
    @CsvSource({
        "2024-12-18_192430_2024-12-18_192530.fits, two different",
        "2024-12-17_night_2024-12-18_012430.fits, two different",
        "2024-12-18_192430_20241219.fits, two different",
        "2024-12-18-1924_30.fits, '_30'",
        "2024-12-18_19-24-5.fits, '-5'",
        "2024-12-18_19-24_5.fits, '_5'",
        "2024-12-18_1924-2.fits, '-2'",
    })
    void refusesWhatCanBeReadInTwoWays(String name, String reason) {
        FrameRefused refused = assertThrows(FrameRefused.class, () -> find(name));
        assertTrue(refused.getMessage().contains(reason), refused.getMessage());
        Sentences.assertSentence(name, refused);
    }

    @ParameterizedTest
    @CsvSource({
        "2024-12-18-1924_5.tif, The time in its name was read as decimal minutes.",
        "2024-12-18-1924.tif, The time in its name is only given to the minute.",
        "2024-12-18-192400.tif, ''",
    })
    void remarksOnCoarseTimes(String name, String remark) {
        assertEquals(
                remark,
                NameTimes.find(Path.of(name), ZoneOffset.UTC)
                        .orElseThrow()
                        .remark()
                        .map(Message::toString)
                        .orElse(""));
    }

    @Test
    void localTimeIsTurnedIntoUtcUnlessTheNameSaysUtc() {
        ZoneOffset east = ZoneOffset.ofHours(2);
        assertEquals(
                Instant.parse("2024-12-18T22:24:30Z"),
                NameTimes.find(Path.of("2024-12-19_002430.fits"), east)
                        .orElseThrow()
                        .instant());
        assertEquals(
                Instant.parse("2024-12-19T00:24:30Z"),
                NameTimes.find(Path.of("2024-12-19_002430Z.fits"), east)
                        .orElseThrow()
                        .instant());
    }

    @ParameterizedTest
    @CsvSource({"START, 19:24:30, 19:26:30", "MIDDLE, 19:23:30, 19:25:30", "END, 19:22:30, 19:24:30"})
    void theClockPlacesAnExposure(TimestampMeaning meaning, String start, String end) {
        NameClock clock = new NameClock(Optional.of(meaning), Optional.of(Duration.ofMinutes(2)), ZoneOffset.UTC);
        Timing timing = clock.around(
                        Instant.parse("2024-12-18T19:24:30Z"),
                        Message.of("source.fileName"),
                        Optional.empty(),
                        List.of())
                .orElseThrow();
        assertEquals(Instant.parse("2024-12-18T" + start + "Z"), timing.span().start());
        assertEquals(Instant.parse("2024-12-18T" + end + "Z"), timing.span().end());
        assertEquals("file name + --exposure", timing.source().toString());
    }
}
