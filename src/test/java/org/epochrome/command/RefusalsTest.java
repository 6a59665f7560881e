package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.epochrome.image.Plane;
import org.epochrome.io.write.FrameWriter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is wrong is said in one sentence each, with the exit code of the contract, and nothing is written. */
class RefusalsTest {
    private static final int USAGE = 2;
    private static final int INPUT = 3;
    private static final int NO_DISK = 4;
    private static final int OUTPUT = 5;

    @TempDir
    private Path folder;

    private SmallEvening evening;
    private Path red;
    private Path green;
    private Path blue;

    @BeforeEach
    void soundFrames() {
        evening = new SmallEvening(folder);
        red = evening.sound("R");
        green = evening.sound("G");
        blue = evening.sound("B");
    }

    // ---- inputs

    @Test
    void noTime() {
        Path timeless = evening.frame(
                "jupiter-R2.fits", SmallEvening.counts("R"), SmallEvening.cardsBut("R", "DATE-OBS", null));
        refused(INPUT, List.of(timeless, green, blue), "jupiter-R2.fits|time|--sheet");
    }

    @Test
    void eachProblemHasItsSentence() {
        Path timeless =
                evening.frame("one.fits", SmallEvening.counts("R"), SmallEvening.cardsBut("R", "DATE-OBS", null));
        Path bandless = evening.frame("two.fits", SmallEvening.counts("G"), SmallEvening.cardsBut("G", "FILTER", null));
        refused(
                INPUT,
                List.of(timeless, bandless, blue, folder.resolve("three.fits")),
                "one.fits|time",
                "two.fits|band",
                "three.fits");
    }

    @Test
    void twoPlanets() {
        Path mars = evening.frame("m.fits", SmallEvening.counts("R"), SmallEvening.cardsBut("R", "OBJECT", "Mars"));
        refused(INPUT, List.of(mars, green, blue), "Mars|Jupiter|one planet");
    }

    @Test
    void twoNights() {
        Path late = evening.frame(
                "late.fits", SmallEvening.counts("R"), SmallEvening.cardsBut("R", "DATE-OBS", "2024-12-19T19:20:00"));
        refused(INPUT, List.of(late, green, blue), "late.fits|different sessions|--together");
    }

    @Test
    void unknownBand() {
        Path strange =
                evening.frame("x.fits", SmallEvening.counts("R"), SmallEvening.cardsBut("R", "FILTER", "Wratten 999"));
        refused(INPUT, List.of(strange, green, blue), "x.fits|Wratten 999|--red");
    }

    @Test
    void noBlue() {
        refused(USAGE, List.of(red, green), "none in B|--blue");
    }

    @ParameterizedTest
    @ValueSource(strings = {"2024-12-18-192000-R.fits", "2024-12-18-192000-R.tif", "2024-12-18-192000-R.png"})
    void cutShort(String name) {
        Path whole = folder.resolve("whole-" + name);
        FrameWriter.write(whole, SmallEvening.counts("R"), List.of(), false);
        Path half = evening.half(whole, name);
        refused(INPUT, List.of(half, green, blue), name);
    }

    @Test
    void moreThanFitsInMemory() {
        Path huge = evening.header(
                "huge.fits",
                "SIMPLE  =                    T",
                "BITPIX  =                   16",
                "NAXIS   =                    2",
                "NAXIS1  =               100000",
                "NAXIS2  =               100000",
                "DATE-OBS= '2024-12-18T19:20:00'",
                "EXPTIME =                120.0",
                "FILTER  = 'R       '");
        refused(INPUT, List.of(huge, green, blue), "huge.fits|100000x100000");
    }

    @ParameterizedTest
    @CsvSource({"notes.fits", "notes.png", "notes.tif"})
    void noImageAtAll(String name) {
        refused(INPUT, List.of(evening.text(name, "seeing was fine\n"), green, blue), name);
    }

    @Test
    void noDataAtAll() {
        Plane nothing = Plane.filled(SmallEvening.SIDE, SmallEvening.SIDE, Float.NaN);
        Path empty = evening.floats("empty.fits", nothing, SmallEvening.cards("R"));
        refused(INPUT, List.of(empty, green, blue), "empty.fits");
    }

    @Test
    void aFewPixelsWithoutDataDoNoHarm() {
        Plane holed = SmallEvening.counts("R");
        for (int i = 0; i < 12; i++) {
            holed.set(50 + 5 * i, 80 + i % 3, Float.NaN);
        }
        Path frame = evening.floats("holed.fits", holed, SmallEvening.cards("R"));
        Path out = folder.resolve("made.fits");
        Ran.of("combine", "--quiet", "--out", out, frame, green, blue).succeeds();
        assertEquals(true, Files.exists(out));
    }

    @Test
    void aFolderAsFrame() throws IOException {
        Path inner = Files.createDirectory(folder.resolve("inner.fits"));
        refused(INPUT, List.of(inner, green, blue), "inner.fits|folder");
    }

    @Test
    void noSuchFile() {
        refused(INPUT, List.of(folder.resolve("gone.fits"), green, blue), "gone.fits");
    }

    @Test
    void noSuchSheet() {
        refused(INPUT, List.of("--sheet", folder.resolve("gone.csv")), "gone.csv");
    }

    @Test
    void theSameFrameTwice() {
        refused(
                USAGE,
                List.of(red, green, blue, folder.resolve(".").resolve("jupiter-G.fits")),
                "jupiter-G.fits|twice");
    }

    // ---- no disk

    @Test
    void black() {
        Plane black = new Plane(SmallEvening.SIDE, SmallEvening.SIDE);
        noDisk(black, "bad.fits");
    }

    @Test
    void noiseWithoutPlanet() {
        noDisk(SmallEvening.noise(), "bad.fits");
    }

    @ParameterizedTest
    @ValueSource(ints = {45, 70, -60})
    void cutByTheEdge(int dx) {
        noDisk(SmallEvening.moved(SmallEvening.counts("R"), dx), "bad.fits|edge");
    }

    @ParameterizedTest
    @ValueSource(floats = {2.5f, 6})
    void overexposed(float factor) {
        noDisk(SmallEvening.overexposed(SmallEvening.counts("R"), factor), "bad.fits|expos");
    }

    private void noDisk(Plane counts, String words) {
        Path bad = evening.frame("bad.fits", counts, SmallEvening.cards("R"));
        refused(NO_DISK, List.of(bad, green, blue), words);
    }

    @Test
    void marsDoesNotShowItsAxis() {
        refused(USAGE, List.of("--body", "mars", red, green, blue), "Jupiter|Mars|Note", "Mars|--north");
    }

    // ---- outputs

    @Test
    void outputExists() throws IOException {
        Path out = Files.writeString(folder.resolve("there.png"), "mine");
        Map<String, Long> before = evening.contents();
        Ran.of("combine", "--out", out, red, green, blue).refuses(OUTPUT, "there.png|--overwrite");
        assertEquals(before, evening.contents());
        assertEquals("mine", Files.readString(out));
    }

    @ParameterizedTest
    @ValueSource(strings = {"picture.bmp", "picture", "picture.fits.txt"})
    void outputOfNoFormat(String name) {
        refusedWith(OUTPUT, List.of("--out", folder.resolve(name), red, green, blue), name + "|.fits");
    }

    @ParameterizedTest
    @ValueSource(strings = {"report.txt", "report", "report.json.bak"})
    void reportOfNoFormat(String name) {
        refused(OUTPUT, List.of("--report", folder.resolve(name), red, green, blue), name + "|.json");
    }

    @Test
    void outputIsAFolder() throws IOException {
        Path out = Files.createDirectory(folder.resolve("folder.png"));
        refusedWith(OUTPUT, List.of("--out", out, red, green, blue), "folder.png|folder");
    }

    @Test
    void outputBelowAFile() {
        // The black frame would be refused too, but not before it was read: outputs are checked first.
        Plane black = new Plane(SmallEvening.SIDE, SmallEvening.SIDE);
        Path bad = evening.frame("bad.fits", black, SmallEvening.cards("R"));
        refusedWith(OUTPUT, List.of("--out", red.resolve("x.png"), bad, green, blue), "x.png|folder");
        refusedWith(OUTPUT, List.of("--out", red.resolve("in").resolve("x.png"), bad, green, blue), "x.png|folder");
    }

    @Test
    void outputFolderIsNotWritable() throws IOException {
        Path locked = Files.createDirectory(folder.resolve("locked"));
        assumeTrue(locked.toFile().setWritable(false));
        assumeFalse(Files.isWritable(locked), "root may write everywhere");
        try {
            refusedWith(OUTPUT, List.of("--out", locked.resolve("x.png"), red, green, blue), "x.png|writable");
        } finally {
            locked.toFile().setWritable(true);
        }
    }

    // ---- usage

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "--site;46.2;LAT,LON",
                "--site;91,0;latitude",
                "--site;a,b;numbers",
                "--epoch;yesterday;yesterday",
                "--epoch;2024-13-01T00:00:00Z;2024-13-01",
                "--north;up;--north",
                "--north;400;--north",
                "--exposure;2 minutes;PT2M",
                "--exposure;PT0S;longer",
                "--passband;R=600;R=600-690",
                "--passband;R=690-600;nm",
                "--passband;R;--passband",
                "--threads;0;--threads",
                "--threads;two;--threads",
                "--scale;0;--scale",
                "--scale;-0.1;--scale",
                "--scale;NaN;--scale",
                "--pressure;-5;pressure",
                "--humidity;200;humidity",
                "--clock;noon;--clock",
                "--utc-offset;25;+02:00",
                "--rotation-system;IV;I, II",
                "--white;pink;--white",
                "--mirrored;perhaps;--mirrored",
                "--mount;tripod;--mount",
                "--body;Pluto;Jupiter",
            })
    void badValue(String option, String value, String words) {
        refused(USAGE, List.of(option, value, red, green, blue), words.replace(", ", "|"));
    }

    @Test
    void unknownOption() {
        refused(USAGE, List.of("--frobnicate", red, green, blue), "--frobnicate");
    }

    @Test
    void optionWithoutItsValue() {
        refused(USAGE, List.of(red, green, blue, "--site"), "--site");
    }

    @Test
    void noFrames() {
        refused(USAGE, List.of(), "No frames");
    }

    @Test
    void unknownCommand() {
        Ran.of("combobulate").refuses(USAGE, "combobulate");
    }

    @Test
    void noPlanet() {
        Path r = evening.frame("r.fits", SmallEvening.counts("R"), SmallEvening.cardsBut("R", "OBJECT", null));
        Path g = evening.frame("g.fits", SmallEvening.counts("G"), SmallEvening.cardsBut("G", "OBJECT", null));
        Path b = evening.frame("b.fits", SmallEvening.counts("B"), SmallEvening.cardsBut("B", "OBJECT", null));
        refused(USAGE, List.of(r, g, b), "--body");
    }

    // ---- the other commands

    @Test
    void inspectRefusesLikeCombine() {
        Map<String, Long> before = evening.contents();
        Ran.of("inspect", "--report", folder.resolve("report.txt"), red).refuses(OUTPUT, "report.txt|.json");
        Ran.of("inspect", folder.resolve("gone.fits"), red).refuses(INPUT, "gone.fits");
        Ran.of("inspect").refuses(USAGE, "No frames");
        assertEquals(before, evening.contents());
    }

    @Test
    void aspectRefusesLikeCombine() {
        Map<String, Long> before = evening.contents();
        Ran.of("aspect", "--body", "jupiter").refuses(USAGE, "--at");
        Ran.of("aspect", "--at", "2031-05-02T21:14:05Z").refuses(USAGE, "--body");
        Ran.of("aspect", "--body", "jupiter", "--at", "noon").refuses(USAGE, "noon");
        Ran.of("aspect", "--body", "jupiter", "--at", "2031-05-02T21:14Z", "--report", folder.resolve("a.txt"))
                .refuses(OUTPUT, "a.txt|.json");
        Ran.of("aspect", "--body", "jupiter", "--at", "2031-05-02T21:14Z", "--until", "2031-05-01T21:14Z")
                .refuses(USAGE, "--until");
        Ran.of(
                        "aspect",
                        "--body",
                        "jupiter",
                        "--at",
                        "2031-05-02T21:14Z",
                        "--until",
                        "2131-05-01T21:14Z",
                        "--every",
                        "PT1S")
                .refuses(USAGE, "--every");
        assertEquals(before, evening.contents());
    }

    /** Combines to a picture that must not appear. */
    private void refused(int code, List<?> args, String... sentences) {
        List<Object> all = new ArrayList<>(List.of("--out", folder.resolve("out.png")));
        all.addAll(args);
        refusedWith(code, all, sentences);
    }

    private void refusedWith(int code, List<?> args, String... sentences) {
        Map<String, Long> before = evening.contents();
        List<Object> all = new ArrayList<>(Arrays.asList("combine", "--quiet"));
        all.addAll(args);
        Ran.of(all.toArray()).refuses(code, sentences);
        assertEquals(before, evening.contents());
    }
}
