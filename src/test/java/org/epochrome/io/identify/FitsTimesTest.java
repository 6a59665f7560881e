package org.epochrome.io.identify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.io.LeapTable;
import org.epochrome.io.Sentences;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Times in FITS headers, against astropy (truth/times) and by the words of the standard. */
class FitsTimesTest {
    private static final Path FILE = Path.of("jup.fits");
    private static final LeapTable LEAPS = new LeapTable();

    private static FitsTimes times(String cards, NameClock clock) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String card : cards.split("\\|", -1)) {
            int equals = card.indexOf('=');
            values.put(card.substring(0, equals).strip(), card.substring(equals + 1));
        }
        return new FitsTimes(FILE, new FitsKeywords(values), clock, LEAPS);
    }

    private static Timing find(String cards) {
        return times(cards, NameClock.UNKNOWN).find().orElseThrow();
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/truth/times/rows.csv", numLinesToSkip = 1)
    void agreesWithAstropy(String cards, Instant start, Instant end) {
        Timing timing = find(cards);
        // 1 ns: both sides keep nanoseconds, and astropy's text is rounded at the ninth decimal after a sum of two
        // doubles.
        assertClose(start, timing.span().start());
        assertClose(end, timing.span().end());
    }

    private static void assertClose(Instant expected, Instant actual) {
        assertTrue(Duration.between(expected, actual).abs().toNanos() <= 1, expected + " is not " + actual);
    }

    @Test
    void comparesAllRows() throws Exception {
        assertEquals(
                93 + 1,
                Files.readAllLines(Path.of("src/test/resources/truth/times/rows.csv"))
                        .size());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                // What the standard settles comes before DATE-OBS; of two lengths the elapsed time.
                "DATE-OBS=2031-05-02T21:00:00|DATE-BEG=2031-05-02T21:14:05|DATE-END=2031-05-02T21:16:05;"
                        + " 21:14:05; 21:16:05; FITS DATE-BEG + DATE-END",
                "DATE-OBS=2031-05-02T21:14:05|DATE-END=2031-05-02T21:16:05|EXPTIME=0.02;"
                        + " 21:14:05; 21:16:05; FITS DATE-OBS + DATE-END",
                "DATE-BEG=2031-05-02T21:14:05|TELAPSE=120|XPOSURE=100; 21:14:05; 21:16:05; FITS DATE-BEG + TELAPSE",
                "DATE-END=2031-05-02T21:16:05|XPOSURE=120; 21:14:05; 21:16:05; FITS DATE-END + XPOSURE",
                "DATE-AVG=2031-05-02T21:15:05|EXPTIME=120; 21:14:05; 21:16:05; FITS DATE-AVG + EXPTIME",
                "DATE-AVG=2031-05-02T21:15:05|DATE-OBS=2031-05-02T21:14:05; 21:14:05; 21:16:05; FITS DATE-OBS + DATE-AVG",
                "DATE-AVG=2031-05-02T21:15:05|DATE-END=2031-05-02T21:16:05; 21:14:05; 21:16:05; FITS DATE-AVG + DATE-END",
                "DATE-OBS=2031-05-02T21:14:05|EXPTIME=120; 21:14:05; 21:16:05; FITS DATE-OBS + EXPTIME",
                "DATE-OBS=2031-05-02T21:14:05|EXPOSURE=1.2D2; 21:14:05; 21:16:05; FITS DATE-OBS + EXPOSURE",
                "DATE-OBS=2031-05-02|TIME-OBS=21:14:05|EXPTIME=120;"
                        + " 21:14:05; 21:16:05; FITS DATE-OBS and TIME-OBS + EXPTIME",
                "DATE-OBS=2031-05-02|UT=21:14:05.0|EXPTIME=120; 21:14:05; 21:16:05; FITS DATE-OBS and UT + EXPTIME",
                // TIMEUNIT holds for the keywords of the standard only.
                "DATE-BEG=2031-05-02T21:14:05|XPOSURE=2|TIMEUNIT=min; 21:14:05; 21:16:05; FITS DATE-BEG + XPOSURE",
                "DATE-BEG=2031-05-02T21:14:05|EXPTIME=120|TIMEUNIT=d; 21:14:05; 21:16:05; FITS DATE-BEG + EXPTIME",
                // Against the letter of the standard, yet clear.
                "DATE-OBS=2031-05-02T21:14:05Z|EXPTIME=120; 21:14:05; 21:16:05; FITS DATE-OBS + EXPTIME",
                "DATE-OBS=2031-05-02T23:14:05+02:00|EXPTIME=120; 21:14:05; 21:16:05; FITS DATE-OBS + EXPTIME",
                "DATE-OBS=2031-05-02 21:14:05|EXPTIME=120; 21:14:05; 21:16:05; FITS DATE-OBS + EXPTIME",
                "DATE-OBS=2031-05-02T21:14:05|TIMESYS=UTC(NIST)|EXPTIME=120; 21:14:05; 21:16:05; FITS DATE-OBS + EXPTIME",
            })
    void readsWhatAHeaderSays(String cards, String start, String end, String source) {
        Timing timing = find(cards);
        assertEquals(Instant.parse("2031-05-02T" + start + "Z"), timing.span().start());
        assertEquals(Instant.parse("2031-05-02T" + end + "Z"), timing.span().end());
        assertEquals(source, timing.source().toString());
    }

    @Test
    void aLeapSecondCountsAsTheNextSecond() {
        assertEquals(
                Instant.parse("2017-01-01T00:00:00.5Z"),
                find("DATE-OBS=2016-12-31T23:59:60.5|EXPTIME=1").span().start());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "DATE-OBS=2031-05-02T21:14:05; ; 21:14:05; 21:16:05",
                "DATE-OBS=2031-05-02T21:14:05; MIDDLE; 21:13:05; 21:15:05",
                "DATE-OBS=2031-05-02T21:14:05; END; 21:12:05; 21:14:05",
                "DATE-AVG=2031-05-02T21:14:05; START; 21:13:05; 21:15:05",
                "DATE-BEG=2031-05-02T21:14:05; END; 21:14:05; 21:16:05",
                "DATE-END=2031-05-02T21:14:05; START; 21:12:05; 21:14:05",
            })
    void theUserSaysWhatABareDateObsMeans(String cards, TimestampMeaning meaning, String start, String end) {
        NameClock clock =
                new NameClock(Optional.ofNullable(meaning), Optional.of(Duration.ofMinutes(2)), ZoneOffset.UTC);
        Timing timing = times(cards, clock).find().orElseThrow();
        assertEquals(Instant.parse("2031-05-02T" + start + "Z"), timing.span().start());
        assertEquals(Instant.parse("2031-05-02T" + end + "Z"), timing.span().end());
        assertTrue(
                timing.source().toString().endsWith(" + --exposure"),
                timing.source().toString());
    }

    @Test
    void withoutALengthADateIsAnInstantAndSaysSo() {
        Timing timing = find("DATE-OBS=2031-05-02T21:14:05|EXPTIME=0");
        assertEquals(Duration.ZERO, timing.span().duration());
        assertEquals("FITS DATE-OBS", timing.source().toString());
        assertTrue(
                timing.notes().get(0).toString().contains("--exposure"),
                timing.notes().toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "DATE-OBS=2031-05-02T21:14:05|EXPTIME=0.02; EXPTIME of 20 ms is short for a recording",
                "DATE-OBS=2031-05-02T21:14:05|MJD-OBS=62988.0|EXPTIME=60; DATE-OBS and MJD-OBS differ by",
                "DATE-BEG=soon|DATE-OBS=2031-05-02T21:14:05|EXPTIME=60; DATE-BEG 'soon' has no time of day",
                "DATE-BEG=2031-05-02T29:14:05|DATE-OBS=2031-05-02T21:14:05|EXPTIME=60; is not a date",
            })
    void notesWhatIsOdd(String cards, String note) {
        Timing timing = find(cards);
        assertEquals(Instant.parse("2031-05-02T21:14:05Z"), timing.span().start());
        assertTrue(
                timing.notes().stream().anyMatch(n -> n.toString().contains(note)),
                timing.notes().toString());
    }

    @ParameterizedTest
    @CsvSource({"OBJECT=Jupiter", "DATE=2031-05-02T21:14:05", "DATE-OBS=2031-05-02", "MJD-OBS=0", "EXPTIME=60"})
    void findsNothingWhereNothingIsTold(String cards) {
        assertEquals(Optional.empty(), times(cards, NameClock.UNKNOWN).find());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "DATE-OBS=2031-05-02T21:14:05|TIMESYS=TDB; TDB (TIMESYS)",
                "DATE-OBS=2031-05-02T21:14:05|TIMESYS=LOCAL; LOCAL (TIMESYS)",
                "DATE-BEG=2031-05-02T21:14:05|XPOSURE=1|TIMEUNIT=a; TIMEUNIT 'a'",
                "DATE-BEG=2031-05-02T21:14:05|DATE-END=2031-05-02T21:04:05; ends before it starts by DATE-BEG and DATE-END",
                "DATE-AVG=2031-05-02T21:14:05|DATE-OBS=2031-05-02T21:24:05; ends before it starts by DATE-OBS and DATE-AVG",
            })
    void refusesWhatCannotBeMeant(String cards, String reason) {
        FrameRefused refused = assertThrows(FrameRefused.class, () -> find(cards));
        assertTrue(refused.getMessage().contains(reason), refused.getMessage());
        Sentences.assertSentence("jup.fits", refused);
    }

    @Test
    void notesAreKeptForTheFileNameToCarryOn() {
        FitsTimes times = times("DATE-OBS=2031-05-02", NameClock.UNKNOWN);
        assertEquals(
                List.of("DATE-OBS '2031-05-02' has no time of day and was ignored."), Message.texts(times.notes()));
    }
}
