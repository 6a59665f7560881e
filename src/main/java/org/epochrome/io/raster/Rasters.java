package org.epochrome.io.raster;

import java.awt.image.Raster;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;

/** From the rasters of the image libraries to planes. */
final class Rasters {
    private Rasters() {}

    /** The first bands of a raster with their sample values; exact up to 24 bits. */
    static List<Plane> planes(Raster raster, int count) {
        List<Plane> planes = new ArrayList<>();
        int width = raster.getWidth();
        for (int band = 0; band < count; band++) {
            Plane plane = new Plane(width, raster.getHeight());
            float[] row = new float[width];
            for (int y = 0; y < raster.getHeight(); y++) {
                raster.getSamples(raster.getMinX(), raster.getMinY() + y, width, 1, band, row);
                System.arraycopy(row, 0, plane.data(), y * width, width);
            }
            planes.add(plane);
        }
        return planes;
    }
}
