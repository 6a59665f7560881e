package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.epochrome.io.read.FrameReader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When the disk is full at the second product, the first is there and whole, and nothing else is. */
@Tag("session")
@Tag("thorough")
class FullDiskTest {
    private static final Path SHELL = Path.of("/bin/bash");
    /** Between the lengths of the picture and of the cube. */
    private static final int MOST_KIB = 220;

    private static final int OUTPUT = 5;

    @TempDir
    private Path folder;

    @Test
    void theFirstProductStays() throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(SHELL));
        SmallEvening evening = new SmallEvening(folder);
        Path picture = folder.resolve("picture.tif");
        Path cube = folder.resolve("cube.fits");
        List<Path> frames = List.of(evening.sound("R"), evening.sound("G"), evening.sound("B"));
        Files.writeString(cube, "old");
        Map<String, Long> before = evening.contents();
        // A limit of the shell stands for a full disk: a longer file cannot be written.
        Process program = new ProcessBuilder(
                        SHELL.toString(),
                        "-c",
                        "ulimit -f " + MOST_KIB + "; exec \"$@\"",
                        "bash",
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "combine",
                        "--quiet",
                        "--overwrite",
                        "--out",
                        picture.toString(),
                        "--out",
                        cube.toString(),
                        frames.get(0).toString(),
                        frames.get(1).toString(),
                        frames.get(2).toString())
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (BufferedReader err = program.errorReader(StandardCharsets.UTF_8)) {
            String said = String.join("\n", err.lines().toList());
            assertTrue(said.startsWith("cube.fits cannot be written (") && said.endsWith("."), said);
            assertEquals(1, said.lines().count(), said);
        }
        assertEquals(OUTPUT, program.waitFor());
        assertEquals(3, FrameReader.read(picture).planes().size());
        assertEquals("old", Files.readString(cube));
        Set<String> expected = new TreeSet<>(before.keySet());
        expected.add("picture.tif");
        assertEquals(expected, evening.contents().keySet());
    }
}
