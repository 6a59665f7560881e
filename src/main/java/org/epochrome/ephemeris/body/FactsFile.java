package org.epochrome.ephemeris.body;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * The keys and values of a body's resource. Whatever is wrong with it is thrown as an {@link IllegalStateException} that
 * names the resource, the key and the problem.
 */
final class FactsFile {
    private final String name;
    private final Properties properties;
    private final Set<String> unread;

    private FactsFile(String name, Properties properties) {
        this.name = name;
        this.properties = properties;
        this.unread = new TreeSet<>(properties.stringPropertyNames());
    }

    /** The resource of a body. */
    static FactsFile of(String body) {
        String name = body.toLowerCase(Locale.ROOT) + ".properties";
        try (InputStream stream = FactsFile.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("The resource " + name + " is missing.");
            }
            return read(name, new InputStreamReader(stream, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A resource of that name and text. */
    static FactsFile of(String name, String text) {
        try {
            return read(name, new StringReader(text));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static FactsFile read(String name, Reader reader) throws IOException {
        Properties properties = new Properties();
        properties.load(reader);
        return new FactsFile(name, properties);
    }

    /** Whether a key begins so. */
    boolean has(String beginning) {
        return properties.stringPropertyNames().stream().anyMatch(key -> key.startsWith(beginning));
    }

    /** What follows a beginning in the keys that begin so. */
    Set<String> endings(String beginning) {
        Set<String> endings = new TreeSet<>();
        for (String key : properties.stringPropertyNames()) {
            if (key.startsWith(beginning)) {
                endings.add(key.substring(beginning.length()));
            }
        }
        return endings;
    }

    String text(String key) {
        String text = properties.getProperty(key, "").strip();
        unread.remove(key);
        if (text.isEmpty()) {
            throw new IllegalStateException(name + ": " + key + " is missing.");
        }
        return text;
    }

    List<String> words(String key) {
        return List.of(text(key).split("\\s+"));
    }

    boolean yes(String key) {
        String text = text(key);
        if (!text.equals("yes") && !text.equals("no")) {
            throw malformed(key, "'" + text + "' is neither yes nor no");
        }
        return text.equals("yes");
    }

    /** A number above 0. */
    double positive(String key) {
        double value = parsed(key, Double::parseDouble);
        if (!(value > 0)) {
            throw malformed(key, value + " is not above 0");
        }
        return value;
    }

    /** Numbers with blanks between them. */
    double[] numbers(String key) {
        return numbers(key, text(key));
    }

    /** Rows of numbers with commas between the rows. */
    List<double[]> numbers(String key, int columns) {
        List<double[]> rows = new ArrayList<>();
        for (String row : text(key).split(",", -1)) {
            double[] numbers = numbers(key, row.strip());
            if (numbers.length != columns) {
                throw malformed(key, "'" + row.strip() + "' has not " + columns + " numbers");
            }
            rows.add(numbers);
        }
        return rows;
    }

    private double[] numbers(String key, String text) {
        return parsed(key, text, t -> Arrays.stream(t.split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray());
    }

    /** A value as a parser takes it, whose {@link IllegalArgumentException} becomes the problem. */
    <T> T parsed(String key, Function<String, T> parser) {
        return parsed(key, text(key), parser);
    }

    private <T> T parsed(String key, String text, Function<String, T> parser) {
        try {
            return parser.apply(text);
        } catch (NumberFormatException e) {
            throw malformed(key, "'" + text + "' is not a number");
        } catch (IllegalArgumentException e) {
            throw malformed(key, e.getMessage());
        }
    }

    /** The error that a value is not what it must be. */
    IllegalStateException malformed(String key, String problem) {
        return new IllegalStateException(name + ": " + key + " cannot be used: " + problem + ".");
    }

    /** Refuses keys that nobody asked for, which a typing error may be. */
    void refuseUnread() {
        if (!unread.isEmpty()) {
            throw new IllegalStateException(name + ": no such key is known: " + String.join(", ", unread) + ".");
        }
    }
}
