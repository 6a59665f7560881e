package org.epochrome.desktop.style;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.ResourceBundle;
import org.epochrome.io.file.VisibleText;

/** The texts of the window, from the resource bundle {@code window.properties}: a translation is one more such file. */
public final class Texts {
    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("org.epochrome.text.window");

    private Texts() {}

    /**
     * A text by its key.
     *
     * @param key says where the text stands
     * @param values what its {@code %} conversions stand for. Numbers look the same in every language; without values the
     *     text is returned as it is, so that a lone per cent sign needs no other
     * @throws java.util.MissingResourceException if the bundle has no such key
     */
    public static String of(String key, Object... values) {
        String text = BUNDLE.getString(key);
        return values.length == 0
                ? text
                : String.format(
                        Locale.ROOT,
                        text,
                        Arrays.stream(values).map(Texts::shown).toArray());
    }

    /** Names of files and what they contain, fit to be shown. */
    private static Object shown(Object value) {
        return value instanceof CharSequence || value instanceof Path ? VisibleText.lines(value.toString()) : value;
    }
}
