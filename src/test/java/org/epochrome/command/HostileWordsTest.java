package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words from elsewhere neither control the terminal nor the program, and what is not heard is not done. */
class HostileWordsTest {
    private static final int USAGE = 2;
    private static final int INPUT = 3;
    private static final int OUTPUT = 5;

    /** Clears the screen, and goes on in a line of its own. */
    private static final String HOSTILE = "x\u001b[2J\nNote: all is well\u009b.fits";

    private static final String SHOWN = "x\\x1b[2J\\x0aNote: all is well\\x9b.fits";

    @TempDir
    private Path folder;

    private SmallEvening evening;

    @BeforeEach
    void folder() {
        evening = new SmallEvening(folder);
    }

    private static Ran tame(Ran ran) {
        String all = ran.out() + ran.err();
        assertTrue(
                all.chars().noneMatch(c -> c != '\n' && c != '\r' && Character.isISOControl(c)),
                () -> all.replace('\u001b', '?'));
        return ran;
    }

    @Test
    void aFileName() {
        tame(Ran.of("inspect", folder.resolve(HOSTILE))).refuses(INPUT, SHOWN + "|does not exist");
        tame(Ran.of("combine", "--out", folder.resolve("a.png"), folder.resolve(HOSTILE)))
                .refuses(INPUT, SHOWN + "|does not exist");
        tame(Ran.of("aspect", "--body", "mars", "--at", "2031-05-02T21:14Z", "--report", folder.resolve(HOSTILE)))
                .refuses(OUTPUT, SHOWN + "|.json");
        tame(Ran.of("inspect", "--" + HOSTILE)).refuses(USAGE, "--" + SHOWN);
    }

    @Test
    void whatInspectPrints() {
        Path frame = evening.frame(HOSTILE, SmallEvening.counts("R"), SmallEvening.cards("R"));
        Ran ran = tame(Ran.of("inspect", frame));
        ran.succeeds();
        assertTrue(ran.out().lines().anyMatch(line -> line.endsWith(SHOWN)), ran.out());
        Path sheet = evening.text(
                "s\u001b.csv", "file,band,start,end\njupiter-G.fits,R,2024-12-18T19:20:00Z,2024-12-18T19:22:00Z\n");
        evening.sound("G");
        Ran listed = tame(Ran.of("inspect", "--sheet", sheet));
        listed.succeeds();
        assertTrue(listed.out().contains("sheet s\\x1b.csv line 2"), listed.out());
    }

    @Test
    void sheetSessionAndHeader() {
        Path green = evening.sound("G");
        Path sheet = evening.text("bands.csv", "file,band\n" + green.getFileName() + ",G\u001b[31m\n");
        tame(Ran.of("inspect", "--sheet", sheet)).refuses(INPUT, "jupiter-G.fits|G\\x1b[31m");
        Path session = evening.text(
                "night.json",
                "{\"format\":\"epochrome-session\",\"version\":1,\"body\":\"jupiter\","
                        + "\"frames\":[{\"file\":\"a\\u001b[2J\\nb.fits\"}]}");
        tame(Ran.of("combine", session)).refuses(INPUT, "a\\x1b[2J\\x0ab.fits|not where the session expects it");
        Path planet = evening.text(
                "planet.json",
                "{\"format\":\"epochrome-session\",\"version\":1,\"body\":\"\\u001b[2J\",\"frames\":[]}");
        tame(Ran.of("combine", planet)).refuses(INPUT, "planet.json|'\\x1b[2J' is not a planet");
        Path headed = evening.header(
                "headed.fits",
                "SIMPLE  =                    T",
                "BITPIX  =                    8",
                "NAXIS   =                    2",
                "NAXIS1  =                   16",
                "NAXIS2  =                   16",
                "ROWORDER= '\u001b[2J  '");
        tame(Ran.of("inspect", headed)).refuses(INPUT, "headed.fits|ROWORDER '?[2J'");
    }

    @Test
    void messagesAreBounded() {
        String many = "9".repeat(100_000);
        Ran ran = Ran.of("inspect", "--exposure", many);
        assertEquals(USAGE, ran.code());
        assertTrue(ran.err().length() < 2000, () -> ran.err().length() + " characters");
        Path session = evening.text(
                "long.json",
                "{\"format\":\"epochrome-session\",\"version\":1,\"body\":\"" + many + "\",\"frames\":[]}");
        Ran read = Ran.of("combine", session);
        read.refuses(INPUT, "long.json|correct it or save it again");
        assertTrue(read.err().length() < 2000, () -> read.err().length() + " characters");
    }

    /** What Java makes of bytes that the locale does not know, such as a name with accents under LC_ALL=C. */
    @Test
    void aNameThatTheLocaleCannotExpress() {
        Ran.of("inspect", folder.resolve("j\ufffd\ufffdpiter.fits")).refuses(INPUT, "locale|LC_ALL");
        Ran.of("combine", "--out", folder.resolve("\ufffd.png"), evening.sound("R"))
                .refuses(INPUT, "locale|LC_ALL");
    }

    /** Thousands of files take long: what is known of one is printed before the next is looked at. */
    @Test
    void inspectPrintsAsItGoes() {
        Path red = evening.sound("R");
        Path green = evening.sound("G");
        OutputStream out = new OutputStream() {
            private final ByteArrayOutputStream said = new ByteArrayOutputStream();

            @Override
            public void write(int b) throws IOException {
                said.write(b);
                if (said.toString(StandardCharsets.UTF_8).endsWith("centre")) {
                    Files.deleteIfExists(green);
                }
            }
        };
        Ran.onto(out, "inspect", red, green).refuses(INPUT, "jupiter-G.fits|does not exist");
    }

    /** A name that a glob may give. */
    @Test
    void aFrameWithAnAtSignIsNoFileOfArguments() {
        Path words = evening.text("words", "--frobnicate\n");
        Ran.of("inspect", "@" + words).refuses(INPUT, "words|does not exist");
    }

    @Test
    void aFullStandardOutput() {
        OutputStream full = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("No space left on device");
            }
        };
        Ran.onto(full, "aspect", "--body", "mars", "--at", "2031-05-02T21:14Z").refuses(OUTPUT, "Standard output");
        Ran.onto(full, "inspect", evening.sound("R")).refuses(OUTPUT, "Standard output");
        Ran.onto(full, "help").refuses(OUTPUT, "Standard output");
        Ran.onto(full, "inspect", "--help").refuses(OUTPUT, "Standard output");
        Ran.onto(full, "inspect", folder.resolve("gone.fits")).refuses(INPUT, "gone.fits");
    }
}
