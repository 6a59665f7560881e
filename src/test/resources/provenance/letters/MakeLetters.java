import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.PathIterator;
import java.io.File;
import java.util.Locale;

/** Writes glyph outlines of a font as text: {@code java MakeLetters.java FONT.ttf > letters.txt}. */
public final class MakeLetters {
    public static void main(String[] args) throws Exception {
        Font font = Font.createFont(Font.TRUETYPE_FONT, new File(args[0])).deriveFont(1000f);
        FontRenderContext context = new FontRenderContext(null, true, true);
        StringBuilder characters = new StringBuilder();
        for (char c = ' '; c <= '~'; c++) {
            characters.append(c);
        }
        for (char c : (characters + "\u00b0\u00b7\u2013\u2212\u2033").toCharArray()) {
            if (!font.canDisplay(c)) {
                continue;
            }
            GlyphVector glyph = font.createGlyphVector(context, new char[] {c});
            StringBuilder line = new StringBuilder();
            line.append(String.format("%04x %d", (int) c, Math.round(glyph.getGlyphMetrics(0).getAdvance())));
            double[] p = new double[6];
            for (PathIterator i = glyph.getOutline().getPathIterator(null); !i.isDone(); i.next()) {
                int kind = i.currentSegment(p);
                int points = new int[] {1, 1, 2, 3, 0}[kind];
                line.append(' ').append("MLQCZ".charAt(kind));
                for (int k = 0; k < 2 * points; k++) {
                    line.append(String.format(Locale.ROOT, " %d", Math.round(p[k])));
                }
            }
            System.out.println(line);
        }
    }
}
