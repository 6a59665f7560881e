package org.epochrome.io.read;

import java.io.EOFException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.fits.FitsFrame;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.head.FrameFormat;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.head.OpenedFrame;
import org.epochrome.io.raster.PngFrame;
import org.epochrome.io.raster.TiffFrame;
import org.epochrome.text.Message;

/**
 * Reads frames from FITS (also gzipped or tile-compressed), TIFF and PNG files, recognised by their content. Whatever is
 * wrong with a file, the only exception is {@link FrameRefused}.
 */
public final class FrameReader {
    private FrameReader() {}

    /**
     * Reads the description of an image from its file. The pixels are not decoded, but their place in the file is checked.
     *
     * @throws FrameRefused if the file is missing, damaged or not a frame
     */
    public static FrameHead head(Path file) {
        return guarded(file, () -> open(file).head());
    }

    /**
     * Reads an image with its pixels.
     *
     * @throws FrameRefused if the file is missing, damaged, not a frame, or has no pixel with a number
     */
    public static FrameFile read(Path file) {
        return guarded(file, () -> {
            FileTime before = Files.getLastModifiedTime(file);
            OpenedFrame opened = open(file);
            List<Plane> planes = opened.planes();
            if (!Files.getLastModifiedTime(file).equals(before)) {
                throw new FrameRefused(file, Message.of("frame.changed"));
            }
            List<Message> notes = new ArrayList<>(opened.head().notes());
            markInfiniteAsMissing(file, planes, notes);
            return new FrameFile(opened.head(), planes, notes);
        });
    }

    private static OpenedFrame open(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            throw new FrameRefused(file, Message.of("frame.isFolder"));
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new FrameRefused(file, Message.of("frame.notRegular"));
        }
        return switch (FrameFormat.of(file)) {
            case FITS -> FitsFrame.open(file);
            case TIFF -> TiffFrame.open(file);
            case PNG -> PngFrame.open(file);
        };
    }

    /** Infinite and absent values are both "no data" from here on. */
    private static void markInfiniteAsMissing(Path file, List<Plane> planes, List<Message> notes) {
        long missing = 0;
        long all = 0;
        for (Plane plane : planes) {
            float[] data = plane.data();
            all += data.length;
            for (int i = 0; i < data.length; i++) {
                if (!Float.isFinite(data[i])) {
                    data[i] = Float.NaN;
                    missing++;
                }
            }
        }
        if (missing == all) {
            throw new FrameRefused(file, Message.of("frame.noValues"));
        }
        if (missing > 0) {
            notes.add(Message.of(missing == 1 ? "frame.noValue" : "frame.missingValues", missing));
        }
    }

    /** A step of reading. */
    @FunctionalInterface
    private interface Step<T> {
        T run() throws IOException;
    }

    /** Turns every failure of the libraries underneath into a sentence. */
    private static <T> T guarded(Path file, Step<T> step) {
        try {
            return step.run();
        } catch (FrameRefused e) {
            throw e;
        } catch (NoSuchFileException e) {
            throw new FrameRefused(file, Message.of("file.absent"), e);
        } catch (AccessDeniedException e) {
            throw new FrameRefused(file, Message.of("frame.permissions"), e);
        } catch (EOFException e) {
            throw new FrameRefused(file, Message.of("frame.short"), e);
        } catch (IOException | RuntimeException e) {
            throw new FrameRefused(file, Message.of("frame.damaged"), e);
        } catch (OutOfMemoryError e) {
            // One large array did not fit; nothing else is lost by it.
            throw new FrameRefused(file, Message.of("frame.doesNotFit"), e);
        }
    }
}
