package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.epochrome.choice.Choice;
import org.epochrome.choice.RecordChoice;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.identify.Conventions;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.Session;
import org.epochrome.session.product.TurningFile;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Recipe;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** Every choice that is declared can be made on the command line, in a session file and in the window. */
class ChoicesTest {
    /** What has no control in the window, and why. */
    private static final Map<String, String> WITHOUT_CONTROL = Map.ofEntries(
            Map.entry("Corrections.rotationPeriodDays", "for surfaces that no rotation system describes"),
            Map.entry("Corrections.airFlattening", "for rendered scenes, which are made for tests"),
            Map.entry("Corrections.light", "for comparisons with computations of others"),
            Map.entry("Corrections.response", "a table of numbers"),
            Map.entry("Alignment.freeScale", "for rare filters"),
            Map.entry("Sharpening.iterations", "the default suits all frames"),
            Map.entry("Sharpening.smoothing", "the default suits all frames"),
            Map.entry("Products.pictures", "chosen when a picture is exported"),
            Map.entry("Products.tiffBits", "chosen when a picture is exported"),
            Map.entry("Products.reports", "chosen when a report is exported"),
            Map.entry("MapFile.file", "chosen when a map is exported"),
            Map.entry("MapFile.width", "chosen when a map is exported"),
            Map.entry("MapFile.graticule", "chosen when a map is exported"),
            Map.entry("TurningFile.file", "chosen when an animation is exported"),
            Map.entry("TurningFile.from", "chosen when an animation is exported"),
            Map.entry("TurningFile.until", "chosen when an animation is exported"),
            Map.entry("TurningFile.count", "chosen when an animation is exported"));

    /** Controls that do not exchange the component by its name: their ids. */
    private static final Map<String, String> OTHER_CONTROLS = Map.ofEntries(
            Map.entry("Recipe.epoch", "epoch"),
            Map.entry("Corrections.system", "system"),
            Map.entry("WhiteBalance.white", "white"),
            Map.entry("WhiteBalance.solar", "gains"),
            Map.entry("Grading.levels", "level-black"),
            Map.entry("NameClock.meaning", "setup-meaning"),
            Map.entry("NameClock.exposure", "length"),
            Map.entry("NameClock.utcOffset", "offset"),
            Map.entry("Conventions.passbands", "passband"),
            Map.entry("Conventions.encoding", "encoding"),
            Map.entry("Conventions.plannedLengths", "plan-use"));

    /** A choice that is no record of choices itself, and the record it belongs to. */
    private record Declared(Class<?> owner, RecordChoice choice) {
        String name() {
            return owner.getSimpleName() + "." + choice.name();
        }
    }

    private static Stream<Declared> choices(Class<?> owner) {
        return RecordChoice.of(owner).stream()
                .filter(c -> c.component().isAnnotationPresent(Choice.class))
                .flatMap(c ->
                        isGroup(content(c.type())) ? choices(content(c.type())) : Stream.of(new Declared(owner, c)));
    }

    private static List<Declared> all() {
        List<Declared> all = Stream.concat(choices(Session.class), choices(Conventions.class))
                .toList();
        assertTrue(all.size() > 50, () -> "only " + all.size());
        return all;
    }

    private static boolean isGroup(Class<?> type) {
        return type.isRecord()
                && RecordChoice.of(type).stream().anyMatch(c -> c.component().isAnnotationPresent(Choice.class));
    }

    private static Class<?> content(Type type) {
        if (type instanceof ParameterizedType p) {
            return p.getRawType() == Optional.class
                    ? content(p.getActualTypeArguments()[0])
                    : (Class<?>) p.getRawType();
        }
        return (Class<?>) type;
    }

    @Test
    void everyChoiceHasAnOption() {
        CommandSpec combine = new CommandLine(new CombineCommand()).getCommandSpec();
        assertEquals(
                List.of(),
                all().stream()
                        .filter(c -> combine.findOption("--" + c.choice().option()) == null)
                        .map(Declared::name)
                        .toList());
    }

    @Test
    void everyKeyIsDocumented() throws IOException {
        String text = Files.readString(Path.of("docs/session-file.md"));
        assertEquals(
                List.of(),
                all().stream()
                        .filter(c -> !text.contains("`" + c.choice().key() + "`"))
                        .map(Declared::name)
                        .toList());
    }

    @Test
    void everyChoiceHasADefault() {
        Path file = Path.of("a.png");
        int checked = 0;
        for (Record usual : List.of(
                Session.usual(Recipe.usual(List.of(), Body.JUPITER)),
                Conventions.UNKNOWN,
                MapFile.usual(file),
                TurningFile.usual(file))) {
            checked += defaults(usual);
        }
        assertTrue(checked > 50, "only " + checked);
    }

    private static int defaults(Record usual) {
        int count = 0;
        for (RecordChoice choice : RecordChoice.of(usual.getClass())) {
            Object value = choice.of(usual);
            assertNotNull(value, () -> usual.getClass() + "." + choice.name());
            count += value instanceof Record r && isGroup(r.getClass()) ? defaults(r) : 1;
        }
        return count;
    }

    @Test
    void everyChoiceHasAControlOrAReasonWhyNot() throws IOException {
        String panels;
        try (Stream<Path> files = Files.walk(Path.of("src/main/java/org/epochrome/desktop"))) {
            panels = files.filter(f -> f.toString().endsWith(".java"))
                    .map(ChoicesTest::text)
                    .collect(Collectors.joining());
        }
        assertEquals(
                List.of(),
                OTHER_CONTROLS.values().stream()
                        .filter(id -> !panels.contains('"' + id + '"'))
                        .toList());
        TreeSet<String> without = all().stream()
                .filter(c -> !panels.contains(
                        c.owner().getSimpleName() + "::" + c.choice().name()))
                .map(Declared::name)
                .filter(name -> !OTHER_CONTROLS.containsKey(name))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(new TreeSet<>(WITHOUT_CONTROL.keySet()), without);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** One component is exchanged, all others stay; the record's own checks hold. */
    @Test
    void oneComponentIsExchanged() {
        Corrections usual = Corrections.usual(Body.MARS);
        Corrections other = usual.with(Corrections::turn, false);
        for (RecordChoice choice : RecordChoice.of(Corrections.class)) {
            assertEquals(choice.name().equals("turn") ? false : choice.of(usual), choice.of(other), choice.name());
        }
        assertEquals(usual, other.with(Corrections::turn, true));
    }
}
