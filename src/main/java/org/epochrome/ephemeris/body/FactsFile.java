package org.epochrome.ephemeris.body;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Properties;
import java.util.Set;
import java.util.StringTokenizer;
import java.util.TreeSet;
import org.epochrome.ephemeris.body.PeriodicAngle.Argument;

/**
 * The keys and values of a body's resource. Whatever is wrong with it is thrown as an {@link IllegalStateException} that
 * names the resource, the key and the problem. It is read while the program starts, hence the plain loops.
 */
final class FactsFile {
    private final String name;
    private final Properties properties;
    private final NavigableSet<String> keys;
    private final Set<String> unread;

    private FactsFile(String name, Properties properties) {
        this.name = name;
        this.properties = properties;
        this.keys = new TreeSet<>(properties.stringPropertyNames());
        this.unread = new TreeSet<>(keys);
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
        String next = keys.ceiling(beginning);
        return next != null && next.startsWith(beginning);
    }

    /** What follows a beginning in the keys that begin so. */
    List<String> endings(String beginning) {
        List<String> endings = new ArrayList<>();
        for (String key : keys.tailSet(beginning)) {
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

    /** Words with blanks between them. */
    List<String> words(String key) {
        List<String> words = new ArrayList<>();
        StringTokenizer tokens = new StringTokenizer(text(key));
        while (tokens.hasMoreTokens()) {
            words.add(tokens.nextToken());
        }
        return words;
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
        double value = number(key, text(key));
        if (!(value > 0)) {
            throw malformed(key, value + " is not above 0");
        }
        return value;
    }

    /** Numbers with blanks between them. */
    double[] numbers(String key) {
        return numbers(key, text(key));
    }

    /** Pairs of numbers with commas between the pairs. */
    List<double[]> pairs(String key) {
        List<double[]> pairs = new ArrayList<>();
        for (String pair : text(key).split(",", -1)) {
            double[] numbers = numbers(key, pair);
            if (numbers.length != 2) {
                throw malformed(key, "'" + pair.strip() + "' is not two numbers");
            }
            pairs.add(numbers);
        }
        return pairs;
    }

    private double[] numbers(String key, String text) {
        StringTokenizer tokens = new StringTokenizer(text);
        double[] numbers = new double[tokens.countTokens()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = number(key, tokens.nextToken());
        }
        return numbers;
    }

    private double number(String key, String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw malformed(key, "'" + text + "' is not a number");
        }
    }

    /** A formula as {@link PeriodicAngle#parse} takes it. */
    PeriodicAngle angle(String key, String unit, String function, Map<String, Argument> arguments) {
        try {
            return PeriodicAngle.parse(text(key), unit, function, arguments);
        } catch (IllegalArgumentException e) {
            throw malformed(key, e.getMessage());
        }
    }

    /** A formula as {@link Argument#parse} takes it. */
    Argument argument(String key) {
        try {
            return Argument.parse(text(key));
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
