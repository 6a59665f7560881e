package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.epochrome.session.product.Session;
import org.epochrome.session.sessionfile.SessionFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** No option replaces what the picture is made from, not even with --overwrite. */
class ProtectedInputsTest {
    private static final int OUTPUT = 5;

    @TempDir
    private Path folder;

    @TempDir
    private Path outside;

    private SmallEvening evening;
    private List<Path> frames;

    @BeforeEach
    void frames() {
        evening = new SmallEvening(folder);
        frames = List.of(evening.sound("R"), evening.sound("G"), evening.sound("B"));
    }

    private void refused(String sentence, Object... words) {
        Map<String, Long> before = evening.contents();
        List<Object> all = new ArrayList<>(List.of("combine", "--overwrite", "--quiet"));
        all.addAll(List.of(words));
        Ran.of(all.toArray()).refuses(OUTPUT, sentence);
        assertEquals(before, evening.contents());
    }

    private void refusedWithFrames(String sentence, Object... words) {
        List<Object> all = new ArrayList<>(List.of(words));
        all.addAll(frames);
        refused(sentence, all.toArray());
    }

    @ParameterizedTest
    @CsvSource({"--out,jupiter-R.fits", "--map,jupiter-G.fits"})
    void aFrame(String option, String name) {
        refusedWithFrames(name + "|is also an input", option, folder.resolve(name));
    }

    @Test
    void aFrameThatIsLeftOut() {
        Path out = folder.resolve("jupiter-R.fits");
        refusedWithFrames("jupiter-R.fits|is also an input", "--leave-out", out, "--luminance-from=none", "--out", out);
    }

    @Test
    void sheetResponseAndWhiteFrame() throws IOException {
        StringBuilder rows = new StringBuilder("file\n");
        frames.forEach(f -> rows.append(f.getFileName()).append('\n'));
        Path sheet = evening.text("sheet.json.csv", rows.toString());
        Path asReport = Files.createSymbolicLink(folder.resolve("sheet.json"), sheet);
        refused("sheet.json|is also an input", "--sheet", sheet, "--report", asReport);
        Path curve = evening.text("curve", "400,0.5\n800,0.6\n");
        Path asPage = Files.createLink(folder.resolve("page.html"), curve);
        refusedWithFrames("page.html|is also an input", "--response", curve, "--report", asPage);
        Path white = Files.copy(frames.get(0), folder.resolve("white.fits"));
        refusedWithFrames(
                "white.fits|is also an input",
                "--white-frame",
                white,
                "--white-frame",
                frames.get(1),
                "--white-frame",
                frames.get(2),
                "--out",
                white);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "\"pictures\":[\"jupiter-R.fits\"];jupiter-R.fits|is also an input",
                "\"map\":{\"file\":\"jupiter-R.fits\"};jupiter-R.fits|is also an input",
                "\"turning\":{\"file\":\"frame.png\"};frame.png|is also an input",
                "\"reports\":[\"night.json\"];night.json|is also an input",
                "\"pictures\":[\"a.png\",\"./a.png\"];a.png|two outputs",
                "\"pictures\":[\"a.png\"],\"map\":{\"file\":\"a.png\"};a.png|two outputs",
            })
    void whatASessionNames(String outputs, String sentence) throws IOException {
        Files.createSymbolicLink(folder.resolve("frame.png"), frames.get(1));
        refused(sentence, session(outputs));
    }

    /** A session is no frame: what was changed may be saved under its name, where --overwrite allows it. */
    @Test
    void theSessionItself() throws IOException {
        Path session = session("");
        Path picture = folder.resolve("picture.png");
        Object[] words = {
            "combine", "--quiet", "--saturation", "1.4", "--out", picture, session, "--save-session", session
        };
        Map<String, Long> before = evening.contents();
        Ran.of(words).refuses(OUTPUT, "night.json already exists|--overwrite");
        assertEquals(before, evening.contents());

        List<Object> all = new ArrayList<>(List.of(words));
        all.add("--overwrite");
        Ran.of(all.toArray()).succeeds();
        Session again = SessionFile.read(session).session();
        assertEquals(1.4, again.look().tone().saturation());
        assertEquals(3, again.recipe().frames().used().size());
        assertTrue(Files.exists(picture));
        Map<String, Long> after = evening.contents();
        for (String name : List.of("jupiter-R.fits", "jupiter-G.fits", "jupiter-B.fits")) {
            assertEquals(before.get(name), after.get(name));
        }
    }

    @Test
    void aFrameUnderTheNameOfASession() throws IOException {
        Path frame = Files.createSymbolicLink(folder.resolve("frame.json"), frames.get(1));
        refused("frame.json|is also an input", session(""), "--save-session", frame);
    }

    /** A session of a stranger must not write where nobody looks. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "\"pictures\":[\"a.png\",\"../b.png\"];b.png",
                "\"pictures\":[\"elsewhere/b.png\"];b.png",
                "\"reports\":[\"../b.json\"];b.json",
                "\"map\":{\"file\":\"../b.png\"};b.png",
                "\"turning\":{\"file\":\"../b.gif\"};b.gif",
            })
    void aSessionThatWritesOutsideItsFolder(String outputs, String name) throws IOException {
        Files.createSymbolicLink(folder.resolve("elsewhere"), Files.createDirectory(outside.resolve("there")));
        refused(name + "|outside the folder of night.json|--write-outside", session(outputs));
    }

    @Test
    void whatIsWrittenOutsideWithConsent() {
        Path typed = outside.resolve("typed.png");
        Path there = outside.resolve("there.png");
        Path session = session("\"pictures\":[\"" + there + "\"]");
        Ran.of("combine", "--quiet", session, "--out", typed).succeeds();
        assertTrue(Files.exists(typed));
        assertTrue(Files.notExists(there));
        Ran.of("combine", "--quiet", session, "--write-outside").succeeds();
        assertTrue(Files.exists(there));
    }

    private Path session(String outputs) {
        return evening.text(
                "night.json",
                "{\"format\":\"epochrome-session\",\"version\":1,\"body\":\"jupiter\",\"frames\":"
                        + "[{\"file\":\"jupiter-R.fits\"},{\"file\":\"jupiter-G.fits\"},{\"file\":\"jupiter-B.fits\"}],"
                        + "\"outputs\":{" + outputs + "}}");
    }

    @Test
    void aReportThatIsAlsoTheSession() {
        Path one = folder.resolve("one.json");
        refusedWithFrames("one.json|two outputs", "--report", one, "--save-session", one);
    }

    @Test
    void inspectKeepsFramesToo() throws IOException {
        Path report = Files.createLink(folder.resolve("report.json"), frames.get(0));
        Map<String, Long> before = evening.contents();
        Ran.of("inspect", "--overwrite", "--report", report, frames.get(0))
                .refuses(OUTPUT, "report.json|is also an input");
        assertEquals(before, evening.contents());
    }
}
