package org.epochrome.desktop.render;

import java.nio.IntBuffer;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.evidence.LimbStrip;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * A picture ready for the screen.
 *
 * @param argb its pixels, opaque
 * @param levels the same, and on coarser pixels
 * @param width pixels
 * @param height pixels
 * @param factor how many pixels of the full picture one of its pixels is wide
 * @param disk where the disk lies on the full picture's pixels
 * @param aspect how the body stands in it
 * @param epoch the instant that it shows
 * @param form whether it is the sky as it was shot
 * @param strip what its columns and rows mean if it is the limb unrolled
 */
public record ScreenPicture(
        IntBuffer argb,
        List<MipMap.Level> levels,
        int width,
        int height,
        int factor,
        Disk disk,
        Aspect aspect,
        Instant epoch,
        Form form,
        Optional<LimbStrip> strip) {

    /** What a picture is of. */
    public enum Form {
        /** The sky on the pixels of a frame. */
        SKY,
        /** The finished picture within the edges that it is saved with. */
        FRAMED,
        /** The limb unrolled. */
        STRIP,
        /** A map, or a still of the turning globe. */
        GLOBE
    }

    /** Whether it is the same picture: millions of pixels are not compared. */
    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }

    /** The picture within the edges that it is saved with. */
    ScreenPicture framed() {
        return new ScreenPicture(argb, levels, width, height, factor, disk, aspect, epoch, Form.FRAMED, strip);
    }

    /** The picture as one of the whole globe. */
    ScreenPicture mapped() {
        return new ScreenPicture(argb, levels, width, height, factor, disk, aspect, epoch, Form.GLOBE, strip);
    }

    /** The limb of the picture, unrolled. */
    ScreenPicture unrolled(LimbStrip meaning) {
        return new ScreenPicture(
                argb, levels, width, height, factor, disk, aspect, epoch, Form.STRIP, Optional.of(meaning));
    }

    /** From display-encoded planes: one for grey, three for colours. */
    public static ScreenPicture of(List<Plane> planes, int factor, Disk disk, Aspect aspect, Instant epoch) {
        Plane red = planes.get(0);
        Plane green = planes.get(planes.size() == 1 ? 0 : 1);
        Plane blue = planes.get(planes.size() == 1 ? 0 : 2);
        int width = red.width();
        int[] argb = new int[width * red.height()];
        Rows.each(red.height(), (from, to) -> {
            for (int i = from * width; i < to * width; i++) {
                argb[i] = 0xff000000
                        | byteOf(red.data()[i]) << 16
                        | byteOf(green.data()[i]) << 8
                        | byteOf(blue.data()[i]);
            }
        });
        IntBuffer pixels = IntBuffer.wrap(argb);
        List<MipMap.Level> levels = MipMap.of(pixels, width, red.height());
        return new ScreenPicture(
                pixels, levels, width, red.height(), factor, disk, aspect, epoch, Form.SKY, Optional.empty());
    }

    private static int byteOf(float value) {
        return Float.isNaN(value) ? 0 : Math.max(0, Math.min(255, Math.round(255 * value)));
    }
}
