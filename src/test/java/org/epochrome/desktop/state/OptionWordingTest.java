package org.epochrome.desktop.state;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OptionWordingTest {
    private static final Path SOURCES = Path.of("src/main/java/org/epochrome");
    /** Rooms whose messages the window shows. */
    private static final List<String> ROOMS = List.of(
            "job",
            "image",
            "time",
            "ephemeris",
            "atmosphere",
            "disk",
            "turn",
            "moon",
            "map",
            "align",
            "colour",
            "io",
            "session",
            "evidence");
    /** What the window never asks for: other commands, animations, reference frames of white, and options themselves. */
    private static final Set<String> NEVER_SHOWN =
            Set.of("Inspection.java", "TurningFile.java", "WhiteReference.java", "CommandLineFormatter.java");

    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");
    private static final Pattern OPTION = Pattern.compile("--[a-z]");
    private static final Pattern CONVERSION = Pattern.compile("%[-+0-9.]*[sdf]");

    @Test
    void noMessageOfTheEngineNamesAnOptionInTheWindow() throws IOException {
        int found = 0;
        List<String> left = new ArrayList<>();
        for (String room : ROOMS) {
            for (Path file : sources(SOURCES.resolve(room))) {
                for (String message : messages(Files.readString(file))) {
                    found++;
                    String worded = UserMessages.inWords(message);
                    if (OPTION.matcher(worded).find()) {
                        left.add(file.getFileName() + ": " + worded);
                    }
                }
            }
        }
        assertEquals(List.of(), left);
        assertTrue(found > 15, "only " + found);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "was made; use --north DEG to override it. | was made; use North (Session page) to override it.",
                "upside down, give --north -168. | upside down, set North (Session page) to -168.",
                "if they are, use --mirrored yes. | if they are, set Mirrored (Session page) to yes.",
                "Use --mount altaz if so. | Set Mount (Session page) to alt-azimuth if so.",
                "check --mount, --site and the times. | check Mount (Session page), Site (Session page) and the times.",
                "give it with --site LAT,LON | enter it under Site (Session page)",
                "give the plate scale with --scale, or leave | enter the plate scale under Plate scale (Session page), or leave",
                "use --encoding gamma=2.2 or --encoding srgb, or --encoding linear if not."
                        + " | set Encoding (Session page) to gamma=2.2 or to srgb, or to linear if not.",
                "use --encoding srgb to undo it, or --encoding-frame FILE=linear if wrong."
                        + " | set Encoding (Session page) to srgb to undo it, or Encoding (Frame page) to linear if wrong.",
                "has no band; give it with --red, --green, --blue, --luminance or in a --sheet."
                        + " | has no band; enter it under Band (Frame page).",
                "assign a frame with --red, --green or --blue | assign a frame under Band (Frame page)",
                "give its times in a --sheet. | enter its times on the Frame page.",
                "use --passband Ha=FROM-TO to change this. | use Passband (Frame page) to change this.",
                "use --assign or --luminance-from to include them."
                        + " | use Band assignment (Colour page) to include them.",
                "exists; choose another name or add --overwrite. | exists; choose another name.",
                "sharpen the result with --detail. | sharpen the result on the Detail page.",
                "put it back, or leave it out (--leave-out). | drop it onto the window, or discard it.",
                "file name + --exposure | file name + given length"
            })
    void optionsBecomeControls(String message, String worded) {
        assertEquals(worded, UserMessages.inWords(message));
    }

    @Test
    void aNewOptionIsSeen() {
        assertEquals("use --brandnew to do so.", UserMessages.inWords("use --brandnew to do so."));
    }

    /** Literals with an option, those that are put together as one, with examples for what is filled in. */
    private static List<String> messages(String source) {
        String joined = source.replaceAll("(?s)/\\*.*?\\*/", "")
                .replaceAll("\"\\s*\\+\\s*\"", "")
                .replaceAll("\"\\s*\\+[^\";]*\\+\\s*\"", "1");
        List<String> found = new ArrayList<>();
        Matcher literal = LITERAL.matcher(joined);
        while (literal.find()) {
            if (OPTION.matcher(literal.group(1)).find()) {
                found.add(CONVERSION.matcher(literal.group(1)).replaceAll("1").replace("%%", "%"));
            }
        }
        return found;
    }

    private static List<Path> sources(Path room) throws IOException {
        try (Stream<Path> files = Files.walk(room)) {
            return files.filter(f -> f.toString().endsWith(".java"))
                    .filter(f -> !NEVER_SHOWN.contains(f.getFileName().toString()))
                    .sorted()
                    .toList();
        }
    }
}
