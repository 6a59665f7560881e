package org.epochrome.io.file;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.epochrome.io.Sentences;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is made is never what it is made from, however its path is written. */
class OverwriteGuardTest {
    @TempDir
    private Path folder;

    private Path input;

    @BeforeEach
    void input() throws IOException {
        input = Files.writeString(folder.resolve("in.fits"), "raw");
    }

    private void refused(String words, Path... outputs) {
        OutputRefused refused =
                assertThrows(OutputRefused.class, () -> OverwriteGuard.check(List.of(outputs), List.of(input)));
        Sentences.assertSentence(outputs[outputs.length - 1].getFileName().toString(), refused);
        assertTrue(refused.getMessage().contains(words), refused.getMessage());
    }

    @Test
    void otherNamesAreFree() {
        List<Path> free = List.of(folder.resolve("a.png"), folder.resolve("new/a.png"), folder.resolve("new/b.png"));
        assertDoesNotThrow(() -> OverwriteGuard.check(free, List.of(input)));
    }

    @Test
    void anInputByAnyPath() throws IOException {
        Files.createDirectory(folder.resolve("sub"));
        Path linked = Files.createSymbolicLink(folder.resolve("linked"), folder);
        refused("is also an input", input);
        refused("is also an input", folder.resolve("sub/../in.fits"));
        refused("is also an input", linked.resolve("in.fits"));
        refused("is also an input", Files.createSymbolicLink(folder.resolve("soft.fits"), input));
        refused("is also an input", Files.createLink(folder.resolve("hard.fits"), input));
    }

    @Test
    void whatLiesOutsideAFolder() throws IOException {
        Path inside = Files.createDirectory(folder.resolve("inside"));
        Path link = Files.createSymbolicLink(inside.resolve("link"), folder);
        List<Path> within = List.of(inside.resolve("a.png"), inside.resolve("new/b.png"), link.resolve("inside/c.png"));
        assertEquals(Optional.empty(), OverwriteGuard.firstOutside(within, inside));
        for (Path out : List.of(
                inside.resolve("../a.png"),
                inside.resolve("new/../../a.png"),
                link.resolve("a.png"),
                folder.resolve("inside2/a.png"))) {
            assertEquals(Optional.of(out), OverwriteGuard.firstOutside(List.of(within.get(0), out), inside));
        }
    }

    /** A frame that a session lists may be missing for the moment. */
    @Test
    void anInputThatIsNotThere() {
        Path gone = folder.resolve("gone.fits");
        assertThrows(
                OutputRefused.class, () -> OverwriteGuard.check(List.of(folder.resolve("./gone.fits")), List.of(gone)));
    }

    @Test
    void anOutputNamedTwice() throws IOException {
        Path linked = Files.createSymbolicLink(folder.resolve("linked"), folder);
        refused("two outputs", folder.resolve("a.png"), folder.resolve("a.png"));
        refused("two outputs", folder.resolve("new/a.png"), linked.resolve("new/./a.png"));
        Path one = Files.writeString(folder.resolve("one.png"), "old");
        refused("two outputs", one, Files.createLink(folder.resolve("two.png"), one));
    }

    @Test
    void whatIsNoRegularFile() throws IOException, InterruptedException {
        refused("folder", Files.createDirectory(folder.resolve("folder.png")));
        refused("not a regular file", Files.createSymbolicLink(folder.resolve("loose.png"), folder.resolve("no.png")));
        Path pipe = folder.resolve("pipe.png");
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "no pipes here");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        refused("not a regular file", pipe);
        OutputRefused written = assertThrows(
                OutputRefused.class, () -> AtomicFile.write(pipe, true, part -> Files.writeString(part, "x")));
        assertTrue(written.getMessage().contains("not a regular file"), written.getMessage());
    }
}
