package org.epochrome.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.Random;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.read.FrameReader;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is broken about a file, a reader answers with a proper image or with one sentence. */
class DamagedFilesTest {
    private static final Path FILES = Path.of("src/test/resources/truth/files");

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "uint16.fits",
                "packed.fits.gz",
                "tiles-rice1.fits",
                "u16-ii.tif",
                "magick-lzw.tif",
                "u16-deflate2.tif",
                "f32-deflate3.tif",
                "u16-tiles.tif",
                "pillow-lzw.tif",
                "u16-big.tif",
                "grey16.png",
                "rgb16-interlaced.png"
            })
    void refusesTheFileCutAtEveryLength(String name) throws IOException {
        Path cut = Files.copy(FILES.resolve(name), folder.resolve("cut-" + name));
        int whole = (int) Files.size(cut);
        int refusals = 0;
        try (FileChannel channel = FileChannel.open(cut, StandardOpenOption.WRITE)) {
            for (int length = whole - 1; length >= 0; length--) {
                channel.truncate(length);
                int there = length;
                FrameRefused refused =
                        assertThrows(FrameRefused.class, () -> FrameReader.read(cut), () -> name + " cut to " + there);
                Sentences.assertSentence("cut-" + name, refused);
                refusals++;
            }
        }
        assertEquals(whole, refusals);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "uint16.fits",
                "cube.fits",
                "packed.fits.gz",
                "tiles-rice1.fits",
                "extension.fits",
                "u16-mm.tif",
                "magick-rgb-lzw.tif",
                "rgb16-tiles-deflate2.tif",
                "f32-deflate3.tif",
                "orientation-6.tif",
                "u16-big.tif",
                "rgb8.png",
                "grey16-interlaced.png"
            })
    void survivesRandomBytes(String name) throws IOException {
        byte[] whole = Files.readAllBytes(FILES.resolve(name));
        Path damaged = folder.resolve("damaged-" + name);
        Random random = new Random(name.hashCode());
        int outcomes = 0;
        for (int round = 0; round < 200; round++) {
            byte[] bytes = whole.clone();
            // Headers are where damage bites: half of the hits go into the first 600 bytes.
            int hits = 1 + random.nextInt(4);
            for (int i = 0; i < hits; i++) {
                int within = random.nextBoolean() ? Math.min(600, bytes.length) : bytes.length;
                bytes[random.nextInt(within)] = (byte) random.nextInt(256);
            }
            Files.write(damaged, bytes);
            outcomes += outcome(damaged);
        }
        assertEquals(200, outcomes);
    }

    /** Tiles without extent were once laid beside each other until the memory was full. */
    @ParameterizedTest
    @CsvSource({"ZTILE1,0", "ZTILE2,0", "ZTILE1,-1", "ZTILE2,-23", "ZTILE1,2147483647", "ZTILE2,1.5"})
    void refusesTilesWithoutExtent(String keyword, String side) throws IOException {
        String whole = Files.readString(FILES.resolve("tiles-rice1.fits"), StandardCharsets.ISO_8859_1);
        Path damaged = folder.resolve("tiles.fits");
        int card = whole.indexOf(keyword + "  = ");
        String said = String.format("%-10s%20s%-50s", keyword + "  = ", side, "");
        Files.writeString(
                damaged,
                whole.substring(0, card) + said + whole.substring(card + said.length()),
                StandardCharsets.ISO_8859_1);
        FrameRefused refused = assertTimeoutPreemptively(
                Duration.ofSeconds(20), () -> assertThrows(FrameRefused.class, () -> FrameReader.head(damaged)));
        Sentences.assertSentence("tiles.fits", refused);
        assertTrue(refused.getMessage().contains(keyword), refused.getMessage());
    }

    /** 1 for a proper image or a proper refusal; anything else fails. */
    private static int outcome(Path file) {
        try {
            FrameFile frame = FrameReader.read(file);
            assertEquals(frame.head().planeCount(), frame.planes().size());
            for (Plane plane : frame.planes()) {
                assertEquals(frame.head().width(), plane.width());
                assertEquals(frame.head().height(), plane.height());
                for (float value : plane.data()) {
                    assertTrue(!Float.isInfinite(value));
                }
            }
        } catch (FrameRefused refused) {
            Sentences.assertSentence(file.getFileName().toString(), refused);
        }
        return 1;
    }
}
