package org.epochrome.robustness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session that was saved, or written down for recovery, survives the program's death at any moment. */
class KillsTest {
    private static final int KILLS = 4;

    @TempDir
    private Path folder;

    @Test
    void nothingSavedIsLost() throws Exception {
        Kills kills = Kills.of(KILLS, folder, 1);
        assertEquals(List.of(), kills.faults());
        assertTrue(kills.saved() >= KILLS, () -> kills.saved() + " sessions were saved");
    }
}
