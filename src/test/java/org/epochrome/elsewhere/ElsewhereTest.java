package org.epochrome.elsewhere;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.epochrome.command.SmallEvening;
import org.epochrome.desktop.Launcher;
import org.epochrome.desktop.WindowOnce;
import org.epochrome.elsewhere.ProgramProcess.Result;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The program does the same wherever it is put: in folders of any name, in other languages, without a home or a display. */
@Tag("session")
@Tag("thorough")
class ElsewhereTest {
    /** Nobody can make a folder there, the administrator of the machine included. */
    private static final String NO_HOME = "-Duser.home=/proc/epochrome";

    private static final List<String> PRODUCTS = List.of("jupiter.fits", "jupiter.png", "jupiter.json", "jupiter.html");

    @TempDir
    private static Path folder;

    private static Result usual;

    @BeforeAll
    static void combinesInTheUsualPlace() throws Exception {
        usual = combine(folder.resolve("usual"), "-Duser.language=en", "-Duser.country=US");
    }

    private static ProgramProcess launcher(Path where) {
        return new ProgramProcess(where, Launcher.class.getName());
    }

    private static Result combine(Path where, String... options) throws Exception {
        return combine(launcher(evening(where)).option(options).variable("LC_ALL", "C.UTF-8"));
    }

    /** The frames of a small evening in a folder. */
    private static Path evening(Path where) throws IOException {
        Files.createDirectories(where);
        SmallEvening evening = new SmallEvening(where);
        Stream.of("R", "G", "B").forEach(evening::sound);
        return where;
    }

    private static Result combine(ProgramProcess program) throws Exception {
        Result result = program.run(
                "combine",
                "--quiet",
                "--site",
                "46.2,8.5,480",
                "--caption",
                "--out",
                PRODUCTS.get(0),
                "--out",
                PRODUCTS.get(1),
                "--report",
                PRODUCTS.get(2),
                "--report",
                PRODUCTS.get(3),
                "jupiter-R.fits",
                "jupiter-G.fits",
                "jupiter-B.fits");
        assertEquals(0, result.code(), result.err());
        return result;
    }

    private static void sameAsUsual(Path where, Result result) throws IOException {
        assertEquals(usual.out(), result.out());
        assertEquals(usual.err(), result.err());
        for (String product : PRODUCTS) {
            assertArrayEquals(
                    Files.readAllBytes(folder.resolve("usual").resolve(product)),
                    Files.readAllBytes(where.resolve(product)),
                    product);
        }
    }

    /** A decimal comma, an i without a dot, digits of another script. */
    @ParameterizedTest
    @CsvSource({"de,DE", "tr,TR", "ar,EG"})
    void otherLanguages(String language, String country) throws Exception {
        Path where = folder.resolve(language);
        sameAsUsual(where, combine(where, "-Duser.language=" + language, "-Duser.country=" + country));
    }

    @Test
    void foldersOfAnyName() throws Exception {
        Path where = folder.resolve("Бег ὥρα 木星 'x' & (1)");
        sameAsUsual(where, combine(where));
    }

    /** Letters that the language of the system lacks become question marks on the terminal, and nothing else changes. */
    @Test
    void withoutALanguage() throws Exception {
        Path where = folder.resolve("plain");
        Result result = combine(launcher(evening(where)).variable("LC_ALL", "C"));
        assertEquals(plain(usual.out()), result.out());
        for (String product : PRODUCTS) {
            assertArrayEquals(
                    Files.readAllBytes(folder.resolve("usual").resolve(product)),
                    Files.readAllBytes(where.resolve(product)),
                    product);
        }
    }

    private static String plain(String text) {
        return text.replaceAll("[^\\x00-\\x7f]", "?");
    }

    @Test
    void withoutAHome() throws Exception {
        Path where = folder.resolve("homeless");
        sameAsUsual(where, combine(where, NO_HOME));
    }

    @Test
    void theWindowOpensWithoutAHome() throws Exception {
        Result result = new ProgramProcess(folder, WindowOnce.class.getName())
                .option(NO_HOME)
                .option("-Dprism.order=sw", "-Dglass.platform=Monocle", "-Dmonocle.platform=Headless")
                .option("-Dheadless.geometry=1440x900-32", "-Djava.awt.headless=true")
                .run();
        assertEquals(0, result.code(), result.err());
        assertTrue(result.out().startsWith("window 1440 x 900"), result.out());
        assertEquals("", result.err());
    }

    @Test
    void theWindowNeedsADisplay() throws Exception {
        assumeTrue(Files.exists(Path.of("/proc")), "a display is known by a variable");
        Result result = launcher(folder)
                .variable("DISPLAY", "")
                .variable("WAYLAND_DISPLAY", "")
                .run("desktop");
        assertEquals(1, result.code());
        assertEquals(1, result.err().lines().count(), result.err());
        assertTrue(result.err().contains("display"), result.err());
        assertFalse(result.err().contains("Exception"), result.err());
    }

    /** On a true display, where one can be made. */
    @ParameterizedTest
    @ValueSource(strings = {"1.0", "1.5", "2.0"})
    void theWindowOpensAtAnyScale(String scale) throws Exception {
        Path server = Path.of("/usr/bin/xvfb-run");
        assumeTrue(Files.isExecutable(server) && Files.exists(Path.of("/usr/lib/x86_64-linux-gnu/libgtk-3.so.0")));
        Result result = new ProgramProcess(folder, WindowOnce.class.getName())
                .within(server.toString(), "-a", "-s", "-screen 0 2880x1800x24")
                .option("-Duser.home=" + folder, "-Dprism.order=sw", "-Dglass.gtk.uiScale=" + scale)
                .run();
        assertEquals(0, result.code(), result.err());
        assertTrue(result.out().endsWith("scale " + scale + "0\n"), result.out());
        assertEquals("", result.err());
    }
}
