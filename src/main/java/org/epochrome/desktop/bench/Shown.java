package org.epochrome.desktop.bench;

import java.nio.IntBuffer;
import java.time.Instant;
import java.util.List;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * A picture ready for the screen.
 *
 * @param argb its pixels, opaque
 * @param width pixels
 * @param height pixels
 * @param factor how many pixels of the full picture one of its pixels is wide
 * @param disk where the disk lies on the full picture's pixels
 * @param aspect how the body stands in it
 * @param epoch the instant that it shows
 */
public record Shown(IntBuffer argb, int width, int height, int factor, Disk disk, Aspect aspect, Instant epoch) {

    /** From display-encoded planes: one for grey, three for colours. */
    public static Shown of(List<Plane> planes, int factor, Disk disk, Aspect aspect, Instant epoch) {
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
        return new Shown(IntBuffer.wrap(argb), width, red.height(), factor, disk, aspect, epoch);
    }

    private static int byteOf(float value) {
        return Float.isNaN(value) ? 0 : Math.max(0, Math.min(255, Math.round(255 * value)));
    }

    /** Where the disk lies on its own pixels, as one on the full picture's. */
    public static Disk unbinned(Disk d, int factor) {
        double middle = 0.5 * (factor - 1);
        return new Disk(
                d.x() * factor + middle,
                d.y() * factor + middle,
                d.equatorialRadiusPx() * factor,
                d.northAngleDeg(),
                d.mirrored());
    }
}
