package org.epochrome.disk;

/** Draws points of light onto a picture: each is shared among the four pixels around it. */
public final class BilinearShare {
    /** The variance of what a point becomes, in square pixels along each axis, its places taken together. */
    public static final double VARIANCE = 1 / 6.0;

    private BilinearShare() {}

    /**
     * Adds light.
     *
     * @param picture rows of {@code width} pixels
     * @param p number of the pixel above and left of the point, which has a right neighbour and one below
     * @param fx how far right of that pixel's centre the point lies, 0 to 1
     * @param fy how far below
     */
    public static void add(float[] picture, int width, int p, double fx, double fy, double light) {
        double lower = light * fy;
        double upper = light - lower;
        picture[p] += (float) (upper * (1 - fx));
        picture[p + 1] += (float) (upper * fx);
        picture[p + width] += (float) (lower * (1 - fx));
        picture[p + width + 1] += (float) (lower * fx);
    }
}
