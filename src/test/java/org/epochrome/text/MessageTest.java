package org.epochrome.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class MessageTest {
    private static final Path SOURCES = Path.of("src/main/java/org/epochrome");
    private static final Path TEXTS = Path.of("src/main/resources/org/epochrome/text");
    private static final Path ENGINE = TEXTS.resolve("messages.properties");
    private static final List<Path> BUNDLES = List.of(ENGINE, TEXTS.resolve("command.properties"));

    /** The keys of help, which picocli looks for; {@code HelpTextsTest} checks them. */
    private static final Pattern HELP =
            Pattern.compile("(?:epochrome|usage|mixinStandardHelpOptions|helpCommand)\\..*|[^.]*");

    private static final Pattern CALL = Pattern.compile("\\bMessage\\.(?:of|text)\\(");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");
    private static final Pattern CONVERSION = Pattern.compile("%(?:(\\d+)\\$)?[-+0-9.]*([sdf])");
    private static final Pattern UNWORDED = Pattern.compile(
            "new (?:\\w+Refused|DiskNotFound)\\([^;]*?\"|\\b(?:notes|warnings|cautions)\\.add\\(\\s*\"");
    private static final Pattern OTHER_WORDING = Pattern.compile("\\.(?:window|frame)$");

    /** What only the command line says. */
    private static final Path COMMAND = SOURCES.resolve("command");

    /** What has words on the command line but is no text: words that are typed as they are, a unit, a name, a pattern. */
    private static final Set<String> NO_TEXTS =
            Set.of("start, middle, end", "as-shot, north-up, south-up", "%.5f au", "Epochrome ", " line \\\\d+$");

    /** A call for a message: the keys it may have, and how many values follow. */
    private record Call(Path file, Set<String> keys, int values) {}

    @Test
    void everyMessageIsThereAndIsUsed() throws IOException {
        Map<String, String> bundle = bundle();
        Set<String> used = new TreeSet<>();
        for (Call call : calls()) {
            assertTrue(!call.keys.isEmpty(), () -> "a key that is put together in " + call.file);
            used.addAll(call.keys);
        }
        assertEquals(
                List.of(), used.stream().filter(key -> !bundle.containsKey(key)).toList(), "used but not there");
        assertEquals(
                List.of(),
                bundle.keySet().stream()
                        .filter(key -> !used.contains(OTHER_WORDING.matcher(key).replaceFirst("")))
                        .toList(),
                "there but not used");
        assertTrue(used.size() > 200, () -> "only " + used.size());
    }

    @Test
    void valuesHaveTheirPlaces() throws IOException {
        Map<String, String> bundle = bundle();
        for (Call call : calls()) {
            for (String key : call.keys) {
                assertEquals(call.values, conversions(bundle.get(key)).size(), () -> key + " in " + call.file);
            }
        }
    }

    @Test
    void wordingsOfAMessageShowTheSameValues() throws IOException {
        Map<String, String> bundle = bundle();
        int checked = 0;
        for (Map.Entry<String, String> other : bundle.entrySet()) {
            Matcher ending = OTHER_WORDING.matcher(other.getKey());
            if (ending.find()) {
                String words = bundle.get(ending.replaceFirst(""));
                assertEquals(conversions(words), conversions(other.getValue()), other.getKey());
                checked++;
            }
        }
        assertTrue(checked > 35, "only " + checked);
    }

    @Test
    void noOptionIsNamedInTheWindow() throws IOException {
        Map<String, String> bundle = bundle(List.of(ENGINE));
        List<String> left = new ArrayList<>();
        for (String key : bundle.keySet()) {
            boolean shown = OTHER_WORDING.matcher(key).find() || !bundle.containsKey(key + ".window");
            if (shown && bundle.get(key).matches(".*--[a-z].*")) {
                left.add(key);
            }
        }
        assertEquals(List.of(), left);
    }

    @Test
    void noSentenceIsLeftInTheSources() throws IOException {
        List<String> left = new ArrayList<>();
        for (Path file : sources()) {
            Matcher sentence = UNWORDED.matcher(CALL.matcher(code(file)).replaceAll(";"));
            while (sentence.find()) {
                left.add(file.getFileName() + ": " + sentence.group());
            }
        }
        assertEquals(List.of(), left);
    }

    @Test
    void noTextIsLeftInTheCommandLine() throws IOException {
        List<String> left = new ArrayList<>();
        int checked = 0;
        for (Path file : sources()) {
            if (!file.startsWith(COMMAND)) {
                continue;
            }
            Matcher literal = LITERAL.matcher(code(file));
            while (literal.find()) {
                String text = literal.group(1);
                // What stands for a number or a character is no letter.
                String words = CONVERSION.matcher(text).replaceAll("").replaceAll("%n|\\\\(?:u[0-9a-f]{4}|.)", "");
                if (text.contains(" ") && words.matches(".*\\p{L}.*") && !NO_TEXTS.contains(text)) {
                    left.add(file.getFileName() + ": " + text);
                }
                checked++;
            }
        }
        assertEquals(List.of(), left);
        assertTrue(checked > 200, "only " + checked);
    }

    @Test
    void theWindowHasItsOwnWords() {
        Message marked = Message.of("encoding.marked", "srgb");
        assertEquals(
                "It is marked as encoded (srgb) but was read as linear; use --encoding srgb to undo the encoding, or"
                        + " --encoding-frame FILE=linear if the mark is wrong.",
                marked.toString());
        assertEquals(
                "It is marked as encoded (srgb) but was read as linear; set Encoding (Session page) to srgb to undo the"
                        + " encoding, or Encoding (Frame page) to linear if the mark is wrong.",
                marked.in(Wording.WINDOW));
        assertEquals(marked.in(Wording.WINDOW), marked.in(Wording.FRAME_PAGE), "no words of its own");
        assertEquals(
                "Its encoding (srgb) was undone.",
                Message.of("encoding.undone", "srgb").in(Wording.WINDOW));
    }

    @Test
    void partsHaveTheWordsOfTheWhole() {
        Message whole = Message.of("file.refused", Path.of("a.fits"), Message.of("band.none"));
        assertEquals(
                "a.fits has no band; give it with --red, --green, --blue, --luminance or in a --sheet.",
                whole.toString());
        assertEquals("a.fits has no band; enter it under Band (Frame page).", whole.in(Wording.WINDOW));
        assertEquals("a.fits has no band; enter it under Band.", whole.in(Wording.FRAME_PAGE));
        assertEquals(Message.of("file.refused", "a.fits", Message.of("band.none")), whole, "texts are kept, not files");
    }

    @Test
    void anUnknownKeyIsAnError() {
        Message unknown = Message.of("no.such.key");
        assertThrows(MissingResourceException.class, unknown::toString);
    }

    /** The values that a text shows, each with the kind of its conversion. */
    private static Set<String> conversions(String text) {
        Set<String> found = new TreeSet<>();
        Matcher conversion = CONVERSION.matcher(text);
        for (int next = 1; conversion.find(); ) {
            int place = conversion.group(1) == null ? next++ : Integer.parseInt(conversion.group(1));
            found.add(place + conversion.group(2));
        }
        return found;
    }

    private static List<Call> calls() throws IOException {
        List<Call> calls = new ArrayList<>();
        for (Path file : sources()) {
            String code = code(file);
            Matcher call = CALL.matcher(code);
            while (call.find()) {
                List<String> arguments = arguments(code, call.end());
                Set<String> keys = new TreeSet<>();
                Matcher key = LITERAL.matcher(arguments.get(0));
                while (key.find()) {
                    keys.add(key.group(1));
                }
                calls.add(new Call(file, keys, arguments.size() - 1));
            }
        }
        return calls;
    }

    /** The arguments of a call, from behind its bracket on. */
    private static List<String> arguments(String code, int from) {
        List<String> found = new ArrayList<>();
        int depth = 0;
        int start = from;
        boolean quoted = false;
        for (int i = from; ; i++) {
            char c = code.charAt(i);
            if (quoted) {
                i += c == '\\' ? 1 : 0;
                quoted = c != '"';
            } else if (c == '"') {
                quoted = true;
            } else if (depth == 0 && (c == ',' || c == ')')) {
                found.add(code.substring(start, i));
                start = i + 1;
                if (c == ')') {
                    return found;
                }
            } else if (c == '(' || c == '{') {
                depth++;
            } else if (c == ')' || c == '}') {
                depth--;
            }
        }
    }

    private static String code(Path file) throws IOException {
        return Files.readString(file).replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)^\\s*//.*$", "");
    }

    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            List<Path> all = files.filter(f -> f.toString().endsWith(".java"))
                    .filter(f -> !f.endsWith("Message.java"))
                    .sorted()
                    .toList();
            assertTrue(all.size() > 300, () -> "only " + all.size());
            return all;
        }
    }

    private static Map<String, String> bundle() throws IOException {
        return bundle(BUNDLES);
    }

    /** The sentences in some of the files. */
    private static Map<String, String> bundle(List<Path> files) throws IOException {
        Map<String, String> bundle = new LinkedHashMap<>();
        List<String> twice = new ArrayList<>();
        for (Path file : files) {
            for (String line : Files.readAllLines(file)) {
                if (!line.isBlank() && !line.startsWith("#")) {
                    String key = line.substring(0, line.indexOf('='));
                    if (bundle.put(key, line.substring(line.indexOf('=') + 1)) != null) {
                        twice.add(key);
                    }
                }
            }
        }
        bundle.keySet().removeIf(key -> HELP.matcher(key).matches());
        assertEquals(Collections.emptyList(), twice, "twice");
        return bundle;
    }
}
