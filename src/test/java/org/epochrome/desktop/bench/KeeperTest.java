package org.epochrome.desktop.bench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.io.Conventions;
import org.epochrome.io.FrameRequest;
import org.epochrome.session.CommandWords;
import org.epochrome.session.Frames;
import org.epochrome.session.Mirroring;
import org.epochrome.session.Mount;
import org.epochrome.session.Place;
import org.epochrome.session.Recipe;
import org.epochrome.session.Session;
import org.epochrome.session.Setup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Work that would make pictures is left lying here: what counts is what is kept. */
class KeeperTest {
    @TempDir
    private Path folder;

    private final Queue<Runnable> pictures = new ArrayDeque<>();
    private final Queue<Runnable> later = new ArrayDeque<>();
    private Bench bench;
    private Keeper keeper;

    @BeforeEach
    void begin() {
        bench = new Bench(pictures::add, pictures::add, Runnable::run);
        keeper = keeper(bench);
    }

    private Keeper keeper(Bench of) {
        return new Keeper(of, new Remembered(folder), folder, "test", Runnable::run, later::add, Runnable::run);
    }

    private void tick() {
        while (!later.isEmpty()) {
            later.remove().run();
        }
    }

    private static Session jupiter() {
        List<FrameRequest> files = Stream.of("R", "G", "B")
                .map(band -> FrameRequest.of(
                        Path.of("demo-data/jupiter/jupiter-" + band + ".fits").toAbsolutePath()))
                .toList();
        return Session.usual(Recipe.usual(Frames.found(files, Conventions.UNSAID), Body.JUPITER)
                .with(Place.at(new Site(46.2, 8.5, 480))));
    }

    @Test
    void aCrashLosesNothing() {
        bench.open(jupiter());
        bench.editSession(
                "set north", s -> s.with(s.recipe().with(s.recipe().setup().posed(12, Mirroring.NO))));
        Session edited = bench.draft().session().orElseThrow();
        tick();

        Bench next = new Bench(pictures::add, pictures::add, Runnable::run);
        Keeper after = keeper(next);
        assertTrue(after.leftover().isPresent());
        after.recover();
        Session recovered = next.draft().session().orElseThrow();
        assertEquals(CommandWords.of(edited), CommandWords.of(recovered));
        assertTrue(next.unsaved(), "it was recovered, not saved");
        assertEquals(Optional.empty(), after.fileProperty().get());
    }

    @Test
    void whatWasSavedIsNotLeftOver() {
        bench.open(jupiter());
        bench.editSession(
                "set north", s -> s.with(s.recipe().with(s.recipe().setup().posed(12, Mirroring.NO))));
        tick();
        assertTrue(keeper.leftover().isPresent());
        assertTrue(bench.unsaved());
        Path file = folder.resolve("night.json");
        keeper.save(file, () -> {});
        assertTrue(Files.exists(file));
        assertFalse(bench.unsaved());
        assertEquals(Optional.empty(), keeper.leftover());
        assertEquals(List.of(file), new Remembered(folder).sessions());
        bench.undo();
        assertTrue(bench.unsaved(), "undo goes back behind what was saved");
        bench.redo();
        assertFalse(bench.unsaved());
    }

    /** A frame that was moved away is told of, kept in the session, and taken up again from wherever it is dropped in. */
    @Test
    void aSessionOpensWithoutAMissingFrame() throws Exception {
        Path night = Files.createDirectories(folder.resolve("night"));
        for (String band : List.of("R", "G", "B")) {
            String name = "jupiter-" + band + ".fits";
            Files.copy(Path.of("demo-data/jupiter", name), night.resolve(name));
        }
        bench.take(List.of(night));
        run(pictures);
        Path file = night.resolve("night.json");
        keeper.save(file, () -> {});
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere")).resolve("jupiter-B.fits");
        Files.move(night.resolve("jupiter-B.fits"), elsewhere);

        keeper.open(file);
        assertEquals(2, bench.draft().frames().size());
        assertEquals(Topic.FRAME, bench.selectionProperty().get().topic());
        assertEquals(
                "jupiter-B.fits is not where the session says; drop it in here, or forget it.",
                Sentences.inWords(bench.draft().absent().get(0).problem()));
        keeper.save(file, () -> {});
        keeper.open(file);
        assertEquals(1, bench.draft().absent().size(), "saving forgets nothing");

        bench.take(List.of(elsewhere));
        run(pictures);
        assertEquals(3, bench.draft().frames().size());
        assertEquals(List.of(), bench.draft().absent());
        bench.undo();
        bench.edit("forget a file", d -> d.without(night.resolve("jupiter-B.fits")));
        assertEquals(List.of(), bench.draft().absent());
        assertEquals(2, bench.draft().frames().size());
    }

    /** Finds frames; the pictures that would be made of them are left lying. */
    private static void run(Queue<Runnable> work) {
        Runnable last = null;
        for (Runnable next : List.copyOf(work)) {
            last = next;
        }
        work.clear();
        last.run();
        work.clear();
    }

    @Test
    void aFileThatCannotBeWrittenIsSaidSo() {
        bench.open(jupiter());
        keeper.save(folder, () -> {});
        assertTrue(
                bench.problemProperty().get().contains(folder.getFileName().toString()), bench.problemProperty()::get);
        assertTrue(bench.problemProperty().get().endsWith("."));
    }

    /** Choosers ask whether a file may be replaced; a frame may not. */
    @Test
    void aSessionIsNotSavedOverAFrame() throws Exception {
        Path night = Files.createDirectories(folder.resolve("night"));
        Path red = Files.copy(Path.of("demo-data/jupiter/jupiter-R.fits"), night.resolve("jupiter-R.fits"));
        byte[] before = Files.readAllBytes(red);
        bench.open(Session.usual(
                Recipe.usual(Frames.found(List.of(FrameRequest.of(red)), Conventions.UNSAID), Body.JUPITER)));
        keeper.save(Files.createLink(night.resolve("night.json"), red), () -> {});
        assertTrue(
                bench.problemProperty().get().contains("night.json is one of the files"), bench.problemProperty()::get);
        assertArrayEquals(before, Files.readAllBytes(night.resolve("night.json")));
    }

    /** A large picture is finished once more when it is saved: that may be too much. */
    @Test
    void tooLittleMemoryIsSaidSo() {
        keeper.inBackground(
                () -> {
                    throw new OutOfMemoryError("as if");
                },
                never -> {});
        assertTrue(bench.problemProperty().get().contains("do not fit"), bench.problemProperty()::get);
    }

    @Test
    void remembersSitesTelescopesAndTheme() {
        Remembered first = new Remembered(folder);
        Site balcony = new Site(46.2, 8.5, 480);
        first.keep("balcony", balcony);
        first.use(balcony);
        Setup setup = new Setup(OptionalDouble.of(20), Mirroring.YES, OptionalDouble.of(0.11), Mount.ALTAZ);
        first.keep(Remembered.NamedTelescope.of("Newton", setup));
        first.setTheme("NIGHT");
        Remembered next = new Remembered(folder);
        assertEquals(List.of(new Remembered.NamedSite("balcony", balcony)), next.sites());
        assertEquals(Optional.of(balcony), next.site());
        assertEquals("NIGHT", next.theme());
        Setup other = next.telescopes().get(0).on(Setup.UNKNOWN);
        assertEquals(Mirroring.YES, other.mirroring());
        assertEquals(0.11, other.scaleArcsecPerPx().orElseThrow());
        assertTrue(other.northDeg().isEmpty(), "north belongs to the night, not to the telescope");
        next.forget(next.sites().get(0));
        next.forget(next.telescopes().get(0));
        Remembered last = new Remembered(folder);
        assertEquals(List.of(), last.sites());
        assertEquals(List.of(), last.telescopes());
        assertEquals(Optional.of(balcony), last.site(), "new sessions still begin there");
    }

    @Test
    void damagedPreferencesCountAsNone() throws Exception {
        Files.writeString(folder.resolve("preferences.json"), "{ \"sites\": [");
        assertEquals(List.of(), new Remembered(folder).sites());
    }
}
