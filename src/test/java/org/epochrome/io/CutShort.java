package org.epochrome.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.epochrome.image.Plane;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.fits.FitsImage;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.AnimationWriter;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.io.write.PictureWriter;

/**
 * A program that dies while it writes: it starts to write a large file by the writer that the name asks for, and halts its
 * Java as soon as some of the temporary file is on the disk, like a power cut: nothing is flushed, no finally block runs.
 */
final class CutShort {
    /** What the program exits with if it died in the middle. */
    static final int DIED = 99;

    private static final int LEVELS = 16;
    private static final int SOME_BYTES = 8192;

    private CutShort() {}

    /** The arguments are the file to write and how many pixels the picture has a side. */
    public static void main(String[] args) throws IOException {
        Path file = Path.of(args[0]);
        Random random = new Random(1);
        int side = Integer.parseInt(args[1]);
        Plane noise = new Plane(side, side);
        for (int i = 0; i < noise.data().length; i++) {
            noise.data()[i] = random.nextInt(LEVELS) / (float) LEVELS;
        }
        List<Plane> planes = List.of(noise, noise, noise);
        PictureWriter.Caption caption = new PictureWriter.Caption("noise", Optional.of(Instant.EPOCH), "test");
        dieOnceSomethingIsThere(file);
        String name = file.getFileName().toString();
        if (name.endsWith(".fits")) {
            FitsWriter.write(file, Collections.nCopies(20, new FitsImage("", planes, List.of(), List.of())), true);
        } else if (name.startsWith("frame")) {
            FrameWriter.write(file, noise, List.of(), true);
        } else if (name.startsWith("turning")) {
            AnimationWriter.write(file, Collections.nCopies(20, new AnimationWriter.Still(planes, 8)), caption, true);
        } else if (name.endsWith(".html")) {
            byte[] text = "evidence ".repeat(8 * side * side).getBytes(StandardCharsets.US_ASCII);
            AtomicFile.write(file, true, part -> Files.write(part, text));
        } else {
            PictureWriter.write(file, planes, caption, true);
        }
    }

    private static void dieOnceSomethingIsThere(Path file) {
        Thread death = new Thread(() -> {
            while (true) {
                try (DirectoryStream<Path> parts = Files.newDirectoryStream(file.getParent(), ".epochrome-*.part")) {
                    for (Path part : parts) {
                        if (Files.size(part) >= SOME_BYTES) {
                            Runtime.getRuntime().halt(DIED);
                        }
                    }
                } catch (IOException e) {
                    // The temporary file was renamed meanwhile: too late, which the exit code tells.
                }
                Thread.onSpinWait();
            }
        });
        death.setDaemon(true);
        death.start();
    }
}
