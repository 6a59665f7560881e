package org.epochrome.desktop.style;

import javafx.scene.image.Image;
import javafx.scene.image.PixelWriter;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;

/** The program's sign, painted when it is needed: one disk in three colours that nearly cover each other. */
public final class AppIcon {
    private static final double RADIUS = 0.37;
    /** How far red and blue lie beside green, parts of the width. */
    private static final double APART = 0.07;
    /** The colours add up to a cream white. */
    private static final double[] FULL = {1.0, 0.95, 0.86};

    private AppIcon() {}

    /** The sign as a square of so many pixels, on nothing. */
    public static Image ofSize(int px) {
        WritableImage image = new WritableImage(px, px);
        PixelWriter pen = image.getPixelWriter();
        for (int y = 0; y < px; y++) {
            for (int x = 0; x < px; x++) {
                double[] light = new double[3];
                double covered = 0;
                for (int c = 0; c < 3; c++) {
                    double part = part(x, y, px, (c - 1) * APART);
                    light[c] = FULL[c] * part;
                    covered = Math.max(covered, part);
                }
                pen.setColor(
                        x,
                        y,
                        covered == 0
                                ? Color.TRANSPARENT
                                : Color.color(light[0] / covered, light[1] / covered, light[2] / covered, covered));
            }
        }
        return image;
    }

    /** How much of a pixel a disk beside the middle covers. */
    private static double part(int x, int y, int px, double beside) {
        double dx = x + 0.5 - (0.5 + beside) * px;
        double dy = y + 0.5 - (0.5 + beside) * px;
        return Math.max(0, Math.min(1, RADIUS * px - Math.hypot(dx, dy) + 0.5));
    }
}
