package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.command.terminal.StandardOutput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program ends quietly when its reader has seen enough, and with an error when what it prints is lost. */
class StandardOutputTest {
    private static final OutputStream CLOSED = new OutputStream() {
        @Override
        public void write(int b) throws IOException {
            throw new IOException("Broken pipe");
        }
    };

    @TempDir
    private Path folder;

    /** The program in a Java of its own, with a table of more rows than a pipe holds. */
    private static ProcessBuilder table() {
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        words.addAll(List.of("aspect", "--body", "mars", "--at", "2031-05-02T00:00Z"));
        words.addAll(List.of("--until", "2031-05-03T00:00Z", "--every", "PT1M"));
        return new ProcessBuilder(words);
    }

    private static String rest(BufferedReader from) {
        return String.join("\n", from.lines().toList());
    }

    @Test
    void aReaderThatClosesThePipe() throws Exception {
        assumeTrue(Files.exists(Path.of("/dev/stdout")));
        Process program = table().start();
        try (BufferedReader out = program.inputReader(StandardCharsets.UTF_8)) {
            assertTrue(out.readLine().startsWith("body"), "the head of the table");
        }
        try (BufferedReader err = program.errorReader(StandardCharsets.UTF_8)) {
            assertEquals("", rest(err));
        }
        assertEquals(0, program.waitFor());
    }

    @Test
    void aFullDisk() throws Exception {
        File full = new File("/dev/full");
        assumeTrue(full.exists());
        Process program = table().redirectOutput(full).start();
        try (BufferedReader err = program.errorReader(StandardCharsets.UTF_8)) {
            assertEquals("Standard output cannot be written; free some space or redirect it elsewhere.", rest(err));
        }
        assertEquals(5, program.waitFor());
    }

    @Test
    void productsAreWrittenThoughNobodyReads() {
        SmallEvening evening = new SmallEvening(folder);
        Path picture = folder.resolve("picture.png");
        Ran ran = Ran.onto(
                StandardOutput.PIPE,
                CLOSED,
                "combine",
                "--out",
                picture,
                evening.sound("R"),
                evening.sound("G"),
                evening.sound("B"));
        ran.succeeds();
        assertTrue(Files.exists(picture));
        Ran.onto(CLOSED, "aspect", "--body", "mars", "--at", "2031-05-02T21:14Z")
                .refuses(5, "Standard output");
    }
}
