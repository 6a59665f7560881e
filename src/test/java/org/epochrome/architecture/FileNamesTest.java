package org.epochrome.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Names of the project's files. */
class FileNamesTest {
    /** Folders and files of the project's root that are kept under version control; the rest is built. */
    private static final List<Path> KEPT = Stream.of(
                    "src", "docs", "demo-data", "pom.xml", "README.md", "DEVELOPERS.md", "LICENSE")
            .map(Path::of)
            .toList();

    /** Some file systems, those of Windows and macOS as they are shipped, hold only one of two such files. */
    @Test
    void noTwoFilesDifferOnlyInCase() throws IOException {
        assertEquals(List.of(), sameButForCase(KEPT.stream().flatMap(FileNamesTest::files)));
    }

    @Test
    void findsAPair() {
        Stream<String> paths = Stream.of("a/Disk.java", "a/disk.java", "b/Disk.java", "A/View.java", "a/View.java");
        assertEquals(
                List.of(List.of("A/View.java", "a/View.java"), List.of("a/Disk.java", "a/disk.java")),
                sameButForCase(paths));
    }

    @Test
    void looksAtAllFiles() {
        for (Path kept : KEPT) {
            assertTrue(files(kept).findAny().isPresent(), kept + " is missing");
        }
        assertTrue(files(Path.of("src")).anyMatch(f -> f.endsWith("FileNamesTest.java")));
    }

    private static List<List<String>> sameButForCase(Stream<String> paths) {
        Map<String, List<String>> names =
                paths.sorted().collect(Collectors.groupingBy(p -> p.toLowerCase(Locale.ROOT)));
        return names.values().stream()
                .filter(same -> same.size() > 1)
                .sorted(Comparator.comparing(same -> same.get(0)))
                .toList();
    }

    private static Stream<String> files(Path kept) {
        try (Stream<Path> walked = Files.walk(kept)) {
            return walked.filter(Files::isRegularFile).map(Path::toString).toList().stream();
        } catch (IOException e) {
            return Stream.empty();
        }
    }
}
