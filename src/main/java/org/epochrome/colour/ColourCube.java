package org.epochrome.colour;

import java.util.List;
import org.epochrome.image.Plane;

/**
 * A linear colour picture: brightness above the sky in red, green and blue, before any white balance or tone curve, as
 * parts of the cameras' full scale; NaN where there is no data.
 */
public record ColourCube(Plane red, Plane green, Plane blue) {
    public ColourCube {
        if (!red.sameSize(green) || !red.sameSize(blue)) {
            throw new IllegalArgumentException("The planes of a colour cube must have the same size.");
        }
    }

    public List<Plane> planes() {
        return List.of(red, green, blue);
    }

    /** Whether a pixel holds data in all three planes. */
    public boolean isWhole(int pixel) {
        return !Float.isNaN(red.data()[pixel] + green.data()[pixel] + blue.data()[pixel]);
    }

    public int width() {
        return red.width();
    }

    public int height() {
        return red.height();
    }
}
