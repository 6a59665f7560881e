package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Body;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The help has its texts from command.properties. */
class HelpTextsTest {
    private static final Path COMMANDS = Path.of("src/main/java/org/epochrome/command");
    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("org.epochrome.text.command");

    /** The keys of help; the others are of printed sentences, which {@code MessageTest} checks. */
    private static final Pattern HELP =
            Pattern.compile("(?:epochrome|usage|mixinStandardHelpOptions|helpCommand)\\..*|[^.]*");

    private static final Pattern NUMBER = Pattern.compile("\\.\\d+$");
    private static final Pattern ANNOTATION = Pattern.compile("@(?:Command|Option|Parameters)\\(");
    private static final Pattern OWN_TEXT = Pattern.compile(
            "\\b(?:description|footer|header|synopsisHeading|descriptionHeading|footerHeading|commandListHeading"
                    + "|optionListHeading|parameterListHeading)\\s*=");

    @Test
    void everyTextIsThereAndIsUsed() {
        Set<String> there = new TreeSet<>();
        BUNDLE.keySet().stream()
                .filter(key -> HELP.matcher(key).matches())
                .forEach(key -> there.add(NUMBER.matcher(key).replaceFirst("")));
        Set<String> used = new TreeSet<>();
        Set<String> without = new TreeSet<>();
        int checked = 0;
        for (CommandSpec command : commands()) {
            for (ArgSpec argument : arguments(command)) {
                List<String> keys = keys(argument, command);
                keys.stream()
                        .filter(there::contains)
                        .findFirst()
                        .ifPresentOrElse(
                                used::add,
                                () -> without.add(command.qualifiedName() + " " + keys.get(keys.size() - 1)));
                checked++;
            }
            for (String part : List.of("description", "footer", "header", "synopsisHeading", "commandListHeading")) {
                Stream.of(command.qualifiedName(".") + ".usage." + part, "usage." + part)
                        .filter(there::contains)
                        .findFirst()
                        .ifPresent(used::add);
            }
            if (!there.contains(command.qualifiedName(".") + ".usage.description")) {
                without.add(command.qualifiedName());
            }
        }
        assertEquals(Set.of(), without, "without a text");
        there.removeAll(used);
        assertEquals(Set.of(), there, "there but not used");
        assertTrue(checked > 110, "only " + checked);
    }

    /** The keys that picocli looks for, in its order. */
    private static List<String> keys(ArgSpec argument, CommandSpec command) {
        String key = argument.descriptionKey();
        List<String> names = key == null || key.isEmpty()
                ? Arrays.stream(((OptionSpec) argument).names())
                        .map(name -> name.replaceFirst("^-+", ""))
                        .toList()
                : List.of(key);
        return names.stream()
                .flatMap(name -> Stream.of(command.qualifiedName(".") + "." + name, name))
                .toList();
    }

    private static List<ArgSpec> arguments(CommandSpec command) {
        List<PositionalParamSpec> parameters = command.positionalParameters();
        return Stream.<ArgSpec>concat(command.options().stream(), parameters.stream())
                .toList();
    }

    private static List<CommandSpec> commands() {
        CommandLine line = Main.commandLine();
        return Stream.concat(Stream.of(line), line.getSubcommands().values().stream())
                .map(CommandLine::getCommandSpec)
                .toList();
    }

    @Test
    void theHelpShowsTheTexts() {
        int checked = 0;
        for (CommandSpec command : commands()) {
            for (ArgSpec argument : arguments(command)) {
                String key = keys(argument, command).stream()
                        .filter(BUNDLE::containsKey)
                        .findFirst()
                        .orElseThrow();
                assertEquals(List.of(BUNDLE.getString(key)), List.of(argument.description()), key);
                checked++;
            }
        }
        assertTrue(checked > 110, "only " + checked);
    }

    @Test
    void noTextIsLeftInAnnotations() throws IOException {
        int checked = 0;
        try (Stream<Path> files = Files.walk(COMMANDS)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                String source = Files.readString(file);
                Matcher annotation = ANNOTATION.matcher(source);
                while (annotation.find()) {
                    // Up to what is annotated, which stands on a line of its own.
                    int end = source.indexOf(")\n", annotation.end());
                    String content = source.substring(annotation.end(), end);
                    assertTrue(!OWN_TEXT.matcher(content).find(), () -> file + ": " + content);
                    checked++;
                }
            }
        }
        assertTrue(checked > 40, "only " + checked);
    }

    @Test
    void nameThePlanetsThereAre() {
        assertTrue(BUNDLE.getString("epochrome.aspect.body").contains(list(b -> true, "or")));
        assertTrue(BUNDLE.getString("epochrome.plan.body").contains(list(b -> true, "or")));
        assertTrue(BUNDLE.getString("epochrome.inspect.north").contains(list(b -> !b.showsAxis(), "and")));
    }

    private static String list(Predicate<Body> chosen, String last) {
        List<String> names = Arrays.stream(Body.values())
                .filter(chosen)
                .map(Body::displayName)
                .toList();
        int before = names.size() - 1;
        return String.join(", ", names.subList(0, before)) + " " + last + " " + names.get(before);
    }
}
