package org.epochrome.evidence;

import org.epochrome.disk.Disk;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;

/**
 * A square window around a disk, on pixels coarse enough to be small.
 *
 * @param left column of its first pixel in the picture, may be negative
 * @param top row of its first pixel
 * @param size side in the picture's pixels, a multiple of the factor
 * @param factor how many of the picture's pixels become one
 */
record Crop(int left, int top, int size, int factor) {
    static Crop around(Disk disk, double reach, int mostPx) {
        double half = reach * disk.equatorialRadiusPx();
        int factor = (int) Math.max(1, Math.ceil(2 * half / mostPx));
        int size = (int) Math.ceil(2 * half / factor) * factor;
        return new Crop((int) Math.floor(disk.x() - 0.5 * size), (int) Math.floor(disk.y() - 0.5 * size), size, factor);
    }

    /** The window of a plane; what lies outside the plane, and what holds no data, is black. */
    Plane of(Plane plane) {
        Plane window = new Plane(size, size);
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++) {
                int column = left + x;
                int row = top + y;
                boolean inside = column >= 0 && row >= 0 && column < plane.width() && row < plane.height();
                float value = inside ? plane.at(column, row) : 0;
                window.set(x, y, Float.isNaN(value) ? 0 : value);
            }
        }
        return Binning.by(factor, window);
    }

    int sizePx() {
        return size / factor;
    }

    /** Where a column of the picture lies in the window, from its left edge. */
    double x(double column) {
        return (column + 0.5 - left) / factor;
    }

    /** Where a row of the picture lies in the window, from its top edge. */
    double y(double row) {
        return (row + 0.5 - top) / factor;
    }
}
