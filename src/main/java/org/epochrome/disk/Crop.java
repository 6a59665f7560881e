package org.epochrome.disk;

import org.epochrome.image.Plane;

/**
 * The part of a frame around its disk, in units of the disk's brightness above the sky.
 *
 * @param data the part, a copy
 * @param left frame column of its first column
 * @param top frame row of its first row
 */
record Crop(Plane data, int left, int top) {
    private static final double MARGIN = 0.12;
    private static final int LEAST_MARGIN_PX = 16;

    static Crop around(Plane frame, Disk disk, DiskStart start) {
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
        return new Crop(part, left, top);
    }
}
