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
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.epochrome.session.sessionfile.CommandLineFormatter;
import org.epochrome.session.sessionfile.SessionFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions on the command line: saved, run again, overruled, spelled out. */
@Tag("session")
class SessionCommandTest {
    /** Every choice that changes the picture, and some that change only files. */
    private static final List<String> CHOICES = List.of(
            "--site=46.2,8.5,480",
            "--pressure=950.3",
            "--temperature=-2.7",
            "--humidity=29",
            "--epoch=2024-12-18T19:23:31Z",
            "--mirrored=no",
            "--passband=R=610-690",
            "--planned-length=R=PT90S",
            "--planned-length=G=PT2M",
            "--response=400=0.5,500=0.8,700=0.6",
            "--rotation-system=II",
            "--unsmear",
            "--no-moons",
            "--witness=limb,detail",
            "--shift=B=0.25,-0.1",
            "--luminance-from=none",
            "--white-gains=1.3,1,1.7",
            "--detail=0.7",
            "--detail-scale=0.8arcsec",
            "--detail-curve=iterations=9,octaves=1.3",
            "--detail-of=bands",
            "--brightness=0.75",
            "--black=0.01",
            "--contrast=1.15",
            "--saturation=1.2",
            "--orient=north-up",
            "--margin=0.2",
            "--canvas=200x180",
            "--caption");

    @TempDir
    private static Path folder;

    private static List<Path> frames;
    private static List<String> held;
    private static Path saved;

    @BeforeAll
    static void combine() {
        SmallEvening evening = new SmallEvening(folder);
        frames = List.of(evening.sound("R"), evening.sound("G"), evening.sound("B"));
        Path fourth =
                evening.frame("another.fits", SmallEvening.counts("G"), SmallEvening.cardsBut("G", "EXPTIME", 121.0));
        held = List.of(
                fourth.toString(),
                "--leave-out=" + fourth,
                "--disk=jupiter-R.fits=80.25,79.5,51.5",
                "--recorded=jupiter-B.fits=2024-12-18T19:24:12Z/PT2M",
                "--mirrored-frame=jupiter-B.fits=no",
                "--encoding=gamma=1.0",
                "--encoding-frame=jupiter-B.fits=linear");
        saved = folder.resolve("session.json");
        Ran.of(words(
                        CHOICES,
                        frames,
                        held,
                        List.of("--out", folder.resolve("first.png"), "--out", folder.resolve("first.fits")),
                        List.of("--report", folder.resolve("first.json"), "--save-session", saved)))
                .succeeds();
    }

    /** R was recorded for 120 s instead of 90 s, G as planned, and nothing was planned for B. */
    @Test
    void recordingsLongerThanPlannedAreReported() throws IOException {
        String report = Files.readString(folder.resolve("first.json"));
        assertTrue(report.contains("Recordings in R last up to 120 s, longer than the planned 90 s"), report);
        assertFalse(report.contains("Recordings in G") || report.contains("Recordings in B"), report);
    }

    private static Object[] words(List<?>... groups) {
        List<Object> all = new ArrayList<>(List.of("combine"));
        Arrays.stream(groups).forEach(all::addAll);
        return all.toArray();
    }

    private static void sameAsFirst(Path there) throws IOException {
        for (String name : List.of("first.png", "first.fits")) {
            assertArrayEquals(Files.readAllBytes(folder.resolve(name)), Files.readAllBytes(there.resolve(name)), name);
        }
    }

    private static JsonNode json(Path file) throws IOException {
        return new ObjectMapper().readTree(file.toFile());
    }

    @Test
    void aMovedSessionGivesTheSameBytes() throws IOException {
        Path there = Files.createDirectories(folder.resolve("moved"));
        for (Path frame : frames) {
            Files.copy(frame, there.resolve(frame.getFileName()));
        }
        Files.copy(folder.resolve("another.fits"), there.resolve("another.fits"));
        Files.copy(saved, there.resolve("session.json"));
        Ran ran = Ran.of("combine", there.resolve("session.json"));
        ran.succeeds();
        assertFalse(ran.err().contains("has changed"), ran.err());
        sameAsFirst(there);
    }

    /** What is left out may be missing; what is not is asked for in one sentence. */
    @Test
    void aMissingFrameMattersOnlyIfItIsUsed() throws IOException {
        Path there = Files.createDirectories(folder.resolve("missing"));
        for (Path frame : frames) {
            Files.copy(frame, there.resolve(frame.getFileName()));
        }
        Path session = Files.copy(saved, there.resolve("session.json"));
        Ran.of("combine", session).succeeds();
        sameAsFirst(there);
        Files.delete(there.resolve("jupiter-R.fits"));
        Ran.of("combine", session, "--overwrite")
                .refuses(3, "jupiter-R.fits is not where the session expects it; put it back, or leave it out");
        Ran.of("combine", session, "--overwrite", "--leave-out", there.resolve("jupiter-R.fits"))
                .refuses(2, "R");
    }

    @Test
    void theCommandLineSpelledFromASessionGivesTheSameBytes() throws IOException {
        Path there = Files.createDirectories(folder.resolve("spelled"));
        List<String> spelled = CommandLineFormatter.of(SessionFile.read(saved).session()).stream()
                .map(w -> w.startsWith("--out=") || w.startsWith("--report=")
                        ? w.replace(folder.toString(), there.toString())
                        : w)
                .toList();
        assertEquals("combine", spelled.get(0));
        Ran.of(spelled.toArray()).succeeds();
        sameAsFirst(there);
    }

    @Test
    void whatIsHeldByHandIsTakenAsItIs() throws IOException {
        JsonNode report = json(folder.resolve("first.json"));
        assertEquals(3, report.path("frames").size());
        JsonNode disk = report.path("frames").get(0).path("disk");
        assertEquals(80.25, disk.path("x").doubleValue());
        assertEquals(79.5, disk.path("y").doubleValue());
        assertEquals(51.5, disk.path("equatorialRadiusPx").doubleValue());
        assertEquals(0, report.path("frames").get(0).path("shiftPx").path("x").doubleValue());
        assertTrue(report.path("frames").get(2).path("timeSource").textValue().contains("--recorded"));
    }

    @Test
    void whatIsTypedGoesBeforeTheSession() throws IOException {
        Path there = Files.createDirectories(folder.resolve("typed"));
        Path report = there.resolve("typed.json");
        Ran.of(
                        "combine",
                        saved,
                        "--no-turn",
                        "--no-caption",
                        "--epoch=2024-12-18T19:21:00Z",
                        "--take-in=another.fits",
                        "--luminance-from=R",
                        "--out",
                        there.resolve("typed.png"),
                        "--report",
                        report,
                        "--save-session",
                        there.resolve("typed-session.json"))
                .succeeds();
        assertEquals("2024-12-18T19:21:00Z", json(report).path("epoch").textValue());
        assertEquals(4, json(report).path("frames").size());
        JsonNode session = json(there.resolve("typed-session.json"));
        assertFalse(session.path("corrections").path("turn").booleanValue());
        assertFalse(session.path("look").path("framing").path("caption").booleanValue());
        assertEquals("R", session.path("assignment").path("luminance").textValue());
        assertEquals(0.01, session.path("look").path("tone").path("black").doubleValue());
        assertEquals(
                "../jupiter-R.fits", session.path("frames").get(0).path("file").textValue());
        assertFalse(Files.exists(there.resolve("first.png")));
    }

    @Test
    void sessionsThatCannotBeUsedAreRefusedAndNothingIsWritten() throws IOException {
        Path broken = folder.resolve("broken.json");
        Path out = folder.resolve("broken.png");
        Files.writeString(broken, Files.readString(saved).substring(0, 300));
        Ran.of("combine", broken, "--out", out).refuses(3, "broken.json|not valid JSON");
        Files.writeString(broken, Files.readString(saved).replace("\"version\" : 1", "\"version\" : 7"));
        Ran.of("combine", broken, "--out", out).refuses(3, "broken.json|version 7");
        Files.writeString(broken, Files.readString(saved).replace("\"contrast\"", "\"kontrast\""));
        Ran.of("combine", broken, "--out", out).refuses(3, "broken.json|look.tone.kontrast");
        Files.writeString(broken, Files.readString(saved).replace("jupiter-G.fits", "missing.fits"));
        Ran.of("combine", broken, "--out", out).refuses(3, "missing.fits");
        Ran.of("combine", folder.resolve("none.json"), "--out", out).refuses(3, "none.json|cannot be read");
        Ran.of("combine", saved, broken, "--out", out).refuses(2, "Only one session file");
        assertFalse(Files.exists(out));
    }

    @Test
    void wordsAboutFramesThatAreNotThereAreWrongUsage() {
        Object[] base = words(frames, List.of("--out", folder.resolve("never.png")));
        for (List<String> wrong : List.of(
                List.of("--disk=other.fits=1,2,3", "other.fits|not one of the frames"),
                List.of("--disk=jupiter-R.fits=1,2", "not a disk"),
                List.of("--disk=jupiter-R.fits=1,2,-3", "radius above 0"),
                List.of("--leave-out=other.fits", "not one of the frames"),
                List.of("--recorded=jupiter-R.fits=yesterday", "--recorded|interval"),
                List.of("--encoding-frame=jupiter-R.fits=maybe", "--encoding-frame|linear, srgb or gamma=X"),
                List.of("--mirrored-frame=jupiter-R.fits=maybe", "--mirrored-frame|write yes or no"),
                List.of("--detail-curve=speed=3", "has no setting speed"),
                List.of("--save-session=session.txt", ".json"))) {
            List<Object> all = new ArrayList<>(Arrays.asList(base));
            all.add(wrong.get(0));
            Ran.of(all.toArray()).refuses(2, wrong.get(1));
        }
        List<Object> none = new ArrayList<>(Arrays.asList(base));
        frames.forEach(f -> none.add("--leave-out=" + f));
        Ran.of(none.toArray()).refuses(2, "All frames are left out");
    }

    @Test
    void aCommandLineIsQuotedForTheShell() {
        assertEquals(
                "combine 'it'\\''s a night.fits' --site=46.2,8.5,480.0",
                CommandLineFormatter.line(List.of("combine", "it's a night.fits", "--site=46.2,8.5,480.0")));
    }
}
