package org.epochrome.session.schedule;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExposureReaderTest {
    private static final Instant START = Instant.parse("2031-05-02T21:14:05Z");
    private static final int SIDE = 32;

    @TempDir
    private static Path folder;

    /** A colour frame with a gradient of its own in each plane. */
    private static Path written(String name) throws IOException {
        BufferedImage image = new BufferedImage(SIDE, SIDE, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                image.setRGB(x, y, ((2 * x) << 16) | ((3 * y) << 8) | (100 + x + y));
            }
        }
        Path file = folder.resolve(name);
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    private static Schedule schedule(Path file) {
        SheetRow row = new SheetRow(
                file, Optional.of("RGB"), Optional.of(new RecordingSpan(START, START.plusSeconds(120))), "sheet");
        return Schedule.of(
                Recipe.usual(Frames.found(List.of(FrameRequest.of(row)), Conventions.UNKNOWN), Body.JUPITER));
    }

    @Test
    void aColourFileIsDecodedOnceForItsThreePlanes() throws IOException {
        Path file = written("once.png");
        Schedule schedule = schedule(file);
        ExposureReader reader = new ExposureReader(schedule);
        float[] red = reader.read(0).data();
        float[] green = schedule.exposures().get(1).load().data();
        float[] blue = schedule.exposures().get(2).load().data();
        Files.delete(file);
        assertArrayEquals(green, reader.read(1).data());
        assertArrayEquals(blue, reader.read(2).data());
        assertEquals(2 * 5 / 255f, red[7 * SIDE + 5], 1e-6);
        assertThrows(FrameRefused.class, () -> reader.read(0), "the file is read again if a plane was not kept");
    }

    @Test
    void aPlaneThatWasNotKeptIsReadAgain() throws IOException {
        ExposureReader reader = new ExposureReader(schedule(written("again.png")));
        assertArrayEquals(reader.read(2).data(), reader.read(2).data());
    }
}
