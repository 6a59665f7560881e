package org.epochrome.desktop.style;

import java.util.Locale;
import java.util.OptionalDouble;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Timetable;

/** Numbers as the panels write and read them. */
public final class Numbers {
    private Numbers() {}

    public static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    public static double number(String text) {
        return Double.parseDouble(
                text.replace(',', '.').replace("°", "").replace("px", "").strip());
    }

    /** A number, or nothing for an empty field or the word auto. */
    public static OptionalDouble optional(String text) {
        return text.isBlank() || text.equalsIgnoreCase("auto")
                ? OptionalDouble.empty()
                : OptionalDouble.of(number(text));
    }

    public static String plain(double value) {
        String text = text("%.4f", value).replaceAll("0+$", "").replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }

    public static String plain(OptionalDouble value) {
        return value.isPresent() ? plain(value.getAsDouble()) : "";
    }

    /** Whether a frame gives the result its place. */
    public static boolean isReference(Timetable t, DatedFrame frame) {
        return t.rows().get(t.reference()).exposure().frame().equals(frame);
    }

    public static boolean isUsed(Recipe recipe, DatedFrame frame) {
        return !recipe.frames().leftOut().contains(frame.head().file());
    }
}
