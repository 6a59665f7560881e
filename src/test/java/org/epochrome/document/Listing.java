package org.epochrome.document;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A block of a document that is set in code: indented by four spaces or between fences. A comment on the line before it states
 * what it is where its first word does not: {@code <!-- printed -->}, the output of the last command, or {@code <!-- not run: why
 * -->}.
 *
 * @param document it stands in
 * @param line of its first line, from 1
 * @param lines as they are, without the indentation
 * @param comment on the line before
 */
record Listing(Path document, int line, List<String> lines, Optional<String> comment) {
    private static final Pattern COMMENT = Pattern.compile("<!-- (.*) -->");
    /** What a line of a shell begins with. */
    private static final Pattern COMMAND = Pattern.compile(
            "(epochrome|java|mvn|cp|mkdir|sudo|apt|git|src/\\S+|target/\\S+|>>>|\\$) .*|epochrome|.*\\.jar");

    static List<Listing> of(Path document) {
        List<Listing> listings = new ArrayList<>();
        List<String> all;
        try {
            all = Files.readAllLines(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        String before = "";
        for (int i = 0; i < all.size(); i++) {
            boolean fenced = all.get(i).startsWith("```");
            boolean starts = fenced || (all.get(i).startsWith("    ") && (i == 0 || isBreak(all.get(i - 1))));
            if (starts) {
                int first = fenced ? i + 1 : i;
                int end = first;
                while (end < all.size() && (fenced ? !all.get(end).startsWith("```") : inside(all, end))) {
                    end++;
                }
                List<String> lines = all.subList(first, end).stream()
                        .map(l -> fenced ? l : l.substring(Math.min(4, l.length())))
                        .toList();
                Matcher comment = COMMENT.matcher(before);
                listings.add(new Listing(
                        document,
                        first + 1,
                        lines,
                        comment.matches() ? Optional.of(comment.group(1)) : Optional.empty()));
                i = fenced ? end : end - 1;
                before = "";
            } else if (!all.get(i).isBlank()) {
                before = all.get(i);
            }
        }
        return listings;
    }

    private static boolean isBreak(String line) {
        return line.isBlank() || line.startsWith("#") || COMMENT.matcher(line).matches();
    }

    private static boolean inside(List<String> all, int i) {
        return all.get(i).startsWith("    ");
    }

    boolean isOutput() {
        return comment.filter("printed"::equals).isPresent();
    }

    Optional<String> whyNotRun() {
        return comment.filter(c -> c.startsWith("not run: ")).map(c -> c.substring(9));
    }

    boolean holdsCommands() {
        return !isOutput() && !lines.isEmpty() && COMMAND.matcher(lines.get(0)).matches();
    }

    /** The commands: lines that end in a backslash are joined, comments are left out. */
    List<String> commands() {
        String text = String.join("\n", lines).replaceAll("\\\\\n\\s*", "");
        return text.lines()
                .map(l -> l.replaceAll("(^|\\s)#.*", "").strip())
                .filter(l -> !l.isEmpty())
                .toList();
    }

    String place() {
        return document + ":" + line;
    }

    /** All documents whose commands are run. */
    static List<Path> documents() {
        try (Stream<Path> docs = Files.walk(Path.of("docs"));
                Stream<Path> demos = Files.walk(Path.of("demo-data"))) {
            return Stream.of(Stream.of(Path.of("README.md"), Path.of("DEVELOPERS.md")), docs, demos)
                    .flatMap(s -> s)
                    .filter(p -> p.toString().endsWith(".md"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
