package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.read.FrameReader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the commands say when all goes well: pages, JSON, help. */
@Tag("session")
class ReportsTest {
    private static final List<String> EPHEMERIS = List.of(
            "subEarthLatitudeDeg",
            "subSolarLatitudeDeg",
            "poleAngleDeg",
            "phaseAngleDeg",
            "distanceAu",
            "lightTimeS",
            "equatorialDiameterArcsec");
    private static final List<String> IN_THE_SKY = List.of("altitudeDeg", "azimuthDeg", "parallacticAngleDeg");
    private static final List<String> DISK = List.of("x", "y", "equatorialRadiusPx", "northAngleDeg");

    @TempDir
    private static Path folder;

    private static SmallEvening evening;
    private static Ran combined;
    private static JsonNode report;

    @BeforeAll
    static void combine() throws IOException {
        evening = new SmallEvening(folder);
        combined = Ran.of(
                "combine",
                "--site",
                "46.2,8.5,480",
                "--threads",
                "1",
                "--out",
                folder.resolve("one.fits"),
                "--out",
                folder.resolve("one.png"),
                "--report",
                folder.resolve("one.json"),
                evening.sound("R"),
                evening.sound("G"),
                evening.sound("B"));
        combined.succeeds();
        report = json("one.json");
    }

    @Test
    void reportHoldsAllThatTheContractNames() {
        assertTrue(report.path("tool").isTextual());
        assertTrue(report.path("version").isTextual());
        assertEquals("Jupiter", report.path("body").textValue());
        assertEquals("2024-12-18T19:23:05Z", report.path("epoch").textValue());
        numbers(report.path("site"), List.of("latitudeDeg", "longitudeDeg", "heightM"));
        assertEquals(SmallEvening.SIDE, report.path("output").path("width").intValue());
        assertEquals(SmallEvening.SIDE, report.path("output").path("height").intValue());
        disk(report.path("output").path("disk"));
        assertTrue(report.path("quality").isObject());
        assertTrue(report.path("warnings").isArray());
        assertEquals(3, report.path("frames").size());
    }

    @ParameterizedTest
    @CsvSource({"0,R,2024-12-18T19:20:00Z", "1,G,2024-12-18T19:22:05Z", "2,B,2024-12-18T19:24:10Z"})
    void framesHoldAllThatTheContractNames(int index, String band, Instant start) {
        JsonNode frame = report.path("frames").path(index);
        assertTrue(frame.path("file").textValue().endsWith("jupiter-" + band + ".fits"));
        assertEquals(band, frame.path("band").textValue());
        assertEquals(start, Instant.parse(frame.path("start").textValue()));
        assertEquals(start.plusSeconds(60), Instant.parse(frame.path("mid").textValue()));
        assertEquals(start.plusSeconds(120), Instant.parse(frame.path("end").textValue()));
        assertTrue(frame.path("timeSource").textValue().contains("FITS"));
        ephemeris(frame.path("ephemeris"), Set.of("I", "II", "III"));
        numbers(frame.path("ephemeris"), IN_THE_SKY);
        disk(frame.path("disk"));
        numbers(frame.path("disk"), List.of("sigmaPx"));
        numbers(frame, List.of("rotationDeg", "weight"));
        numbers(frame.path("shiftPx"), List.of("x", "y"));
        numbers(frame.path("predictedDispersionPx"), List.of("x", "y"));
        assertTrue(frame.path("warnings").isArray());
    }

    /** 125 s at the 870.536 degrees a day of System III and 4.9 more, for 71 m/s on the equator; R is turned forward, B back. */
    @Test
    void turnsHaveTheSenseOfRotation() {
        double[] expected = {1.2665, 0, -1.2665};
        for (int i = 0; i < 3; i++) {
            assertEquals(
                    expected[i],
                    report.path("frames").path(i).path("rotationDeg").doubleValue(),
                    0.0007);
        }
    }

    @Test
    void cubeLiesWhereTheReportSays() {
        FrameFile cube = FrameReader.read(folder.resolve("one.fits"));
        assertEquals(3, cube.planes().size());
        assertEquals(report.path("output").path("width").intValue(), cube.head().width());
        assertEquals(
                report.path("output").path("height").intValue(), cube.head().height());
        // The reference's own disk: nothing is moved on its grid.
        JsonNode disk = report.path("output").path("disk");
        JsonNode reference = report.path("frames").path(1).path("disk");
        for (String key : List.of("x", "y", "equatorialRadiusPx", "northAngleDeg")) {
            assertEquals(reference.path(key).doubleValue(), disk.path(key).doubleValue(), 1e-6, key);
        }
    }

    /** Same input, same options, same bytes, whatever the thread count. */
    @Test
    void threadsDoNotChangeAByte() throws IOException {
        Ran.of(
                        "combine",
                        "--quiet",
                        "--site",
                        "46.2,8.5,480",
                        "--threads",
                        "2",
                        "--out",
                        folder.resolve("two.fits"),
                        "--out",
                        folder.resolve("two.png"),
                        "--report",
                        folder.resolve("two.json"),
                        evening.sound("R"),
                        evening.sound("G"),
                        evening.sound("B"))
                .succeeds();
        for (String suffix : List.of(".fits", ".png", ".json")) {
            assertArrayEquals(
                    Files.readAllBytes(folder.resolve("one" + suffix)),
                    Files.readAllBytes(folder.resolve("two" + suffix)),
                    suffix);
        }
    }

    @Test
    void summaryNamesWhatWasDoneAndWritten() {
        assertTrue(combined.out().contains("Jupiter at 2024-12-18T19:23:05Z"), combined.out());
        for (String name : List.of("jupiter-R.fits", "jupiter-G.fits", "jupiter-B.fits")) {
            assertTrue(combined.out().contains(name), combined.out());
        }
        for (String name : List.of("one.fits", "one.png", "one.json")) {
            assertTrue(combined.out().contains("wrote " + folder.resolve(name)), combined.out());
        }
        assertTrue(combined.out().contains("times from FITS"), combined.out());
        assertFalse(combined.out().contains("-0.000"), combined.out());
        assertTrue(combined.err().lines().allMatch(line -> line.matches("(Note|Warning): .*\\.")));
    }

    @Test
    void overwritesIfAsked() throws IOException {
        Path out = Files.writeString(folder.resolve("again.fits"), "old");
        Ran.of(
                        "combine",
                        "--quiet",
                        "--no-turn",
                        "--overwrite",
                        "--out",
                        out,
                        evening.sound("R"),
                        evening.sound("G"),
                        evening.sound("B"))
                .succeeds();
        assertEquals(3, FrameReader.read(out).planes().size());
    }

    /** What is typed moves the picture of that band by just that, as its centre of light shows, and the report tells it. */
    @Test
    void shiftsWhatItIsToldTo() throws IOException {
        Path curve = folder.resolve("response.csv");
        java.nio.file.Files.writeString(curve, "nm,qe\n350,0.3\n500,0.8\n800,0.5\n");
        Path plain = folder.resolve("plain.fits");
        Path shifted = folder.resolve("shifted.fits");
        combined(plain);
        combined(shifted, "--shift", "b=0.5,-0.25", "--witness", "limb", "--response", curve);
        for (int k = 0; k < 3; k++) {
            double[] before = centreOfLight(FrameReader.read(plain).planes().get(k));
            double[] after = centreOfLight(FrameReader.read(shifted).planes().get(k));
            // limb alone and limb with detail differ by up to 0.008 px on a disk of 54
            assertEquals(k == 2 ? 0.5 : 0, after[0] - before[0], 0.02);
            assertEquals(k == 2 ? -0.25 : 0, after[1] - before[1], 0.005);
        }
        JsonNode blue = json("shifted.json").path("frames").path(2);
        assertEquals("B", blue.path("band").textValue());
        assertEquals(0.5, blue.path("witnesses").path("nudgePx").path("x").doubleValue(), 0);
        assertTrue(blue.path("witnesses").path("detail").isNull(), "detail was not to be heard");
        Ran wrong = Ran.of("combine", "--shift", "Q=1,1", "-o", folder.resolve("no.fits"), evening.sound("R"));
        assertEquals(2, wrong.code());
        assertTrue(wrong.err().contains("neither a band nor a frame"), wrong.err());
    }

    private void combined(Path out, Object... more) throws IOException {
        List<Object> words = new java.util.ArrayList<>(List.of("combine", "--quiet", "--overwrite", "-o", out));
        words.addAll(
                List.of("-r", out.resolveSibling(out.getFileName().toString().replace(".fits", ".json"))));
        words.addAll(List.of(more));
        words.addAll(List.of(evening.sound("R"), evening.sound("G"), evening.sound("B")));
        Ran.of(words.toArray()).succeeds();
    }

    private static double[] centreOfLight(org.epochrome.image.Plane plane) {
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int row = 0; row < plane.height(); row++) {
            for (int column = 0; column < plane.width(); column++) {
                float value = plane.at(column, row);
                double light = Float.isNaN(value) || value < 0.02 ? 0 : value;
                sum += light;
                x += light * column;
                y += light * row;
            }
        }
        return new double[] {x / sum, y / sum};
    }

    @Test
    void inspectTellsEachFrame() throws IOException {
        Path to = folder.resolve("inspected.json");
        Ran ran = Ran.of("inspect", "--report", to, evening.sound("R"), evening.sound("B"));
        ran.succeeds();
        assertTrue(ran.out().contains("160 x 160"), ran.out());
        assertTrue(ran.out().contains("2024-12-18T19:20:00Z to 2024-12-18T19:22:00Z"), ran.out());
        JsonNode frames = json("inspected.json").path("frames");
        assertEquals(2, frames.size());
        for (JsonNode frame : frames) {
            for (String key : List.of("file", "band", "start", "end", "mid", "timeSource")) {
                assertTrue(frame.path(key).isTextual(), key);
            }
            assertEquals(SmallEvening.SIDE, frame.path("width").intValue());
            ephemeris(frame.path("ephemeris"), Set.of("I", "II", "III"));
            disk(frame.path("disk"));
            numbers(frame.path("disk"), List.of("sigmaPx"));
        }
        assertEquals("R", frames.path(0).path("band").textValue());
        assertEquals("B", frames.path(1).path("band").textValue());
    }

    @ParameterizedTest
    @CsvSource({"Jupiter,I II III", "saturn,I III", "Mars,single", "uranus,single", "VENUS,single"})
    void aspectAsJson(String body, String systems) throws IOException {
        Path to = folder.resolve("aspect-" + body + ".json");
        Ran ran = Ran.of(
                "aspect", "--body", body, "--at", "2024-12-18T19:24:30Z", "--site", "46.2,8.5,480", "--report", to);
        ran.succeeds();
        JsonNode root = json("aspect-" + body + ".json");
        assertEquals("2024-12-18T19:24:30Z", root.path("epoch").textValue());
        ephemeris(root.path("ephemeris"), new TreeSet<>(List.of(systems.split(" ", -1))));
        numbers(root.path("ephemeris"), IN_THE_SKY);
        numbers(root.path("site"), List.of("latitudeDeg", "longitudeDeg", "heightM"));
    }

    @Test
    void aspectWithoutASiteKnowsNoSky() throws IOException {
        Ran.of("aspect", "-b", "mars", "--at", "2031-05-02T21:14:05Z", "-r", folder.resolve("bare.json"))
                .succeeds();
        JsonNode root = json("bare.json");
        assertTrue(root.path("site").isNull());
        for (String key : IN_THE_SKY) {
            assertFalse(root.path("ephemeris").hasNonNull(key), key);
        }
    }

    @Test
    void aspectAsAPage() {
        Ran ran = Ran.of("aspect", "--body", "jupiter", "--at", "2024-12-18T19:24:30Z", "--site", "46.2,8.5,480");
        ran.succeeds();
        for (String line : List.of(
                "Jupiter at 2024-12-18T19:24:30Z",
                "central meridian I ",
                "central meridian II ",
                "central meridian III ",
                "sub-Earth latitude",
                "sub-solar latitude",
                "sub-solar longitude",
                "phase angle",
                "phase defect",
                "altitude, azimuth",
                "parallactic angle")) {
            assertTrue(ran.out().contains(line), line + " in " + ran.out());
        }
    }

    @Test
    void aspectWarnsOfTheSun() throws IOException {
        Path to = folder.resolve("near-sun.json");
        Ran near = Ran.of("aspect", "-b", "mercury", "--at", "2024-12-06T19:00Z", "-r", to);
        near.succeeds();
        assertTrue(near.out().contains("Caution: Mercury is within 30 degrees of the Sun."), near.out());
        assertTrue(json("near-sun.json").path("warnings").path(0).textValue().contains("30 degrees"));
        Ran table = Ran.of("aspect", "--csv", "-b", "jupiter", "-b", "mercury", "--at", "2024-12-06T19:00Z");
        assertTrue(table.err().contains("within 30 degrees of the Sun"), table.err());
        Ran looked = Ran.of("inspect", "-b", "mercury", evening.sound("R"));
        assertTrue(looked.out().contains("never point optics near the Sun"), looked.out());
        Ran far = Ran.of("aspect", "-b", "jupiter", "--at", "2024-12-06T19:00Z");
        assertFalse(far.out().contains("Caution"), far.out());
    }

    @Test
    void aspectAsATable() {
        Ran ran = Ran.of(
                "aspect",
                "--csv",
                "--body",
                "jupiter",
                "--body",
                "mars",
                "--at",
                "2024-12-18T19:00Z",
                "--until",
                "2024-12-18T21:00Z",
                "--every",
                "PT30M");
        ran.succeeds();
        List<String> lines = ran.out().lines().toList();
        assertEquals(1 + 2 * 5, lines.size());
        int columns = lines.get(0).split(",", -1).length;
        for (String line : lines) {
            assertEquals(columns, line.split(",", -1).length, line);
        }
        assertTrue(lines.get(1).startsWith("Jupiter,2024-12-18T19:00:00Z,"), lines.get(1));
        assertTrue(lines.get(10).startsWith("Mars,2024-12-18T21:00:00Z,"), lines.get(10));
        // Mars has one meridian only.
        assertEquals("", lines.get(10).split(",", -1)[2]);
    }

    @Test
    void withoutArgumentsTellsHowToUseIt() {
        Ran ran = Ran.of();
        assertEquals(0, ran.code());
        assertTrue(ran.out().startsWith("Usage: epochrome"), ran.out());
        assertEquals("", ran.err());
        for (String command : List.of("combine", "inspect", "aspect", "plan", "demo", "help")) {
            assertTrue(ran.out().contains("  " + command), command);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"combine", "inspect", "aspect", "plan", "demo"})
    void explainsItsCommands(String command) {
        Ran asked = Ran.of("help", command);
        assertEquals(0, asked.code());
        assertTrue(asked.out().startsWith("Usage: epochrome " + command), asked.out());
        assertEquals(asked.out(), Ran.of(command, "--help").out());
    }

    /** The long names are fixed by the contract. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "--sheet",
                "--red",
                "--green",
                "--blue",
                "--luminance",
                "--colour",
                "--body",
                "--site",
                "--epoch",
                "--exposure",
                "--clock",
                "--utc-offset",
                "--north",
                "--mirrored",
                "--scale",
                "--mount",
                "--rotation-system",
                "--pressure",
                "--temperature",
                "--humidity",
                "--passband",
                "--no-turn",
                "--no-dispersion",
                "--white",
                "--out",
                "--report",
                "--overwrite",
                "--quiet",
                "--threads"
            })
    void combineHasTheOption(String option) {
        assertTrue(Ran.of("help", "combine").out().matches("(?s).*\\s" + option + "[=\\s].*"), option);
    }

    @Test
    void tellsItsVersion() {
        Ran ran = Ran.of("--version");
        assertEquals(0, ran.code());
        assertTrue(
                ran.out().matches("Epochrome \\S+( \\(commit [0-9a-f]{10}, [-\\d]{10}(, modified)?\\))?\\R"),
                ran.out());
    }

    private static JsonNode json(String name) throws IOException {
        return new ObjectMapper().readTree(folder.resolve(name).toFile());
    }

    private static void ephemeris(JsonNode node, Set<String> systems) {
        numbers(node, EPHEMERIS);
        JsonNode meridians = node.path("centralMeridianDeg");
        Set<String> found = new TreeSet<>();
        for (Iterator<String> names = meridians.fieldNames(); names.hasNext(); ) {
            found.add(names.next());
        }
        assertEquals(new TreeSet<>(systems), found);
        numbers(meridians, List.copyOf(systems));
    }

    private static void disk(JsonNode node) {
        numbers(node, DISK);
        assertTrue(node.path("mirrored").isBoolean());
    }

    private static void numbers(JsonNode node, List<String> keys) {
        for (String key : keys) {
            assertTrue(node.path(key).isNumber(), key + " in " + node);
        }
    }
}
