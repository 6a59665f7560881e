package org.epochrome.command.option;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import org.epochrome.command.Ran;
import org.epochrome.command.SmallEvening;
import org.epochrome.io.read.FrameReader;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How finished pictures look is chosen by options, and by them only; the linear cube never is. */
@Tag("session")
class FinishOptionsTest {
    @TempDir
    private Path folder;

    private List<Path> frames;

    @BeforeEach
    void soundFrames() {
        SmallEvening evening = new SmallEvening(folder);
        frames = List.of(evening.sound("R"), evening.sound("G"), evening.sound("B"));
    }

    @Test
    void noOptionTouchesTheCube() throws IOException {
        combine("plain.fits", "--detail", "0").succeeds();
        combine(
                        "other.fits",
                        "--threads",
                        "1",
                        "--detail",
                        "1",
                        "--white",
                        "disk",
                        "--saturation",
                        "2",
                        "--orient",
                        "north-up",
                        "--margin",
                        "0.2")
                .succeeds();
        assertArrayEquals(
                Files.readAllBytes(folder.resolve("plain.fits")), Files.readAllBytes(folder.resolve("other.fits")));
    }

    @Test
    void picturesAreFramedAndTheSameWithAnyNumberOfThreads() throws IOException {
        String[] look = {
            "--orient", "south-up", "--margin", "0.3", "--canvas", "200x180", "--caption", "--white-gains", "1.2,1,1.4"
        };
        combine("one.png", join(look, "--threads", "1")).succeeds();
        combine("two.png", join(look, "--threads", "3")).succeeds();
        assertArrayEquals(Files.readAllBytes(folder.resolve("one.png")), Files.readAllBytes(folder.resolve("two.png")));
        assertEquals(200, FrameReader.head(folder.resolve("one.png")).width());
        assertEquals(180, FrameReader.head(folder.resolve("one.png")).height());
    }

    /** The pool that all of Java shares has as many threads as there are processors, so no work may go there. */
    @Test
    void finishingAndWritingKeepToTheThreadsToo() {
        ForkJoinPool.commonPool().awaitQuiescence(10, TimeUnit.SECONDS);
        long before = ForkJoinPool.commonPool().getStealCount();
        combine(
                        "one.png",
                        "--threads",
                        "1",
                        "--out",
                        folder.resolve("one.tif").toString(),
                        "--map",
                        folder.resolve("map.png").toString(),
                        "--report",
                        folder.resolve("one.html").toString())
                .succeeds();
        assertEquals(before, ForkJoinPool.commonPool().getStealCount(), "pieces of work done in the common pool");
    }

    @ParameterizedTest
    @CsvSource({
        "--detail 2,detail|0 and 1",
        "--detail-scale 0,Scale",
        "--brightness 0,brightness",
        "--saturation -1,saturation",
        "--contrast x,--contrast",
        "--white solar,--white-gains|--white-frame",
        "--white disk --white-gains 1;1;1,--white solar",
        "--white-gains 1;2,--white-gains|R|G|B",
        "--canvas big,--canvas|WxH",
        "--margin -1,margin",
        "--orient up,--orient|north-up"
    })
    void wrongUsage(String options, String words) {
        Ran ran = combine("no.png", options.replace(';', ',').split(" ", -1));
        ran.refuses(2, words);
        assertFalse(Files.exists(folder.resolve("no.png")));
    }

    @Test
    void whiteFrameThatIsNotThere() {
        combine(
                        "no.png",
                        "--white",
                        "solar",
                        "--white-frame",
                        folder.resolve("sun.fits").toString())
                .refuses(3, "sun.fits|does not exist");
    }

    private Ran combine(String out, String... options) {
        List<Object> words = new ArrayList<>(List.of("combine", "--quiet", "--out", folder.resolve(out)));
        words.addAll(Arrays.asList(options));
        words.addAll(frames);
        return Ran.of(words.toArray());
    }

    private static String[] join(String[] some, String... more) {
        List<String> all = new ArrayList<>(Arrays.asList(some));
        all.addAll(Arrays.asList(more));
        return all.toArray(new String[0]);
    }
}
