package org.epochrome.colour;

/** Brings colours that a screen cannot show into its reach by taking off chroma, not by clipping their parts. */
final class Gamut {
    private static final double EDGE = 1e-9;
    private static final int HALVINGS = 24;

    private Gamut() {}

    /**
     * The most colourful linear sRGB of that lightness and hue, up to the chroma given.
     *
     * @param lightness of OKLab, 0 to 1, where grey can always be shown
     * @param colour filled with red, green and blue, each 0 to 1
     */
    static void fit(double lightness, double a, double b, double[] colour) {
        Oklab.toLinear(lightness, a, b, colour);
        if (inside(colour)) {
            return;
        }
        double fits = 0;
        double tooMuch = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (fits + tooMuch);
            Oklab.toLinear(lightness, middle * a, middle * b, colour);
            if (inside(colour)) {
                fits = middle;
            } else {
                tooMuch = middle;
            }
        }
        Oklab.toLinear(lightness, fits * a, fits * b, colour);
    }

    private static boolean inside(double[] colour) {
        return Math.min(colour[0], Math.min(colour[1], colour[2])) >= -EDGE
                && Math.max(colour[0], Math.max(colour[1], colour[2])) <= 1 + EDGE;
    }
}
