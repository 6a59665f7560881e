package org.epochrome.colour;

/** Brings colours that a screen cannot show into its reach by taking off chroma, not by clipping their parts. */
final class Gamut {
    private static final double EDGE = 1e-9;
    /** How far within the gamut's edge a colour may end, in linear light. */
    private static final double NEAR = 4e-9;

    private static final int STEPS = 24;
    /** Steps that only halve: a colour may leave the gamut and come back, and then one way of searching shall find one edge. */
    private static final int HALVINGS = 5;

    private Gamut() {}

    /**
     * The most colourful linear sRGB of that lightness and hue, up to the chroma given.
     *
     * @param lightness of OKLab, 0 to 1, where grey can always be shown
     * @param colour filled with red, green and blue, each 0 to 1
     */
    static void fit(double lightness, double a, double b, double[] colour) {
        Oklab.toLinear(lightness, a, b, colour);
        double above = beyond(colour);
        if (above <= EDGE) {
            return;
        }
        double grey = lightness * lightness * lightness;
        double below = -Math.min(grey, 1 - grey);
        double fits = 0;
        double tooMuch = 1;
        int side = 0;
        for (int i = 0; i < STEPS; i++) {
            // False position; an end that stays counts half (Dowell & Jarratt 1971, BIT 11, 168), so that both come
            // near.
            double part = i >= HALVINGS && i % 3 < 2 && below < 0 ? below / (below - above) : 0.5;
            double middle = fits + part * (tooMuch - fits);
            Oklab.toLinear(lightness, middle * a, middle * b, colour);
            double beyond = beyond(colour);
            if (beyond <= EDGE) {
                if (beyond > -NEAR) {
                    return;
                }
                fits = middle;
                below = beyond;
                above = side > 0 ? 0.5 * above : above;
                side = 1;
            } else {
                tooMuch = middle;
                above = beyond;
                below = side < 0 ? 0.5 * below : below;
                side = -1;
            }
        }
        Oklab.toLinear(lightness, fits * a, fits * b, colour);
    }

    /** By how much the part that lies farthest out of the gamut does; negative within. */
    private static double beyond(double[] colour) {
        return Math.max(
                -Math.min(colour[0], Math.min(colour[1], colour[2])),
                Math.max(colour[0], Math.max(colour[1], colour[2])) - 1);
    }
}
