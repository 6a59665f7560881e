package org.epochrome.desktop.style;

import javafx.scene.paint.Color;
import org.epochrome.colour.Spectral;
import org.epochrome.image.Passband;

/**
 * Colours of what is painted, not styled, by theme.
 *
 * @param paper behind the ribbon
 * @param ink text
 * @param faint lines that stand back
 * @param line lines over the picture
 * @param accent what is chosen
 * @param warm what is moved by hand, or uncertain
 */
public record Palette(Color paper, Color ink, Color faint, Color line, Color accent, Color warm) {
    /** A filter's colour, for lines and dots that must stand out. */
    public Color of(Passband passband) {
        double[] rgb = Spectral.colour(passband);
        if (equals(RED)) {
            return Color.color(0.4 + 0.5 * rgb[0], 0.15 + 0.2 * rgb[1], 0.1);
        }
        Color full = Color.color(rgb[0], rgb[1], rgb[2]);
        return equals(LIGHT) ? full.deriveColor(0, 0.9, 0.75, 1) : full.deriveColor(0, 0.66, 1.1, 1);
    }

    public static final Palette DARK = new Palette(
            Color.web("#16191f"),
            Color.web("#d7dbe2"),
            Color.web("#4a515d"),
            Color.web("#c9d6ea"),
            Color.web("#58c4dc"),
            Color.web("#f0b14a"));
    public static final Palette LIGHT = new Palette(
            Color.web("#f3f4f6"),
            Color.web("#1d2126"),
            Color.web("#b3bac4"),
            Color.web("#e6eefb"),
            Color.web("#0b7f9c"),
            Color.web("#b96a00"));
    public static final Palette RED = new Palette(
            Color.web("#0c0202"),
            Color.web("#e04a3a"),
            Color.web("#5a1812"),
            // Lines lie under the red shade, and on a red planet.
            Color.WHITE,
            Color.web("#ff5a45"),
            Color.web("#ff7a4c"));
}
