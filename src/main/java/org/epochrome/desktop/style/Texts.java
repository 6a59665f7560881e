package org.epochrome.desktop.style;

import java.util.Locale;
import java.util.ResourceBundle;

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
        return values.length == 0 ? text : String.format(Locale.ROOT, text, values);
    }
}
