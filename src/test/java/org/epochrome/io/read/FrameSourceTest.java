package org.epochrome.io.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.image.Plane;
import org.epochrome.io.LeapTable;
import org.epochrome.io.Sentences;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.identify.BandChoice;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.io.identify.Timing;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrameSourceTest {
    private static final Instant STAMP = Instant.parse("2031-05-02T21:14:05Z");
    private static final Map<String, Passband> HALPHA = Map.of("Ha", new Passband(650, 662));

    @TempDir
    private Path folder;

    private static FrameSource source(NameClock clock) {
        return new FrameSource(clock, HALPHA, new LeapTable());
    }

    private static FrameSource source() {
        return source(NameClock.UNKNOWN);
    }

    /** What was found out about a frame must hold for the pixels that are read later. */
    @Test
    void aFrameThatChangesAfterItWasExamined() {
        FitsCard start = new FitsCard("DATE-OBS", "2031-05-02T21:14:05", "");
        FitsCard red = new FitsCard("FILTER", "R", "");
        Path file = fits("frame.fits", List.of(plane(1)), start, red);
        DatedFrame found = source().find(FrameRequest.of(file));
        fits("frame.fits", List.of(plane(1)), start, red);
        assertEquals(1, found.load().planes().get(0).at(3, 3));
        fits("frame.fits", List.of(plane(1)), start, new FitsCard("FILTER", "G", ""));
        FrameRefused refused = assertThrows(FrameRefused.class, found::load);
        Sentences.assertSentence("frame.fits", refused);
        assertTrue(refused.getMessage().contains("changed"), refused.getMessage());
        fits("frame.fits", List.of(Plane.filled(30, 18, 1)), start, red);
        assertThrows(FrameRefused.class, found::load);
    }

    private static Plane plane(float value) {
        return Plane.filled(20, 18, value);
    }

    private Path fits(String name, List<Plane> planes, FitsCard... cards) {
        Path file = folder.resolve(name);
        FitsWriter.write(file, planes, List.of(cards), List.of(), true);
        return file;
    }

    private Path grey(String name, FitsCard... cards) {
        return fits(name, List.of(plane(1)), cards);
    }

    private static FitsCard card(String keyword, Object value) {
        return new FitsCard(keyword, value, "");
    }

    @Test
    void findsEverythingInAHeaderAndLoadsLater() {
        Path file = grey(
                "a.fits",
                card("FILTER", "Red"),
                card("OBJECT", "Jupiter "),
                card("DATE-OBS", "2031-05-02T21:14:05"),
                card("EXPTIME", 120.0));

        DatedFrame dated = source().find(FrameRequest.of(file));
        Frame frame = dated.load();

        assertEquals(Optional.of(Band.R), frame.band());
        assertEquals("FITS FILTER", dated.band().source());
        assertEquals(Optional.of(Body.JUPITER), frame.object());
        assertEquals("FITS DATE-OBS + EXPTIME", frame.timing().source().toString());
        assertEquals(STAMP.plusSeconds(60), frame.timing().span().mid());
        assertEquals(List.of(), frame.notes());
        assertEquals(1f, frame.planes().get(0).at(3, 4));
        assertEquals("32-bit float", frame.depth());
        assertTrue(Double.isNaN(frame.fullScale()));
    }

    @Test
    void theSheetCountsBeforeTheOptionAndTheHeader() {
        Path file = grey("a.fits", card("FILTER", "Red"), card("DATE-OBS", "2031-05-02T20:00:00"));
        RecordingSpan span = new RecordingSpan(STAMP, STAMP.plusSeconds(90));
        SheetRow row = new SheetRow(file, Optional.of("G"), Optional.of(span), "sheet night.csv line 3");

        DatedFrame bySheet = source().find(new FrameRequest(file, Optional.of("B"), Optional.of(row)));
        assertEquals(Optional.of(Band.G), bySheet.band().band());
        assertEquals("sheet night.csv line 3", bySheet.band().source());
        assertEquals(span, bySheet.timing().span());
        assertEquals("sheet night.csv line 3", bySheet.timing().source().toString());

        DatedFrame byOption = source().find(FrameRequest.of(file, "B"));
        assertEquals(Optional.of(Band.B), byOption.band().band());
        assertEquals("option", byOption.band().source());
        assertEquals("FITS DATE-OBS", byOption.timing().source().toString());

        SheetRow bandOnly = new SheetRow(file, Optional.of("G"), Optional.empty(), "sheet night.csv line 3");
        assertEquals(
                "FITS DATE-OBS",
                source().find(FrameRequest.of(bandOnly)).timing().source().toString());
    }

    @ParameterizedTest
    @CsvSource({
        "R, R",
        "Red, R",
        "Red filter, R",
        "'H2: green (planetary)', G",
        "Lum, L",
        "L, L",
        "ir, IR",
        "CH4, CH4",
        "Methane, CH4",
        "UV, UV",
        "Ha, Ha",
        "ha, ha",
    })
    void readsTheFilterKeyword(String filter, String band) {
        Path file = grey("jup-2031-05-02-211405.fits", card("FILTER", filter));
        assertEquals(
                band,
                source().find(FrameRequest.of(file)).band().band().orElseThrow().name());
    }

    @Test
    void theHeaderMeasuresTheWidthOfASpaceTelescopesFilter() {
        // Pivot wavelength and rms width, angstroms, of a WFC3/UVIS frame through F467M: 6.8332 nm * sqrt(12) = 23.67
        // nm.
        Path file = grey(
                "neptune-2031-05-02-211405.fits",
                card("FILTER", "F467M"),
                card("PHOTPLAM", 4682.5835),
                card("PHOTBW", 68.332214));
        BandChoice choice = source().find(FrameRequest.of(file)).band();
        Passband passband = choice.band().orElseThrow().passband();
        assertEquals("F467M", choice.band().orElseThrow().name());
        assertEquals(468.25835, passband.effectiveNm(), 1e-5);
        assertEquals(23.671, passband.toNm() - passband.fromNm(), 0.001);
        assertEquals(List.of(), choice.notes());
    }

    @Test
    void aFilterOfUnknownWidthIsToldAndCanBeCorrected() {
        Path file = grey("neptune-2031-05-02-211405.fits", card("FILTER", "F467M"));
        List<String> notes =
                Message.texts(source().find(FrameRequest.of(file)).band().notes());
        assertEquals(1, notes.size());
        assertTrue(notes.get(0).contains("--passband F467M=FROM-TO"), notes.get(0));
        BandChoice byUser = new FrameSource(NameClock.UNKNOWN, Map.of("F467M", new Passband(455, 480)), new LeapTable())
                .find(FrameRequest.of(file))
                .band();
        assertEquals(new Passband(455, 480), byUser.band().orElseThrow().passband());
        assertEquals(List.of(), byUser.notes());
    }

    @ParameterizedTest
    @CsvSource({"FILTNAM1, F410M, FILTNAM2, ''", "FILTER1, CLEAR1L, FILTER2, F410M", "FILTER1, 16, FILTNAM1, F410M"})
    void readsFilterWheels(String key1, String value1, String key2, String value2) {
        Path file = grey("jup-2031-05-02-211405.fits", card(key1, value1), card(key2, value2));
        assertEquals(
                "F410M",
                source().find(FrameRequest.of(file)).band().band().orElseThrow().name());
    }

    @ParameterizedTest
    @CsvSource({
        "Jupiter F343N 01-Mar-07 07:37 UT, JUPITER-HERITAGE-GREATSPOT, JUPITER",
        "'', NEPTUNE-MAPS, NEPTUNE",
        "mar, '', MARS",
        "Mars and Venus, '', ''",
    })
    void readsTheBodyInTheHeader(String object, String target, String body) {
        Path file = grey("R-2031-05-02-211405.fits", card("OBJECT", object), card("TARGNAME", target));
        assertEquals(
                body,
                source().find(FrameRequest.of(file)).object().map(Body::name).orElse(""));
    }

    @Test
    void anInfraredFilterCalledByItsEdgeHasItsPassband() {
        Path file = grey("jup-2031-05-02-211405.fits", card("FILTER", "IR807"));
        Band band = source().find(FrameRequest.of(file)).band().band().orElseThrow();
        assertEquals("IR", band.name());
        assertEquals(new Passband(807, 950), band.passband());
        Band byUser = new FrameSource(NameClock.UNKNOWN, Map.of("ir", new Passband(742, 900)), new LeapTable())
                .find(FrameRequest.of(file))
                .band()
                .band()
                .orElseThrow();
        assertEquals(new Passband(742, 900), byUser.passband());
    }

    @ParameterizedTest
    @CsvSource({
        "jup_R, R",
        "mars-r, R",
        "sat_1_r, R",
        "jup.green.p30, G",
        "BLUE 1, B",
        "lum(2), L",
        "jup_g4_ap12_B, B",
        "luminance, L",
        "jup-IR742, IR",
        "CH4, CH4",
        "uv, UV",
        "R-red, R",
        "jup_ha, ha",
        "jup_656nm, 656nm",
        "jup-OIII-3nm, OIII",
        "jup_H-alpha, Ha",
        "jup_CH4_727nm, CH4-727",
        "jup_f547m, F547M",
    })
    void readsTheBandInTheName(String name, String band) {
        Path file = grey(name + "-20310502_211405.fits");
        DatedFrame found = source().find(FrameRequest.of(file));
        assertEquals(band, found.band().band().orElseThrow().name());
        assertEquals("file name", found.band().source());
        assertEquals(STAMP, found.timing().span().mid());
        assertEquals("file name", found.timing().source().toString());
    }

    @ParameterizedTest
    @CsvSource({
        "jup_R_G, '', two bands in its name",
        "jup, '', has no band",
        "jup_g4, '', has no band",
        "jupR, '', has no band",
        "jup, Nebula, not a known band",
        "jup, R + G, more than one band",
        "jup_rgb, '', has only one plane",
    })
    void refusesABandThatIsNotClear(String name, String filter, String reason) {
        Path file = grey(name + ".fits", card("FILTER", filter), card("DATE-OBS", "2031-05-02T21:14:05"));
        FrameRefused refused = assertThrows(FrameRefused.class, () -> source().find(FrameRequest.of(file)));
        assertTrue(refused.getMessage().contains(reason), refused.getMessage());
        Sentences.assertSentence(file.getFileName().toString(), refused);
    }

    @Test
    void aBandOfTheUsersNeedsAPassband() {
        Path file = grey("jup-20310502_211405.fits");
        assertEquals(
                new Band("Ha", new Passband(650, 662)),
                source().find(FrameRequest.of(file, "Ha")).band().band().orElseThrow());
        FrameRefused refused = assertThrows(FrameRefused.class, () -> source().find(FrameRequest.of(file, "Teal")));
        assertTrue(refused.getMessage().contains("--passband Teal="), refused.getMessage());
    }

    @Test
    void notesWhenNameAndFilterDisagree() {
        Path file = grey("jup_G-20310502_211405.fits", card("FILTER", "R"));
        DatedFrame found = source().find(FrameRequest.of(file));
        assertEquals(Optional.of(Band.R), found.band().band());
        assertTrue(
                Message.texts(found.notes()).contains("Its FITS FILTER says R, its name G; FILTER was used."),
                found.notes().toString());
    }

    @Test
    void threePlanesAreOneShotColourUnlessSaidOtherwise() {
        List<Plane> different = List.of(plane(1), plane(2), plane(3));
        Path colour = fits("jup-20310502_211405.fits", different);
        Frame frame = source().find(FrameRequest.of(colour)).load();
        assertEquals(Optional.empty(), frame.band());
        assertEquals(3, frame.planes().size());

        Frame green = source().find(FrameRequest.of(colour, "G")).load();
        assertEquals(1, green.planes().size());
        assertEquals(2f, green.planes().get(0).at(0, 0));
        assertTrue(Message.texts(green.notes()).contains("Of its three different planes the green one was used."));

        DatedFrame luminance = source().find(FrameRequest.of(colour, "L"));
        assertThrows(FrameRefused.class, luminance::load);
        Path named = fits("jup_R-20310502_211405.fits", different);
        DatedFrame byName = source().find(FrameRequest.of(named));
        FrameRefused refused = assertThrows(FrameRefused.class, byName::load);
        assertTrue(refused.getMessage().contains("is a colour image"), refused.getMessage());
    }

    @Test
    void threeEqualPlanesAreAGreyImage() {
        Path file = fits("jup_R-20310502_211405.fits", List.of(plane(1), plane(1), plane(1)));
        Frame frame = source().find(FrameRequest.of(file)).load();
        assertEquals(Optional.of(Band.R), frame.band());
        assertEquals(1, frame.planes().size());
        assertTrue(Message.texts(frame.notes()).contains("Its three planes are equal and were read as one."));
    }

    @Test
    void aBareTimeWithALengthNeedsTheClock() {
        Path file = grey("jup_R-20310502_211405.fits");
        Optional<Duration> twoMinutes = Optional.of(Duration.ofMinutes(2));
        FrameSource unsaid = source(new NameClock(Optional.empty(), twoMinutes, ZoneOffset.UTC));
        FrameRefused refused = assertThrows(FrameRefused.class, () -> unsaid.find(FrameRequest.of(file)));
        assertTrue(refused.getMessage().contains("--clock"), refused.getMessage());

        FrameSource end = source(new NameClock(Optional.of(TimestampMeaning.END), twoMinutes, ZoneOffset.ofHours(1)));
        Timing timing = end.find(FrameRequest.of(file)).timing();
        assertEquals(STAMP.minusSeconds(3600), timing.span().end());
        assertEquals(STAMP.minusSeconds(3720), timing.span().start());
    }

    @Test
    void refusesAFrameWithoutTimesAndOneThatLastsForDays() {
        Path without = grey("jup_R.fits", card("DATE", "2031-05-02T21:14:05"));
        FrameRefused refused = assertThrows(FrameRefused.class, () -> source().find(FrameRequest.of(without)));
        assertTrue(refused.getMessage().contains("has no time"), refused.getMessage());
        Path days =
                grey("long_R.fits", card("DATE-OBS", "2031-05-02T21:14:05"), card("DATE-END", "2031-05-05T21:14:05"));
        assertThrows(FrameRefused.class, () -> source().find(FrameRequest.of(days)));
    }

    @Test
    void aDateWithoutTimeOfDayLeavesTheFileName() {
        Path file = grey("jup_R-20310502_211405.fits", card("DATE-OBS", "2031-05-02"));
        Timing timing = source().find(FrameRequest.of(file)).timing();
        assertEquals("file name", timing.source().toString());
        assertTrue(timing.notes().get(0).toString().startsWith("DATE-OBS '2031-05-02' has no time of day"));
    }

    @ParameterizedTest
    @CsvSource({
        "Jupiter, JUPITER",
        "'  MARS ', MARS",
        "jup, JUPITER",
        "Saturn with rings, SATURN",
        "Moon, ",
        "Mars and Jupiter, ",
        "'', "
    })
    void findsTheBody(String object, Body body) {
        Path file = grey("x.fits", card("OBJECT", object));
        assertEquals(Optional.ofNullable(body), source().object(FrameReader.head(file)));
    }

    @Test
    void manyFramesAreHeldWithoutTheirPixels() throws IOException {
        Path first = grey("jup_R-20310502_211405.fits");
        List<DatedFrame> dated = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            Path copy = Files.copy(first, folder.resolve("jup_R-" + i + "-20310502_211405.fits"));
            dated.add(source().find(FrameRequest.of(copy)));
            Files.delete(copy);
        }
        assertEquals(20, dated.size());
        // The head was read; the pixels are looked for only now.
        assertThrows(FrameRefused.class, dated.get(0)::load);
    }
}
