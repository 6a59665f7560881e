package org.epochrome.about;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class LicencesTest {
    /** Artifacts that tests and the compiler need and the program does not contain. */
    private static final Pattern TESTS_ONLY = Pattern.compile(
            "(junit|archunit|assertj|byte-buddy|org\\.osgi|testfx|openjfx-monocle|opentest4j|apiguardian"
                    + "|slf4j|hamcrest|spotbugs|jsr305|surefire|common-java|common-junit"
                    + "|jimfs|guava|failureaccess|listenablefuture|checker-qual|error_prone|j2objc).*");

    /** The jars on the path of the tests without those of the tests alone. */
    private static Set<String> artifacts() {
        return Stream.of(System.getProperty("java.class.path").split(Pattern.quote(File.pathSeparator)))
                .map(p -> new File(p).getName())
                .filter(n -> n.endsWith(".jar"))
                .map(n -> n.replaceAll("-\\d[\\w.]*(-(linux|win|mac)(-aarch64)?)?\\.jar$", ""))
                .filter(n -> !TESTS_ONLY.matcher(n).matches())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void everyLibraryHasItsLicence() {
        Set<String> listed = Component.ALL.stream()
                .flatMap(c -> c.artifacts().stream())
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(artifacts(), listed);
    }

    @Test
    void thePageHasEachTextOnce() {
        String page = Licences.page("Contains:");
        assertTrue(page.startsWith("Contains:\n\nCommons Math  (The Apache Software Foundation): Apache-2.0\n"), page);
        assertEquals(2, page.split("END OF TERMS AND CONDITIONS", -1).length - 1, "Apache's and the GNU licence");
        Component.ALL.forEach(
                c -> c.texts().forEach(t -> assertTrue(Component.text(t).length() > 900, t)));
    }
}
