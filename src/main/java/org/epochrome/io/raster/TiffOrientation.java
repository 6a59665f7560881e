package org.epochrome.io.raster;

import org.epochrome.image.Plane;

/**
 * Where the first row and column of a TIFF image belong on the screen (TIFF 6.0, field Orientation).
 *
 * @param code 1 to 8 as in the field
 */
record TiffOrientation(int code) {

    /** Whether rows are displayed as columns. */
    boolean swapsSides() {
        return code >= 5;
    }

    /** The image as it is to be displayed. */
    Plane upright(Plane stored) {
        if (code == 1) {
            return stored;
        }
        int right = stored.width() - 1;
        int bottom = stored.height() - 1;
        Plane shown =
                swapsSides() ? new Plane(stored.height(), stored.width()) : new Plane(stored.width(), stored.height());
        for (int y = 0; y <= bottom; y++) {
            for (int x = 0; x <= right; x++) {
                float value = stored.at(x, y);
                switch (code) {
                    case 2 -> shown.set(right - x, y, value);
                    case 3 -> shown.set(right - x, bottom - y, value);
                    case 4 -> shown.set(x, bottom - y, value);
                    case 5 -> shown.set(y, x, value);
                    case 6 -> shown.set(bottom - y, x, value);
                    case 7 -> shown.set(bottom - y, right - x, value);
                    default -> shown.set(y, right - x, value);
                }
            }
        }
        return shown;
    }
}
