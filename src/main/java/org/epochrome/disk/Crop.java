package org.epochrome.disk;

import org.epochrome.image.Binning;
import org.epochrome.image.Plane;

/**
 * The part of a frame around its disk, in units of the disk's brightness above the sky, on binned pixels.
 *
 * @param data the part, a copy
 * @param left frame column of its first column
 * @param top frame row of its first row
 * @param bin frame pixels along the side of one of its own
 */
record Crop(Plane data, int left, int top, int bin) {
    private static final double MARGIN = 0.12;
    private static final int LEAST_MARGIN_PX = 16;

    static Crop around(Plane frame, Disk disk, DiskStart start, int bin) {
        double reach = disk.equatorialRadiusPx() * (1 + MARGIN) + LEAST_MARGIN_PX;
        int left = (int) Math.max(0, Math.floor(disk.x() - reach));
        int top = (int) Math.max(0, Math.floor(disk.y() - reach));
        int right = (int) Math.min(frame.width() - 1, Math.ceil(disk.x() + reach));
        int bottom = (int) Math.min(frame.height() - 1, Math.ceil(disk.y() + reach));
        Plane part = new Plane(right - left + 1, bottom - top + 1);
        for (int y = top; y <= bottom; y++) {
            for (int x = left; x <= right; x++) {
                part.set(x - left, y - top, (float) ((frame.at(x, y) - start.background()) / start.top()));
            }
        }
        return new Crop(Binning.by(bin, part), left, top, bin);
    }

    /** A disk of the frame on the pixels of this part. */
    Disk inward(Disk disk) {
        double half = 0.5 * (bin - 1);
        return new Disk(
                (disk.x() - left - half) / bin,
                (disk.y() - top - half) / bin,
                disk.equatorialRadiusPx() / bin,
                disk.northAngleDeg(),
                disk.mirrored());
    }

    /** A disk on the pixels of this part on the frame. */
    Disk outward(Disk disk) {
        double half = 0.5 * (bin - 1);
        return new Disk(
                disk.x() * bin + half + left,
                disk.y() * bin + half + top,
                disk.equatorialRadiusPx() * bin,
                disk.northAngleDeg(),
                disk.mirrored());
    }
}
