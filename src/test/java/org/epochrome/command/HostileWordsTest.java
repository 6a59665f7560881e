package org.epochrome.command;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words from elsewhere do not control the program. */
class HostileWordsTest {
    private static final int INPUT = 3;

    @TempDir
    private Path folder;

    private SmallEvening evening;

    @BeforeEach
    void folder() {
        evening = new SmallEvening(folder);
    }

    /** A name that a glob may give. */
    @Test
    void aFrameWithAnAtSignIsNoFileOfArguments() {
        Path words = evening.text("words", "--frobnicate\n");
        Ran.of("inspect", "@" + words).refuses(INPUT, "words|does not exist");
    }
}
