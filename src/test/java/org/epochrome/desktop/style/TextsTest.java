package org.epochrome.desktop.style;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.MissingResourceException;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class TextsTest {
    private static final Path SOURCES = Path.of("src/main/java/org/epochrome/desktop");
    private static final Path BUNDLE = Path.of("src/main/resources/org/epochrome/text/window.properties");
    private static final Pattern USE = Pattern.compile("Texts\\.of\\(\\s*\"([^\"]*)\"\\s*([,)])");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");
    private static final Pattern CONVERSION = Pattern.compile("%(?:\\d+\\$)?[-+0-9.]*[sdf]");

    /** What has words but is no text of the window: parts of commands, files and errors that only developers see. */
    private static final Set<String> NO_TEXTS = Set.of(
            "java -jar epochrome.jar ",
            // Goes into reports, as other sources of times do.
            "manual entry",
            "UTC, start",
            "a new file is locked already",
            "It is made in another way.");

    @Test
    void namesCannotHideWhatTheyAre() {
        assertTrue(Texts.of("status.saved", Path.of("a\u202egpj\u001b.png")).contains("a\\u202egpj\\x1b.png"));
    }

    @Test
    void everyTextIsThereAndIsUsed() throws IOException {
        Set<String> used = new TreeSet<>();
        for (Path file : sources()) {
            Matcher use = USE.matcher(Files.readString(file));
            while (use.find()) {
                used.add(use.group(1));
            }
        }
        List<String> keys = keys();
        assertEquals(
                List.of(),
                keys.stream()
                        .filter(key -> Collections.frequency(keys, key) > 1)
                        .toList(),
                "twice");
        assertEquals(List.of(), used.stream().filter(key -> !keys.contains(key)).toList(), "used but not there");
        assertEquals(List.of(), keys.stream().filter(key -> !used.contains(key)).toList(), "there but not used");
        assertTrue(used.size() > 300, () -> "only " + used.size());
    }

    @Test
    void keysAreWrittenOut() throws IOException {
        for (Path file : sources()) {
            String source = Files.readString(file);
            long calls =
                    Pattern.compile("Texts\\.of\\(").matcher(source).results().count();
            assertEquals(calls, USE.matcher(source).results().count(), () -> "a key that is put together in " + file);
        }
    }

    @Test
    void valuesHaveTheirPlaces() throws IOException {
        int checked = 0;
        for (Path file : sources()) {
            Matcher use = USE.matcher(Files.readString(file));
            while (use.find()) {
                String text = Texts.of(use.group(1));
                boolean takesValues = CONVERSION.matcher(text).find();
                assertEquals(use.group(2).equals(","), takesValues, () -> use.group(1) + " in " + file);
                checked++;
            }
        }
        assertTrue(checked > 300, "only " + checked);
    }

    @Test
    void numbersLookTheSameEverywhere() {
        assertEquals("Humidity (%)", Texts.of("panel.site.humidity"));
        assertEquals("North (°)", Texts.of("panel.session.north"), "read as UTF-8");
        assertEquals("automatic: 12.50", Texts.of("panel.session.north.found", 12.5));
        assertThrows(MissingResourceException.class, () -> Texts.of("no.such.key"));
    }

    @Test
    void noTextIsLeftInTheSources() throws IOException {
        List<String> left = new ArrayList<>();
        for (Path file : sources()) {
            Matcher literal = LITERAL.matcher(withoutComments(Files.readString(file)));
            while (literal.find()) {
                String text = literal.group(1);
                // What stands for a number or a character is no letter.
                String words = CONVERSION.matcher(text).replaceAll("").replaceAll("\\\\.", "");
                if (text.contains(" ") && words.matches(".*\\p{L}.*") && !NO_TEXTS.contains(text)) {
                    left.add(file.getFileName() + ": " + text);
                }
            }
        }
        assertEquals(List.of(), left);
    }

    private static String withoutComments(String source) {
        return source.replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)^\\s*//.*$", "");
    }

    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            List<Path> all =
                    files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
            assertTrue(all.size() > 60, () -> "only " + all.size());
            return all;
        }
    }

    private static List<String> keys() throws IOException {
        return Files.readAllLines(BUNDLE).stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(line -> line.substring(0, line.indexOf('=')))
                .toList();
    }
}
