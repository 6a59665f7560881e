package org.epochrome.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever is killed in the middle of writing leaves the old file as it was, or none: every writer, in a Java of its own. */
class CutShortTest {
    private static final List<String> NAMES = List.of(
            "cube.fits",
            "picture.tif",
            "picture.png",
            "picture.jpg",
            "frame.png",
            "turning.gif",
            "turning.png",
            "report.html");

    private static final int SIDE = 600;
    /** On a busy machine a small file can be complete before its writer is killed; then a larger one is tried. */
    private static final int LARGEST_SIDE = 8 * SIDE;

    @TempDir
    private Path folder;

    @Test
    void theOldFileSurvives() throws Exception {
        Map<String, Process> running = new LinkedHashMap<>();
        for (String name : NAMES) {
            // Half of them replace a file, half of them are new.
            Path own = Files.createDirectory(folder.resolve(name));
            if (NAMES.indexOf(name) % 2 == 0) {
                Files.writeString(own.resolve(name), "old");
            }
            running.put(name, start(own.resolve(name), SIDE));
        }
        for (String name : NAMES) {
            Process process = running.get(name);
            Path file = folder.resolve(name).resolve(name);
            for (int side = 2 * SIDE; isComplete(process, file) && side <= LARGEST_SIDE; side *= 2) {
                Files.delete(file);
                if (NAMES.indexOf(name) % 2 == 0) {
                    Files.writeString(file, "old");
                }
                process = start(file, side);
            }
            assertEquals(CutShort.DIED, process.waitFor(), name + " was not killed while writing");
            List<Path> left = left(folder.resolve(name));
            boolean part =
                    left.stream().anyMatch(f -> f.getFileName().toString().endsWith(".part"));
            assertTrue(part, name + " was killed before it wrote anything");
            List<Path> whole = left.stream()
                    .filter(f -> !f.getFileName().toString().endsWith(".part"))
                    .toList();
            if (NAMES.indexOf(name) % 2 == 0) {
                assertEquals(1, whole.size(), name);
                assertEquals("old", Files.readString(whole.get(0)), name);
            } else {
                assertEquals(List.of(), whole, name);
            }
        }
    }

    /** Whether a writer finished before it was killed, if only in the moment between. */
    private static boolean isComplete(Process process, Path file) throws Exception {
        return process.waitFor() == 0 || left(file.getParent()).equals(List.of(file));
    }

    private static Process start(Path file, int side) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx1g",
                        "-XX:TieredStopAtLevel=1",
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        CutShort.class.getName(),
                        file.toString(),
                        Integer.toString(side))
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    private static List<Path> left(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }
}
