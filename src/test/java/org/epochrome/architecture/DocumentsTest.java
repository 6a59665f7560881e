package org.epochrome.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the documents name exists: classes in {@code code}, and the files and headings that links lead to. */
class DocumentsTest {
    private static final Pattern FENCED = Pattern.compile("(?ms)^```.*?^```");
    private static final Pattern CODE = Pattern.compile("`([^`]+)`");
    /** A class with its package or the end of it, perhaps with a member or a nested class. */
    private static final Pattern QUALIFIED = Pattern.compile("(?:[a-z]+\\.)+[A-Z]\\w*(?:\\.\\w+)?");

    private static final Pattern SIMPLE = Pattern.compile("[A-Z][a-z][a-z0-9]*(?:[A-Z][a-z0-9]*)*");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
    private static final Pattern HEADING = Pattern.compile("(?m)^#{1,6} +(.+)$");
    /** Names in the documents that are not ours. */
    private static final Set<String> FOREIGN = Set.of("StrictMath");

    private static final Set<String> CLASSES = classes();

    @Test
    void namedClassesExist() {
        Set<String> named = new TreeSet<>();
        Set<String> missing = new TreeSet<>();
        for (Path document : documents()) {
            for (String code : found(CODE, withoutFences(document))) {
                if (namesClass(code)) {
                    named.add(code);
                    if (!exists(code)) {
                        missing.add(document + ": " + code);
                    }
                }
            }
        }
        assertEquals(Set.of(), missing);
        assertTrue(named.size() > 150, named.size() + " classes are named");
    }

    @Test
    void tellsClassesThatExist() {
        assertTrue(exists("architecture.DocumentsTest"));
        assertTrue(exists("org.epochrome.disk.model.Markings.Fineness"));
        assertTrue(exists("disk.model.Samples.cut"));
        assertTrue(exists("DocumentsTest"));
        assertFalse(exists("disk.model.Markings.Coarseness"));
        assertFalse(exists("disk.Markings"));
        assertFalse(exists("Documents"));
    }

    @Test
    void linksLeadSomewhere() {
        int links = 0;
        List<String> broken = new ArrayList<>();
        for (Path document : documents()) {
            for (String link : found(LINK, withoutFences(document))) {
                if (!link.contains("://")) {
                    links++;
                    if (!leadsSomewhere(document, link)) {
                        broken.add(document + ": " + link);
                    }
                }
            }
        }
        assertEquals(List.of(), broken);
        assertTrue(links > 100, links + " links");
    }

    @Test
    void tellsLinksThatLeadNowhere() {
        Path readme = Path.of("README.md");
        assertTrue(leadsSomewhere(readme, "docs/method.md#12-detail"));
        assertFalse(leadsSomewhere(readme, "docs/method.md#no-such-heading"));
        assertFalse(leadsSomewhere(readme, "docs/no-such-file.md"));
    }

    private static boolean namesClass(String code) {
        return QUALIFIED.matcher(code).matches()
                || (SIMPLE.matcher(code).matches() && code.length() > 3 && !FOREIGN.contains(code));
    }

    /** Whether a name is a class's, with as much of its package as it gives, or a word in the source of one. */
    private static boolean exists(String name) {
        String ours = name.replaceFirst("^org\\.epochrome\\.", "");
        if (isClass(ours)) {
            return true;
        }
        int member = ours.lastIndexOf('.');
        return member > 0
                && CLASSES.stream()
                        .filter(path -> ends(path, ours.substring(0, member)))
                        .anyMatch(path -> Pattern.compile("\\b" + ours.substring(member + 1) + "\\b")
                                .matcher(read(Path.of(path)))
                                .find());
    }

    private static boolean isClass(String name) {
        return CLASSES.stream().anyMatch(path -> ends(path, name));
    }

    private static boolean ends(String path, String name) {
        return path.endsWith("/" + name.replace('.', '/') + ".java");
    }

    private static boolean leadsSomewhere(Path document, String link) {
        String[] parts = link.split("#", 2);
        Path target = parts[0].isEmpty()
                ? document
                : document.resolveSibling(parts[0]).normalize();
        return Files.exists(target) && (parts.length == 1 || anchors(target).contains(parts[1]));
    }

    /** Anchors of the headings, as they are made of their words; a second heading of one name gets a number. */
    private static Set<String> anchors(Path document) {
        Set<String> anchors = new HashSet<>();
        for (String heading : found(HEADING, withoutFences(document))) {
            String anchor = heading.toLowerCase(Locale.ROOT)
                    .replaceAll("[^\\p{L}\\p{N} _-]", "")
                    .replace(' ', '-');
            for (int n = 1; !anchors.add(n == 1 ? anchor : anchor + "-" + (n - 1)); n++) {
                // the next number
            }
        }
        return anchors;
    }

    private static List<String> found(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(found -> found.group(1).replaceAll("\\s+", " "))
                .toList();
    }

    private static String withoutFences(Path document) {
        Matcher fenced = FENCED.matcher(read(document));
        return fenced.replaceAll("");
    }

    private static List<Path> documents() {
        return Stream.concat(
                        Stream.of(Path.of("README.md"), Path.of("DEVELOPERS.md")),
                        files("docs", p -> p.endsWith(".md")))
                .toList();
    }

    private static Set<String> classes() {
        return files("src", p -> p.endsWith(".java"))
                .map(p -> p.toString().replace('\\', '/'))
                .collect(Collectors.toSet());
    }

    private static Stream<Path> files(String root, Predicate<String> chosen) {
        try (Stream<Path> walked = Files.walk(Path.of(root))) {
            return walked.filter(p -> chosen.test(p.toString())).sorted().toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
