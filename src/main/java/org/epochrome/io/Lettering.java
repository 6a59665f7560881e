package org.epochrome.io;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.StringTokenizer;
import org.epochrome.image.Plane;

/**
 * Writes lines of text on planes. The letters' outlines come with the program and are drawn by it, so the same text has
 * the same pixels on every machine, whatever fonts it has.
 */
public final class Lettering {
    /** Units of the outlines per size of the letters. */
    private static final double EM = 1000;

    private static final double LINE = 1.35;
    private static final int FINE = 5;
    private static final Map<Character, Glyph> GLYPHS = glyphs();

    private Lettering() {}

    /** An outline, y downward from the line that letters stand on, and how far the next letter stands away. */
    private record Glyph(Path2D outline, double advance) {}

    /** Width of a text, in sizes of its letters. */
    public static double width(String text) {
        return text.chars().mapToDouble(c -> glyph((char) c).advance()).sum() / EM;
    }

    /** Height that lines take, in sizes of their letters. */
    public static double height(int lines) {
        return LINE * lines;
    }

    /**
     * Draws lines over what is there.
     *
     * @param planes of one size, all treated alike
     * @param left of the first letters, pixels
     * @param top of the first line
     * @param sizePx of the letters
     * @param level what the letters get, display-encoded
     */
    public static void draw(
            List<Plane> planes, List<String> lines, double left, double top, double sizePx, float level) {
        for (int i = 0; i < lines.size(); i++) {
            double x = left;
            double y = top + (LINE * i + 1) * sizePx;
            String line = lines.get(i);
            for (int k = 0; k < line.length(); k++) {
                Glyph glyph = glyph(line.charAt(k));
                draw(planes, glyph, x, y, sizePx / EM, level);
                x += glyph.advance() * sizePx / EM;
            }
        }
    }

    private static Glyph glyph(char c) {
        return GLYPHS.getOrDefault(c, Objects.requireNonNull(GLYPHS.get('?')));
    }

    private static void draw(List<Plane> planes, Glyph glyph, double x, double y, double scale, float level) {
        Plane first = planes.get(0);
        Rectangle2D box = glyph.outline().getBounds2D();
        int left = Math.max(0, (int) Math.floor(x + scale * box.getMinX()));
        int right = Math.min(first.width() - 1, (int) Math.ceil(x + scale * box.getMaxX()));
        int top = Math.max(0, (int) Math.floor(y + scale * box.getMinY()));
        int bottom = Math.min(first.height() - 1, (int) Math.ceil(y + scale * box.getMaxY()));
        for (int row = top; row <= bottom; row++) {
            for (int column = left; column <= right; column++) {
                float covered = covered(glyph, column - x, row - y, scale);
                if (covered > 0) {
                    for (Plane plane : planes) {
                        float below = plane.at(column, row);
                        plane.set(column, row, below + covered * (level - below));
                    }
                }
            }
        }
    }

    /** Which part of a pixel lies within an outline. */
    private static float covered(Glyph glyph, double x, double y, double scale) {
        int inside = 0;
        for (int j = 0; j < FINE; j++) {
            for (int i = 0; i < FINE; i++) {
                double fx = (x + (i + 0.5) / FINE - 0.5) / scale;
                double fy = (y + (j + 0.5) / FINE - 0.5) / scale;
                inside += glyph.outline().contains(fx, fy) ? 1 : 0;
            }
        }
        return inside / (float) (FINE * FINE);
    }

    private static Map<Character, Glyph> glyphs() {
        Map<Character, Glyph> glyphs = new HashMap<>();
        try (InputStream in = Objects.requireNonNull(Lettering.class.getResourceAsStream("letters.txt"));
                BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (!line.startsWith("#")) {
                    StringTokenizer words = new StringTokenizer(line);
                    char c = (char) Integer.parseInt(words.nextToken(), 16);
                    double advance = Double.parseDouble(words.nextToken());
                    glyphs.put(c, new Glyph(outline(words), advance));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return glyphs;
    }

    private static Path2D outline(StringTokenizer words) {
        Path2D outline = new Path2D.Double(Path2D.WIND_NON_ZERO);
        while (words.hasMoreTokens()) {
            String step = words.nextToken();
            switch (step) {
                case "M" -> outline.moveTo(next(words), next(words));
                case "L" -> outline.lineTo(next(words), next(words));
                case "Q" -> outline.quadTo(next(words), next(words), next(words), next(words));
                case "Z" -> outline.closePath();
                default -> throw new IllegalStateException("no step of an outline: " + step);
            }
        }
        return outline;
    }

    private static double next(StringTokenizer words) {
        return Double.parseDouble(words.nextToken());
    }
}
