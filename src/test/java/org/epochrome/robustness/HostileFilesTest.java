package org.epochrome.robustness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whatever is damaged about a file, it is read or refused by a sentence, in bounded time and memory. */
class HostileFilesTest {
    private static final int FILES = 600;

    @TempDir
    private Path folder;

    @ParameterizedTest
    @EnumSource
    void everyDamagedFileIsReadOrRefused(HostileInput kind) throws IOException {
        Onslaught onslaught = Onslaught.of(kind, 1, FILES, folder);
        assertEquals(List.of(), onslaught.faults());
        assertEquals(FILES, onslaught.files());
        assertTrue(onslaught.refused() > FILES / 10, () -> onslaught.refused() + " refused");
        assertTrue(onslaught.refused() < FILES, "nothing was read");
    }
}
