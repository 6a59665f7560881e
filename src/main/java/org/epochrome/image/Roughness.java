package org.epochrome.image;

/**
 * A difference of a pixel and its eight neighbours that planes and slopes leave at zero, so that noise makes most of it
 * (Immerkaer 1996, Computer Vision and Image Understanding 64, 300).
 */
public final class Roughness {
    /** What white noise of a standard deviation of 1 makes of it. */
    public static final double OF_NOISE = 6;

    private Roughness() {}

    /** The difference at a pixel that has neighbours on all sides; NaN if one of them holds no data. */
    public static double at(Plane p, int x, int y) {
        return p.at(x - 1, y - 1)
                + p.at(x + 1, y - 1)
                + p.at(x - 1, y + 1)
                + p.at(x + 1, y + 1)
                - 2 * (p.at(x, y - 1) + p.at(x - 1, y) + p.at(x + 1, y) + p.at(x, y + 1))
                + 4 * p.at(x, y);
    }
}
