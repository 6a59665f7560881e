package org.epochrome.desktop.render;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.ForkJoinPool;
import org.epochrome.job.CancelledException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is done while the window waits: it must work, or it helps nobody, and leave nothing behind. */
class WarmUpTest {
    @TempDir
    private Path home;

    private final ForkJoinPool quick = new ForkJoinPool(1);

    @Test
    void makesPicturesAndLeavesNothing() throws IOException {
        Path folder = home.resolve("rehearsal");
        assertTrue(new WarmUp(folder, quick).play() > 0);
        assertFalse(Files.exists(folder));
    }

    @Test
    void makesWay() {
        Path folder = home.resolve("rehearsal");
        WarmUp rehearsal = new WarmUp(folder, quick);
        rehearsal.end();
        assertThrows(CancelledException.class, rehearsal::play);
        assertFalse(Files.exists(folder));
    }
}
