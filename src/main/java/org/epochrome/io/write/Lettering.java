package org.epochrome.io.write;

import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
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
    /** How far straight pieces may lie off an outline, units. */
    private static final double FLATNESS = 0.2;

    private static final Map<Character, Glyph> GLYPHS = glyphs();

    private Lettering() {}

    /** An outline's edges, y downward from the line that letters stand on, and how far the next letter stands away. */
    private record Glyph(List<Edge> edges, Rectangle2D box, double advance) {}

    /** A straight piece of an outline. */
    private record Edge(double x, double y, double toX, double toY) {
        boolean crosses(double level) {
            return (y <= level) != (toY <= level);
        }

        Crossing at(double level) {
            return new Crossing(x + (level - y) / (toY - y) * (toX - x), toY > y ? 1 : -1);
        }
    }

    /** Where a row crosses an outline, and which way the outline goes there. */
    private record Crossing(double x, int way) {}

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
        Rectangle2D box = glyph.box();
        int left = Math.max(0, (int) Math.floor(x + scale * box.getMinX()));
        int right = Math.min(first.width() - 1, (int) Math.ceil(x + scale * box.getMaxX()));
        int top = Math.max(0, (int) Math.floor(y + scale * box.getMinY()));
        int bottom = Math.min(first.height() - 1, (int) Math.ceil(y + scale * box.getMaxY()));
        for (int row = top; row <= bottom && left <= right; row++) {
            int[] inside = new int[right - left + 1];
            for (int j = 0; j < FINE; j++) {
                double fine = (row - y + (j + 0.5) / FINE - 0.5) / scale;
                count(inside, glyph, fine, scale, x - left);
            }
            for (int column = left; column <= right; column++) {
                float covered = inside[column - left] / (float) (FINE * FINE);
                if (covered > 0) {
                    for (Plane plane : planes) {
                        float below = plane.at(column, row);
                        plane.set(column, row, below + covered * (level - below));
                    }
                }
            }
        }
    }

    /**
     * Counts how many fine places of a row's pixels lie within an outline.
     *
     * @param level height of the row, units of the outline
     * @param x where the glyph begins, pixels from the first that is counted
     */
    private static void count(int[] inside, Glyph glyph, double level, double scale, double x) {
        List<Crossing> crossings = new ArrayList<>();
        for (Edge edge : glyph.edges()) {
            if (edge.crosses(level)) {
                crossings.add(edge.at(level));
            }
        }
        crossings.sort(Comparator.comparingDouble(Crossing::x));
        int winding = 0;
        for (int i = 0; i + 1 < crossings.size(); i++) {
            winding += crossings.get(i).way();
            if (winding != 0) {
                int from = Math.max(0, fine(x + scale * crossings.get(i).x()));
                int to = Math.min(
                        FINE * inside.length,
                        fine(x + scale * crossings.get(i + 1).x()));
                for (int k = from; k < to; k++) {
                    inside[k / FINE]++;
                }
            }
        }
    }

    /** The first fine place at or right of a place, pixels from the first that is counted. */
    private static int fine(double at) {
        return (int) Math.ceil(FINE * (at + 0.5) - 0.5);
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
                    Path2D outline = outline(words);
                    glyphs.put(c, new Glyph(edges(outline), outline.getBounds2D(), advance));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return glyphs;
    }

    private static List<Edge> edges(Path2D outline) {
        List<Edge> edges = new ArrayList<>();
        double[] to = new double[6];
        double[] start = new double[2];
        double[] last = new double[2];
        for (PathIterator it = outline.getPathIterator(null, FLATNESS); !it.isDone(); it.next()) {
            int step = it.currentSegment(to);
            if (step == PathIterator.SEG_MOVETO) {
                start = new double[] {to[0], to[1]};
                last = start;
            } else {
                double[] next = step == PathIterator.SEG_CLOSE ? start : new double[] {to[0], to[1]};
                edges.add(new Edge(last[0], last[1], next[0], next[1]));
                last = next;
            }
        }
        return List.copyOf(edges);
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
