package org.epochrome.evidence;

import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.epochrome.image.Plane;
import org.epochrome.io.write.PictureWriter;

/** Pieces of HTML. */
final class Html {
    private Html() {}

    /** Text made safe. */
    static String text(String plain) {
        return plain.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }

    /** A number with a true minus sign; a dash if it is not known. */
    static String number(String format, double value) {
        if (!Double.isFinite(value)) {
            return "\u2013";
        }
        String text = String.format(Locale.ROOT, format, value);
        boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return (zero ? text.replace("-", format.contains("+") ? "+" : "") : text).replace('-', '\u2212');
    }

    /** A coordinate in a drawing. */
    static String at(double value) {
        return String.format(Locale.ROOT, "%.2f", value + 0.0);
    }

    /** The address of a picture embedded in the page. */
    static String data(List<Plane> planes) {
        return "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(PictureWriter.embedded(planes, false));
    }

    static String figure(String content, String caption) {
        return "<figure>" + content + "<figcaption>" + caption + "</figcaption></figure>\n";
    }

    static String picture(List<Plane> planes, String description) {
        return "<img src=\"" + data(planes) + "\" width=\"" + planes.get(0).width() + "\" height=\""
                + planes.get(0).height() + "\" alt=\"" + text(description) + "\">";
    }

    /**
     * A table whose first column names the rows; cells are HTML.
     *
     * @param rows each as long as the heads
     */
    static String table(List<String> heads, List<List<String>> rows) {
        return "<table><thead><tr>" + cells("th", heads) + "</tr></thead><tbody>"
                + rows.stream().map(r -> "<tr>" + cells("td", r) + "</tr>").collect(Collectors.joining("\n"))
                + "</tbody></table>\n";
    }

    private static String cells(String kind, List<String> cells) {
        return cells.stream().map(c -> "<" + kind + ">" + c + "</" + kind + ">").collect(Collectors.joining());
    }
}
