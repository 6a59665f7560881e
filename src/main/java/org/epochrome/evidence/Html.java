package org.epochrome.evidence;

import static org.epochrome.evidence.Markup.attribute;
import static org.epochrome.evidence.Markup.element;

import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.epochrome.image.Plane;
import org.epochrome.io.write.PictureWriter;

/** What the sections of the report consist of. */
public final class Html {
    private Html() {}

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
    public static String at(double value) {
        return String.format(Locale.ROOT, "%.2f", value + 0.0);
    }

    /** The address of a picture embedded in the page. */
    static String data(List<Plane> planes) {
        return "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(PictureWriter.embedded(planes, false));
    }

    /**
     * A section.
     *
     * @param content of the section, below its title
     */
    public static Markup section(String title, Object... content) {
        return Markup.of(element("section", element("h2", title), Markup.of(content)), "\n");
    }

    /** A figure with its caption. */
    public static Markup figure(Markup content, Object... caption) {
        return Markup.of(element("figure", content, element("figcaption", caption)), "\n");
    }

    /** Figures side by side. */
    public static Markup row(String kind, List<Markup> figures) {
        return element("div", attribute("class", kind), Markup.all(figures));
    }

    static Markup picture(List<Plane> planes, String description) {
        return element(
                "img",
                attribute("src", data(planes)),
                attribute("width", planes.get(0).width()),
                attribute("height", planes.get(0).height()),
                attribute("alt", description));
    }

    /**
     * A table whose first column names the rows.
     *
     * @param rows each as long as the heads; cells are pieces of markup or texts
     */
    public static Markup table(List<String> heads, List<List<Object>> rows) {
        List<Markup> lines = IntStream.range(0, rows.size())
                .mapToObj(i -> Markup.of(i == 0 ? "" : "\n", element("tr", cells("td", rows.get(i)))))
                .toList();
        return Markup.of(
                element(
                        "table",
                        element("thead", element("tr", cells("th", heads))),
                        element("tbody", Markup.all(lines))),
                "\n");
    }

    private static Markup cells(String kind, List<?> cells) {
        return Markup.all(cells.stream().map(c -> element(kind, c)).toList());
    }
}
