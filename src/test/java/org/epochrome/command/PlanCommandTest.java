package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import biweekly.Biweekly;
import biweekly.component.VEvent;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlanCommandTest {
    private static final int USAGE = 2;
    private static final int INPUT = 3;
    private static final int OUTPUT = 5;
    private static final String SITE = "46.2,8.5,480";

    private static final Pattern UNIT = Pattern.compile(
            "^(?:\u00b0|\"|\u2033|/px|\u00d7|x\\b| ?(?:px|mm|\u00b5m|nm|min|s|h|%|radii|arcsec|degrees|times|of the radius)"
                    + "(?![\\w]))");
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.:/])\\d+(?:\\.\\d+)?(?![\\w:]*\\.?\\d)");

    @TempDir
    private Path folder;

    private static Ran plan(String body, String date, Object... more) {
        List<Object> words = new ArrayList<>(List.of("plan", "--body", body, "--site", SITE, "--date", date));
        words.addAll(List.of("--aperture", "280", "--obstruction", "0.34", "--focal-length", "5600", "--pixel", "2.9"));
        words.addAll(Arrays.asList(more));
        return Ran.of(words.toArray());
    }

    private JsonNode json(String body, String date, Object... more) throws IOException {
        Path to = folder.resolve(body + date + ".json");
        List<Object> words = new ArrayList<>(List.of("--overwrite", "--report", to));
        words.addAll(Arrays.asList(more));
        plan(body, date, words.toArray()).succeeds();
        return new ObjectMapper().readTree(to.toFile());
    }

    @Test
    void theReportHasItsKeys() throws IOException {
        JsonNode root = json("jupiter", "2026-12-01", "--seeing", "1", "--feature", "spot=II:45");
        for (String key : List.of("tool", "version", "body", "date")) {
            assertTrue(root.path(key).isTextual(), key);
        }
        assertEquals("Jupiter", root.path("body").textValue());
        assertEquals("2026-12-01", root.path("date").textValue());
        assertEquals(46.2, root.path("site").path("latitudeDeg").doubleValue(), 0);
        for (String key :
                List.of("rise", "culmination", "set", "sunset", "sunrise", "astronomicalDusk", "astronomicalDawn")) {
            Instant.parse(root.path("night").path(key).textValue());
        }
        JsonNode hours = root.path("hours");
        assertTrue(hours.size() > 50, hours.size() + " quarters of an hour");
        int above = 0;
        for (JsonNode hour : hours) {
            assertEquals(0, Instant.parse(hour.path("utc").textValue()).getEpochSecond() % 900);
            for (String key : List.of("altitudeDeg", "azimuthDeg", "diameterArcsec")) {
                assertTrue(hour.path(key).isNumber(), key);
            }
            for (String system : List.of("I", "II", "III")) {
                assertTrue(hour.path("centralMeridianDeg").path(system).isNumber(), system);
            }
            assertTrue(hour.has("airMass"));
            above += hour.path("airMass").isNumber() ? 1 : 0;
        }
        assertTrue(above > 20, above + " above the horizon");
        JsonNode bands = root.path("bands");
        assertEquals(3, bands.size());
        for (JsonNode band : bands) {
            assertTrue(band.path("band").isTextual());
            for (String key : List.of("longestRecordingS", "dispersionArcsec", "smearArcsec")) {
                assertTrue(band.path(key).isNumber(), key);
            }
            // half of the resolution, at the speed of the fastest latitude
            assertEquals(
                    0.5 * band.path("resolutionArcsec").doubleValue(),
                    band.path("smearArcsec").doubleValue(),
                    1e-6);
            assertEquals(
                    band.path("smearArcsec").doubleValue(),
                    band.path("longestRecordingS").doubleValue()
                            * root.path("motion").path("fastestArcsecPerMin").doubleValue()
                            / 60,
                    1e-5);
        }
        assertTrue(root.path("events").size() > 5);
        for (JsonNode event : root.path("events")) {
            Instant.parse(event.path("utc").textValue());
            assertTrue(event.path("what").isTextual());
        }
        assertTrue(root.path("advice").size() > 4);
        assertTrue(root.path("advice").path(0).isTextual());
        assertTrue(root.path("warnings").isArray());
        assertTrue(root.path("sequence").path("recordings").size() >= 5);
    }

    @Test
    void everyNumberOfTheTextHasItsUnit() {
        for (String body : List.of("jupiter", "mars", "saturn")) {
            Ran ran = plan(body, "2026-12-01", "--seeing", "1", "--feature", "spot=" + system(body) + ":45");
            ran.succeeds();
            unitless(ran.out().replaceAll("(?m)^(  \\d\\d:\\d\\d +\\S+ +\\S+ +)[\\d.]+", "$1"));
        }
    }

    private static String system(String body) {
        return body.equals("mars") ? "single" : "III";
    }

    /** Numbers that need no unit, or have it elsewhere: times, dates, clocks, focal ratios, counts, edges of a passband. */
    private static void unitless(String text) {
        String left = text.replaceAll("\\d{4}-\\d\\d-\\d\\d", "")
                .replaceAll("\\d\\d:\\d\\d(?::\\d\\d)?", "")
                .replaceAll("UTC[+-]?", "")
                .replaceAll("f/\\d+(?:\\.\\d+)?", "")
                .replaceAll("\\d+[-\u2013](\\d+ nm)", "$1")
                .replaceAll("(?:set|sets|sets,|500|of) \\d+(?:\\.\\d+)?(?= |,|\n|$)", "");
        Matcher number = NUMBER.matcher(left);
        List<String> without = new ArrayList<>();
        int checked = 0;
        while (number.find()) {
            checked++;
            if (!UNIT.matcher(left.substring(number.end())).find()) {
                without.add(
                        left.substring(Math.max(0, number.start() - 30), Math.min(left.length(), number.end() + 20)));
            }
        }
        assertEquals(List.of(), without);
        assertTrue(checked > 100, checked + " numbers");
    }

    @Test
    void thePageIsWholeAndEveryNumberHasItsUnit() throws IOException {
        Path page = folder.resolve("plan.html");
        plan("jupiter", "2026-12-01", "--seeing", "1", "--report", page).succeeds();
        String html = Files.readString(page);
        assertFalse(html.contains("<script") || html.contains("http:") || html.contains("https:"), "self-contained");
        assertTrue(html.contains("prefers-color-scheme: dark"));
        assertEquals(4, html.split("<svg ", -1).length - 1, "the night, and the disk at three times");
        assertTrue(html.contains(">Europa<") || html.contains(">E<"), "moons");
        String text = html.replaceAll("(?s)<style>.*?</style>|<svg.*?</svg>|<footer>.*?</footer>", "")
                // the air mass has no unit
                .replaceAll("(<td>[\\d.\u2212]+\u00b0</td><td>\\d+\u00b0</td><td>)[\\d.]+", "$1")
                .replaceAll("<[^>]+>", " \n")
                .replace("&#39;", "'");
        unitless(text.replaceAll("(\\d) \\n+", "$1 "));
    }

    @Test
    void theCalendarHoldsTheRecordingsAndTheChosenEvents() throws IOException {
        Path file = folder.resolve("plan.ics");
        plan("jupiter", "2026-12-01", "--events", "satellite,feature", "--feature", "spot=II:45", "--report", file)
                .succeeds();
        List<VEvent> events = Biweekly.parse(file.toFile()).first().getEvents();
        assertTrue(events.get(0).getSummary().getValue().contains("R-G-B-G-R"), "recordings first");
        assertTrue(events.get(0)
                .getDateEnd()
                .getValue()
                .after(events.get(0).getDateStart().getValue()));
        assertTrue(events.stream().anyMatch(e -> e.getSummary().getValue().contains("spot")));
        assertTrue(events.stream().noneMatch(e -> e.getSummary().getValue().contains("Sunset")));
        assertEquals(
                events.size(),
                events.stream().map(e -> e.getUid().getValue()).distinct().count());
    }

    @Test
    void theTableIsTheSameOnScreenAndInTheFile() throws IOException {
        Path file = folder.resolve("plan.csv");
        Ran ran = plan("mars", "2026-12-01", "--csv", "--report", file);
        ran.succeeds();
        assertEquals(Files.readString(file), ran.out());
        List<String> lines = ran.out().lines().toList();
        int columns = lines.get(0).split(",", -1).length;
        assertTrue(lines.stream().allMatch(l -> l.split(",", -1).length == columns));
        assertTrue(lines.get(0).contains("cm_single_deg"));
    }

    @Test
    void theGuideShowsWhatIsPrinted() throws IOException {
        String guide = Files.readString(Path.of("docs/guide.md"));
        String section = guide.substring(guide.indexOf("## Planning a night"));
        Matcher command =
                Pattern.compile("epochrome.jar (plan .*?)\n\n", Pattern.DOTALL).matcher(section);
        assertTrue(command.find());
        Object[] words = command.group(1).replace("\\\n", " ").split("\\s+", -1);
        List<String> printed = Ran.of(words).out().lines().toList();
        String shown = section.split("```", -1)[1];
        List<String> lines = shown.lines().filter(l -> !l.isBlank()).toList();
        assertEquals(List.of(), lines.stream().filter(l -> !printed.contains(l)).toList());
        assertTrue(lines.size() > 10);
    }

    @Test
    void theChecklistIsShortAndPlain() {
        Ran ran = plan("jupiter", "2026-12-01", "--checklist", "--utc-offset", "+01:00");
        ran.succeeds();
        assertTrue(ran.out().lines().filter(l -> l.startsWith("[ ] ")).count() > 6, ran.out());
        assertTrue(ran.out().contains("UTC+01:00"));
        assertFalse(ran.out().contains("\u001b"), "no colour");
        assertTrue(ran.out().lines().allMatch(l -> l.length() < 120), ran.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {".json", ".html", ".csv", ".ics"})
    void theSameInputGivesTheSameFile(String extension) throws IOException {
        Path first = folder.resolve("a" + extension);
        Path second = folder.resolve("b" + extension);
        plan("saturn", "2026-12-01", "--report", first).succeeds();
        plan("saturn", "2026-12-01", "--report", second).succeeds();
        assertArrayEquals(Files.readAllBytes(first), Files.readAllBytes(second));
    }

    @Test
    void filesAreNotReplacedUnasked() throws IOException {
        Path file = folder.resolve("plan.json");
        Files.writeString(file, "mine");
        plan("mars", "2026-12-01", "--report", file).refuses(OUTPUT, "plan.json");
        assertEquals("mine", Files.readString(file));
        plan("mars", "2026-12-01", "--report", file, "--overwrite").succeeds();
        assertTrue(Files.readString(file).startsWith("{"));
        plan("mars", "2026-12-01", "--report", folder.resolve("plan.txt")).refuses(OUTPUT, "plan.txt|.ics");
        Path horizon = Files.writeString(folder.resolve("horizon.csv"), "0,10\n");
        plan("mars", "2026-12-01", "--horizon", horizon, "--report", horizon, "--overwrite")
                .refuses(OUTPUT, "horizon.csv");
        assertEquals("0,10\n", Files.readString(horizon));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "--aperture 5; mm",
                "--focal-length 1; mm",
                "--pixel 0; micrometres",
                "--obstruction 1; obstruction",
                "--seeing -1; seeing",
                "--smear 0; smear",
                "--bands R,X; X|--passband",
                "--bands R,R; once",
                "--date yesterday; yesterday|YYYY-MM-DD",
                "--events noise; noise|satellite",
                "--feature spot; spot",
                "--passband R; R",
                "--pressure 5; pressure"
            })
    void wrongValuesAreRefused(String typed, String words) {
        String[] parts = typed.split(" ", 2);
        List<String> line = new ArrayList<>(List.of("plan", "--body", "mars", "--site", SITE));
        Stream.of("--date 2026-12-01", "--aperture 200", "--focal-length 4000", "--pixel 2.9")
                .filter(usual -> !usual.startsWith(parts[0]))
                .forEach(usual -> line.addAll(List.of(usual.split(" ", 2))));
        line.addAll(List.of(parts));
        Ran.of(line.toArray()).refuses(USAGE, words.strip());
    }

    @Test
    void whatIsMissingIsNamed() {
        Ran.of("plan", "--body", "mars").refuses(USAGE, "--date");
        List<String> nowhere = List.of(
                "plan --body mars --date 2026-12-01 --aperture 200 --focal-length 4000 --pixel 2.9".split(" ", -1));
        Ran.of(nowhere.toArray()).refuses(USAGE, "--site");
    }

    @Test
    void aHorizonHidesWhatIsBelowIt() throws IOException {
        Path wall = Files.writeString(folder.resolve("wall.csv"), "azimuth,altitude\n0,0\n90,70\n180,70\n270,0\n");
        JsonNode open = json("jupiter", "2026-12-01");
        JsonNode hidden = json("jupiter", "2026-12-01", "--horizon", wall);
        assertTrue(open.path("sequence").isObject());
        assertTrue(hidden.path("hours").findValues("usable").stream()
                        .filter(JsonNode::booleanValue)
                        .count()
                < open.path("hours").findValues("usable").stream()
                        .filter(JsonNode::booleanValue)
                        .count());
        Path broken = Files.writeString(folder.resolve("broken.csv"), "north,high\n");
        plan("mars", "2026-12-01", "--horizon", broken).refuses(INPUT, "broken.csv");
        plan("mars", "2026-12-01", "--horizon", folder.resolve("none.csv")).refuses(INPUT, "none.csv");
    }

    /** Jupiter was in conjunction with the Sun on 2026-07-29 and is 30 degrees from it in the first days of September. */
    @Test
    void nothingIsRecommendedNearTheSun() throws IOException {
        JsonNode forbidden = json("jupiter", "2026-07-29");
        assertEquals(0, forbidden.path("bands").size());
        assertTrue(forbidden.path("sequence").isNull());
        assertEquals(0, forbidden.path("advice").size());
        assertTrue(
                forbidden.path("warnings").toString().contains("Sun"),
                forbidden.path("warnings").toString());
        JsonNode near = json("jupiter", "2026-08-25");
        assertTrue(
                near.path("warnings").toString().contains("Sun"),
                near.path("warnings").toString());
        JsonNode far = json("jupiter", "2026-12-01");
        assertFalse(
                far.path("warnings").toString().contains("Sun"),
                far.path("warnings").toString());
        Ran checklist = plan("jupiter", "2026-07-29", "--checklist");
        assertFalse(checklist.out().contains("[ ]"), checklist.out());
    }

    /** From 85 degrees south Jupiter in Leo stays below the horizon. */
    @Test
    void nothingIsRecommendedBelowTheHorizon() throws IOException {
        Path to = folder.resolve("south.json");
        List<Object> words =
                new ArrayList<>(List.of("plan --body jupiter --site=-85,0 --date 2027-05-01".split(" ", -1)));
        words.addAll(List.of("--aperture", "200", "--focal-length", "4000", "--pixel", "3", "--report", to));
        Ran ran = Ran.of(words.toArray());
        ran.succeeds();
        JsonNode root = new ObjectMapper().readTree(to.toFile());
        assertTrue(root.path("sequence").isNull());
        assertEquals(0, root.path("bands").size());
        assertTrue(root.path("night").path("rise").isNull());
        assertFalse(root.path("warnings").isEmpty());
    }
}
