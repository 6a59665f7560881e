package org.epochrome.evidence;

import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import org.epochrome.io.file.VisibleText;

/**
 * A piece of HTML with the SVG in it. It is made of elements, attributes and text; what characters of text and of attributes
 * mean to HTML is escaped here and nowhere else.
 */
public final class Markup {
    /** HTML elements that have no end tag. */
    private static final Set<String> VOID = Set.of("br", "img", "meta");
    /** SVG elements that are closed at once. */
    private static final Set<String> SHAPES = Set.of("circle", "image", "line", "path", "polygon", "polyline", "rect");

    /** An attribute of an element. */
    public record Attribute(String name, Object value) {}

    private final String html;

    private Markup(String html) {
        this.html = html;
    }

    /** An attribute, to be passed to an element as part of its content. */
    public static Attribute attribute(String name, Object value) {
        return new Attribute(name, value);
    }

    /**
     * An element.
     *
     * @param content its attributes, pieces that are inserted as they are, and anything else as text
     */
    public static Markup element(String name, Object... content) {
        String attributes = Arrays.stream(content)
                .filter(Attribute.class::isInstance)
                .map(Attribute.class::cast)
                .map(a -> " " + a.name() + "=\"" + escaped(a.value()) + "\"")
                .collect(Collectors.joining());
        if (SHAPES.contains(name)) {
            return new Markup("<" + name + attributes + "/>");
        }
        String begin = "<" + name + attributes + ">";
        return new Markup(VOID.contains(name) ? begin : begin + of(content) + "</" + name + ">");
    }

    /** Several pieces, one after the other; what is neither a piece nor an attribute is text. */
    public static Markup of(Object... content) {
        return new Markup(Arrays.stream(content)
                .filter(c -> !(c instanceof Attribute))
                .map(c -> c instanceof Markup ? c.toString() : escaped(c))
                .collect(Collectors.joining()));
    }

    /** Several pieces of the same kind. */
    public static Markup all(Iterable<Markup> pieces) {
        StringBuilder html = new StringBuilder();
        pieces.forEach(html::append);
        return new Markup(html.toString());
    }

    /** A whole page. */
    public static String page(Markup head, Markup body) {
        Markup html = element("html", attribute("lang", "en"), head, element("body", "\n", body));
        return "<!DOCTYPE html>\n" + html + "\n";
    }

    /** A style sheet, which HTML takes literally. */
    public static Markup style(String css) {
        return new Markup("<style>\n" + css + "</style>");
    }

    private static String escaped(Object text) {
        return VisibleText.lines(String.valueOf(text))
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Markup m && html.equals(m.html);
    }

    @Override
    public int hashCode() {
        return html.hashCode();
    }

    /** The piece as HTML. */
    @Override
    public String toString() {
        return html;
    }
}
