package org.epochrome.evidence.plan;

import static org.epochrome.evidence.Html.at;
import static org.epochrome.evidence.Markup.attribute;
import static org.epochrome.evidence.Markup.element;

import java.util.List;
import org.epochrome.evidence.Markup;

/** Pieces of drawings; their colours are in the style sheet, by class, so that they suit light and dark pages. */
final class Svg {
    private Svg() {}

    static Markup drawing(double width, double height, String title, List<Markup> content) {
        return element(
                "svg",
                attribute("viewBox", "0 0 " + at(width) + " " + at(height)),
                attribute("role", "img"),
                element("title", title),
                Markup.all(content));
    }

    static Markup line(String style, double x1, double y1, double x2, double y2) {
        return element(
                "line",
                attribute("class", style),
                attribute("x1", at(x1)),
                attribute("y1", at(y1)),
                attribute("x2", at(x2)),
                attribute("y2", at(y2)));
    }

    static Markup box(String style, double x, double y, double width, double height) {
        return element(
                "rect",
                attribute("class", style),
                attribute("x", at(x)),
                attribute("y", at(y)),
                attribute("width", at(width)),
                attribute("height", at(height)));
    }

    static Markup circle(String style, double x, double y, double radius) {
        return element(
                "circle",
                attribute("class", style),
                attribute("cx", at(x)),
                attribute("cy", at(y)),
                attribute("r", at(radius)));
    }

    /** @param points x and y in turn, in words of the drawing's coordinates */
    static Markup curve(String style, List<double[]> points) {
        return element("polyline", attribute("class", style), attribute("points", joined(points)));
    }

    static Markup area(String style, List<double[]> points) {
        return element("polygon", attribute("class", style), attribute("points", joined(points)));
    }

    static Markup label(String style, double x, double y, String anchor, String text) {
        return element(
                "text",
                attribute("class", style),
                attribute("x", at(x)),
                attribute("y", at(y)),
                attribute("text-anchor", anchor),
                text);
    }

    private static String joined(List<double[]> points) {
        StringBuilder text = new StringBuilder();
        for (double[] p : points) {
            text.append(text.length() == 0 ? "" : " ")
                    .append(at(p[0]))
                    .append(',')
                    .append(at(p[1]));
        }
        return text.toString();
    }

    /** The class of a band's ink. */
    static String ink(String band) {
        return List.of("R", "G", "B", "L", "IR", "UV", "CH4").contains(band) ? "ink-" + band : "ink-other";
    }
}
