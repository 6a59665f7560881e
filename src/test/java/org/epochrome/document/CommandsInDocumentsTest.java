package org.epochrome.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.epochrome.command.CommandLoop;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The commands of all documents are run as they stand, in a copy of the demo data, and print what the documents show. Where
 * nothing that is printed is shown, the copy has fewer pixels. One Java runs them all, since a start costs as much as a small
 * session.
 */
@Tag("session")
@Tag("thorough")
class CommandsInDocumentsTest {
    /** Blocks that need the user's own files, another program or a build. */
    private static final int MOST_NOT_RUN = 8;

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|'([^']*)'|(\\S+)");
    private static final Path LIST = Path.of("target", "commands-in-documents.txt");

    /** Of one command line, by what it does: the jar and the installed program are the same. */
    private static final Map<Asked, Answer> ANSWERS = new LinkedHashMap<>();

    @TempDir
    private static Path folder;

    @TempDir
    private static Path smaller;

    private static Process program;
    private static DataOutputStream to;
    private static DataInputStream from;

    private record Asked(String command, boolean printed) {}

    private record Answer(int code, String out, String err) {}

    @BeforeAll
    static void start() throws IOException {
        SmallerDemo.write(Path.of("demo-data"), smaller);
        program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:+UseSerialGC",
                        "-Djava.awt.headless=true",
                        "-cp",
                        absoluteClassPath(),
                        CommandLoop.class.getName())
                .directory(folder.toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        to = new DataOutputStream(program.getOutputStream());
        from = new DataInputStream(program.getInputStream());
    }

    @AfterAll
    static void end() throws IOException, InterruptedException {
        to.close();
        program.waitFor();
        from.close();
        Files.write(
                LIST, ANSWERS.keySet().stream().map(Asked::command).distinct().toList());
    }

    static Stream<Path> documents() {
        return Listing.documents().stream().filter(d -> Listing.of(d).stream()
                .anyMatch(l -> l.holdsCommands() && l.whyNotRun().isEmpty()));
    }

    @ParameterizedTest
    @MethodSource("documents")
    @Timeout(value = 20, unit = TimeUnit.MINUTES)
    void commandsRunAndPrintWhatIsShown(Path document) throws Exception {
        List<String> failures = new ArrayList<>();
        Answer last = new Answer(0, "", "");
        List<Listing> listings = Listing.of(document);
        for (int i = 0; i < listings.size(); i++) {
            Listing listing = listings.get(i);
            if (listing.isOutput()) {
                if (!Printed.shows(listing.lines(), last.out.lines().toList())) {
                    failures.add(listing.place() + " differs from\n" + last.out);
                }
            } else if (listing.holdsCommands() && listing.whyNotRun().isEmpty()) {
                boolean printed = i + 1 < listings.size() && listings.get(i + 1).isOutput();
                prepare(printed ? Path.of("demo-data").toAbsolutePath() : smaller);
                for (String written : listing.commands()) {
                    String command = written.replaceFirst("^java -jar target/epochrome.jar ", "epochrome ");
                    Asked asked = new Asked(command, printed);
                    boolean known = listing.commands().size() == 1 && ANSWERS.containsKey(asked);
                    last = known ? ANSWERS.get(asked) : run(command);
                    ANSWERS.put(asked, last);
                    if (last.code != 0) {
                        failures.add(listing.place() + ": " + command + "\n" + last.err);
                    }
                }
            }
        }
        assertEquals(List.of(), failures);
    }

    @Test
    void fewCommandsAreNotRun() {
        List<Listing> listings = Listing.documents().stream()
                .flatMap(d -> Listing.of(d).stream())
                .toList();
        long run = listings.stream()
                .filter(l -> l.holdsCommands() && l.whyNotRun().isEmpty())
                .mapToLong(l -> l.commands().size())
                .sum();
        assertTrue(run > 20, run + " commands");
        assertTrue(listings.stream().filter(Listing::isOutput).count() >= 2, "outputs that are compared");
        List<String> not = listings.stream()
                .filter(l -> l.whyNotRun().isPresent())
                .map(Listing::place)
                .toList();
        assertTrue(not.size() <= MOST_NOT_RUN, not.toString());
    }

    /** What the commands of a listing made is of no use to the next: names may be the same. The demo's data are a link. */
    private static void prepare(Path demo) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                if (!path.equals(folder)) {
                    Files.delete(path);
                }
            }
        }
        Files.createSymbolicLink(folder.resolve("demo-data"), demo);
    }

    /** A command of the program, or one of the shell that only copies files. */
    private static Answer run(String command) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>();
        for (Matcher word = WORD.matcher(command); word.find(); ) {
            words.add(Stream.of(1, 2, 3)
                    .map(word::group)
                    .filter(g -> g != null)
                    .findFirst()
                    .orElseThrow());
        }
        Path redirected = null;
        int redirection = words.indexOf(">");
        if (redirection > 0) {
            redirected = folder.resolve(words.get(redirection + 1));
            words = words.subList(0, redirection);
        }
        Answer answer;
        if (words.get(0).equals("epochrome")) {
            answer = ask(words.subList(1, words.size()));
        } else if (words.get(0).equals("cp") || words.get(0).equals("mkdir")) {
            Process shell = new ProcessBuilder(words).directory(folder.toFile()).start();
            answer = new Answer(shell.waitFor(), "", "");
        } else {
            answer = new Answer(-1, "", "this test cannot run it; mark it as <!-- not run: why -->");
        }
        if (redirected != null) {
            Files.writeString(redirected, answer.out);
        }
        return answer;
    }

    private static Answer ask(List<String> words) throws IOException {
        to.writeInt(words.size());
        for (String word : words) {
            to.writeUTF(word);
        }
        to.flush();
        return new Answer(from.readInt(), text(from), text(from));
    }

    private static String text(DataInputStream from) throws IOException {
        return new String(from.readNBytes(from.readInt()), StandardCharsets.UTF_8);
    }

    private static String absoluteClassPath() {
        return String.join(
                System.getProperty("path.separator"),
                Arrays.stream(System.getProperty("java.class.path").split(System.getProperty("path.separator")))
                        .map(p -> Path.of(p).toAbsolutePath().toString())
                        .toList());
    }

    @Test
    void tellsNumbersThatDiffer() {
        assertTrue(Printed.same("radius  206.54", "radius 206.55"));
        assertTrue(Printed.same("limb ± 0.013", "limb ± 0.014"));
        assertFalse(Printed.same("radius 206.54", "radius 206.74"));
        assertFalse(Printed.same("480 x 480", "480 x 481"));
        assertFalse(Printed.same("north 11.1°", "south 11.1°"));
    }

    @Test
    void readsListings() throws IOException {
        Path document = folder.resolve("a.md");
        Files.write(
                document,
                List.of(
                        "Run",
                        "",
                        "    epochrome help \\",
                        "        combine",
                        "<!-- printed -->",
                        "",
                        "    Usage:",
                        "<!-- not run: it builds -->",
                        "```",
                        "mvn verify  # all tests",
                        "```",
                        "    not code after text"),
                StandardCharsets.UTF_8);
        List<Listing> listings = Listing.of(document);
        assertEquals(3, listings.size());
        assertEquals(List.of("epochrome help combine"), listings.get(0).commands());
        assertTrue(listings.get(0).holdsCommands());
        assertTrue(listings.get(1).isOutput());
        assertEquals("it builds", listings.get(2).whyNotRun().orElseThrow());
        assertEquals(List.of("mvn verify"), listings.get(2).commands());
    }
}
