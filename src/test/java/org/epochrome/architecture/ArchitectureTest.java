package org.epochrome.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Body;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The plan of the house: each package uses only those below it, and libraries stay where they belong. */
class ArchitectureTest {
    private static final String ROOT = "org.epochrome.";

    /** From the ground up. */
    private static final List<String> FLOORS = List.of(
            "about",
            "text",
            "job",
            "choice",
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
            "plan",
            "evidence",
            "demo",
            "command",
            "desktop");

    /** Who may name a planet, by a constant or in a {@code switch}, and why. */
    private static final Map<String, String> NAMING_PLANETS = Map.of(
            "ephemeris.GalileanMoons", "a theory of the moons of one planet",
            "demo.DemoSessions", "invented scenes of certain planets",
            "demo.world.Surface", "invented surfaces, with one for all other planets",
            "demo.world.QuietWorld", "invented colours, with some for all other planets",
            "desktop.render.WarmUp", "an invented scene that nobody sees");

    private static final int MOST_FILES = 20;
    private static final int MOST_LINES = 2500;
    private static final int MOST_LINES_OF_A_CLASS = 350;

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.epochrome");

    @Test
    void everyPackageHasItsFloor() {
        Set<String> found = CLASSES.stream()
                .map(c -> c.getPackageName().substring(ROOT.length()).replaceAll("\\..*", ""))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(new TreeSet<>(FLOORS), found);
    }

    @TestFactory
    Stream<DynamicTest> packagesUseOnlyThoseBelow() {
        return IntStream.range(0, FLOORS.size() - 1)
                .mapToObj(i -> dynamicTest(FLOORS.get(i), () -> {
                    String[] above = FLOORS.subList(i + 1, FLOORS.size()).stream()
                            .map(p -> ROOT + p + "..")
                            .toArray(String[]::new);
                    noClasses()
                            .that()
                            .resideInAPackage(ROOT + FLOORS.get(i) + "..")
                            .should()
                            .dependOnClassesThat()
                            .resideInAnyPackage(above)
                            .check(CLASSES);
                }));
    }

    @Test
    void packagesFormNoCircles() {
        slices().matching(ROOT + "(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    /** Folders within a package do not depend on each other in circles either. */
    @Test
    void foldersFormNoCircles() {
        slices().matching(ROOT + "(**)").should().beFreeOfCycles().check(CLASSES);
    }

    /** A reader keeps an overview of folders and classes that hold no more. */
    @Test
    void foldersAndClassesStaySmall() throws IOException {
        try (Stream<Path> found = Files.walk(Path.of("src/main/java"))) {
            List<Path> folders = found.filter(Files::isDirectory).toList();
            assertTrue(folders.size() > 50, "only " + folders.size() + " folders were found");
            for (Path folder : folders) {
                List<Path> sources;
                try (Stream<Path> files = Files.list(folder)) {
                    sources = files.filter(f -> f.toString().endsWith(".java")).toList();
                }
                long lines = 0;
                for (Path source : sources) {
                    int length = Files.readAllLines(source).size();
                    assertTrue(length <= MOST_LINES_OF_A_CLASS, source + " has " + length + " lines");
                    lines += length;
                }
                assertTrue(sources.size() <= MOST_FILES, folder + " holds " + sources.size() + " files");
                assertTrue(lines <= MOST_LINES, folder + " holds " + lines + " lines");
            }
        }
    }

    @Test
    void readingAndWritingKnowNothingOfDisks() {
        noClasses()
                .that()
                .resideInAPackage(ROOT + "io..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(ROOT + "disk..", ROOT + "turn..", ROOT + "align..", ROOT + "colour..")
                .check(CLASSES);
    }

    /** Tests on invented scenes mean something only if these share no geometry with what is tested. */
    @Test
    void inventedScenesShareNoGeometryWithTheEngine() {
        noClasses()
                .that()
                .resideInAPackage(ROOT + "demo..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        ROOT + "disk..", ROOT + "turn..", ROOT + "align..", ROOT + "colour..", ROOT + "session..")
                .check(CLASSES);
    }

    @Test
    void fileLibrariesStayInTheirPackage() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + "io..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "nom.tam..",
                        "com.twelvemonkeys..",
                        "javax.imageio..",
                        "org.apache.commons.csv..",
                        "biweekly..",
                        "java.awt..")
                .check(CLASSES);
    }

    @Test
    void onlyTheCommandLineKnowsItsToolkit() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + "command..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("picocli..")
                .check(CLASSES);
    }

    @Test
    void onlyTheDesktopKnowsItsToolkit() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + "desktop..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("javafx..", "atlantafx..", "org.kordamp..")
                .check(CLASSES);
    }

    /** The two faces stand side by side; only the launcher knows both. */
    @Test
    void theDesktopKnowsNoCommandLine() {
        noClasses()
                .that()
                .resideInAPackage(ROOT + "desktop..")
                .and()
                .doNotHaveSimpleName("Launcher")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(ROOT + "command..")
                .check(CLASSES);
    }

    /** What the desktop shows and does is decided without a window. */
    @Test
    void theModelOfTheDesktopNeedsNoWindow() {
        noClasses()
                .that()
                .resideInAnyPackage(
                        ROOT + "desktop.state..",
                        ROOT + "desktop.render..",
                        ROOT + "desktop.recovery..",
                        ROOT + "desktop.control..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("javafx.scene..", "javafx.stage..", "javafx.application..", "atlantafx..")
                .check(CLASSES);
    }

    /**
     * What holds for one planet and not for another is a fact of the planet: code asks for it and not for the planet's name,
     * so that a new planet needs no other code.
     */
    @Test
    void fewClassesNamePlanets() {
        Set<String> naming = CLASSES.stream()
                .filter(c -> !c.isEquivalentTo(Body.class) && namesPlanet(c))
                .map(c -> c.getName().substring(ROOT.length()).replaceFirst("\\$.*", ""))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(new TreeSet<>(NAMING_PLANETS.keySet()), naming);
    }

    private static boolean namesPlanet(JavaClass c) {
        boolean constant = c.getFieldAccessesFromSelf().stream()
                .map(access -> access.getTarget())
                .anyMatch(field -> field.getOwner().isEquivalentTo(Body.class)
                        && field.getRawType().isEquivalentTo(Body.class));
        boolean name = c.getMethodCallsFromSelf().stream()
                .map(call -> call.getTarget())
                .anyMatch(method -> method.getOwner().isEquivalentTo(Body.class)
                        && method.getName().equals("valueOf"));
        return constant || name;
    }

    /** A rule that finds no class to check would pass for ever. */
    @Test
    void thereIsSomethingToCheck() {
        assertTrue(CLASSES.size() > 100, "only " + CLASSES.size() + " classes were imported");
    }
}
