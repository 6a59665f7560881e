package org.epochrome.desktop.control;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.stream.Stream;
import org.epochrome.desktop.recovery.RecoveryFolder;
import org.epochrome.desktop.recovery.UnsavedSession;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.state.UserMessages;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.session.sessionfile.CommandLineFormatter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Work that would make pictures is left lying here: what counts is what is kept. */
class SessionControllerTest {
    @TempDir
    private Path folder;

    private final Queue<Runnable> pictures = new ArrayDeque<>();
    private final Queue<Runnable> later = new ArrayDeque<>();
    private Workspace bench;
    private SessionController controller;

    @BeforeEach
    void begin() {
        bench = new Workspace(pictures::add, pictures::add, Runnable::run);
        controller = controller(bench);
    }

    private SessionController controller(Workspace of) {
        return new SessionController(
                of, new Preferences(folder), folder, "test", Runnable::run, later::add, Runnable::run);
    }

    private void tick() {
        runAll(later);
    }

    private static Session jupiter() {
        List<FrameRequest> files = Stream.of("R", "G", "B")
                .map(band -> FrameRequest.of(
                        Path.of("demo-data/jupiter/jupiter-" + band + ".fits").toAbsolutePath()))
                .toList();
        return Session.usual(Recipe.usual(Frames.found(files, Conventions.UNKNOWN), Body.JUPITER)
                .with(Place.at(new Site(46.2, 8.5, 480))));
    }

    @Test
    void aCrashLosesNothing() {
        bench.open(jupiter());
        bench.editSession(
                "set north", s -> s.with(s.recipe().with(s.recipe().setup().oriented(12, Mirroring.NO))));
        Session edited = bench.draft().session().orElseThrow();
        tick();
        controller.end();

        Workspace next = new Workspace(pictures::add, pictures::add, Runnable::run);
        SessionController after = controller(next);
        assertEquals(List.of("Jupiter, 2024-12-18, 3 frames"), titles(after));
        after.restore(after.leftovers().get(0));
        Session recovered = next.draft().session().orElseThrow();
        assertEquals(CommandLineFormatter.of(edited), CommandLineFormatter.of(recovered));
        assertTrue(next.unsaved(), "it was recovered, not saved");
        assertEquals(Optional.empty(), after.fileProperty().get());
        assertEquals(List.of(), titles(after), "it is here now");
        after.end();
        assertEquals(1, titles(controller).size(), "it was not saved yet");
    }

    private static List<String> titles(SessionController of) {
        return of.leftovers().stream().map(UnsavedSession::title).toList();
    }

    private void turnNorth(double deg) {
        bench.editSession(
                "set north", s -> s.with(s.recipe().with(s.recipe().setup().oriented(deg, Mirroring.NO))));
        tick();
    }

    /** As after a crash of this window. */
    private void begunAnew() {
        controller.end();
        begin();
    }

    @Test
    void anotherSessionLeavesTheUnsavedOneAlone() {
        bench.open(jupiter());
        turnNorth(12);
        begunAnew();
        bench.open(jupiter());
        controller.close();
        assertEquals(1, titles(controller).size(), "after opening and closing another");
        bench.open(jupiter());
        turnNorth(13);
        begunAnew();
        assertEquals(2, titles(controller).size(), "after a second crash");
        controller.restore(controller.leftovers().get(0));
        assertEquals(
                13, bench.draft().recipe().orElseThrow().setup().northDeg().orElseThrow(), "the newest comes first");
        controller.save(folder.resolve("night.json"), () -> {});
        controller.close();
        assertEquals(1, titles(controller).size(), "one was saved");
        controller.discard(controller.leftovers().get(0));
        assertEquals(List.of(), titles(controller));
    }

    @Test
    void onlyWhatIsGivenUpIsDeletedWithItsSession() {
        bench.open(jupiter());
        turnNorth(12);
        bench.open(jupiter());
        assertEquals(1, titles(controller).size(), "nobody said that it is not wanted");
        turnNorth(13);
        controller.giveUpChanges();
        controller.close();
        assertEquals(1, titles(controller).size());
        controller.restore(controller.leftovers().get(0));
        controller.giveUpChanges();
        turnNorth(14);
        controller.close();
        assertEquals(1, titles(controller).size(), "it was changed since, so the window stayed open");
    }

    /** Saving takes a while, and the hand does not wait. */
    @Test
    void whatChangesWhileItIsSavedIsStillKept() {
        Queue<Runnable> slow = new ArrayDeque<>();
        bench = new Workspace(pictures::add, pictures::add, Runnable::run);
        controller = new SessionController(
                bench, new Preferences(folder), folder, "test", slow::add, later::add, Runnable::run);
        bench.open(jupiter());
        controller.save(folder.resolve("night.json"), () -> {});
        bench.editSession(
                "set north", s -> s.with(s.recipe().with(s.recipe().setup().oriented(12, Mirroring.NO))));
        runAll(slow);
        tick();
        runAll(slow);
        assertTrue(bench.unsaved());
        controller.save(folder.resolve("night.json"), () -> {});
        bench.open(jupiter());
        runAll(slow);
        assertEquals(Optional.empty(), controller.fileProperty().get(), "the file is that of the session before");
        controller.end();
        assertEquals(1, titles(controller).size());
    }

    private static void runAll(Queue<Runnable> work) {
        while (!work.isEmpty()) {
            work.remove().run();
        }
    }

    @Test
    void whatCannotBeRestoredStaysOnOffer() throws Exception {
        Path unsaved = Files.createDirectories(folder.resolve("unsaved"));
        Files.writeString(unsaved.resolve("broken.json"), "{");
        Files.setLastModifiedTime(unsaved.resolve("broken.json"), FileTime.from(Instant.parse("2025-03-01T10:00:00Z")));
        assertEquals(List.of("Unknown planet, 2025-03-01"), titles(controller));
        UnsavedSession broken = controller.leftovers().get(0);
        controller.restore(broken);
        assertTrue(bench.problemProperty().get().contains("broken.json"), bench.problemProperty()::get);
        assertEquals(List.of(broken), controller.leftovers());
        controller.discard(broken);
        assertEquals(List.of(), controller.leftovers());
        try (Stream<Path> left = Files.list(unsaved)) {
            assertEquals(List.of(), left.toList());
        }
        controller.restore(broken);
        assertTrue(controller.saidProperty().get().contains("discarded"), controller.saidProperty()::get);
    }

    @Test
    void twoWindowsDoNotTakeEachOthersSessions() {
        bench.open(jupiter());
        turnNorth(12);
        SessionController other = controller(new Workspace(pictures::add, pictures::add, Runnable::run));
        assertEquals(List.of(), titles(other), "a window works on it");
        controller.end();
        assertEquals(1, titles(other).size());
        UnsavedSession left = other.leftovers().get(0);
        other.restore(left);
        controller.discard(left);
        other.end();
        assertEquals(List.of(left), controller.leftovers(), "who does not hold it cannot discard it");
    }

    /** Another run of the program, which is killed while it works on a session. */
    @Test
    void aSessionIsOfferedOnceItsProgramIsGone() throws Exception {
        Process other = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Holder.class.getName(),
                        folder.resolve("unsaved").toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try {
            assertEquals('!', other.getInputStream().read(), "the other run has written its session down");
            assertEquals(List.of(), titles(controller), "it works on it");
        } finally {
            other.destroyForcibly().waitFor();
        }
        assertEquals(List.of("Jupiter, 2024-12-18, 3 frames"), titles(controller));
    }

    /** Writes a session down and waits. */
    static final class Holder {
        private Holder() {}

        public static void main(String[] args) throws Exception {
            new RecoveryFolder(Path.of(args[0])).begin().write(jupiter(), 1, "test");
            System.out.print('!');
            System.out.flush();
            Thread.sleep(60_000);
        }
    }

    @Test
    void whatWasSavedIsNotLeftOver() {
        bench.open(jupiter());
        bench.editSession(
                "set north", s -> s.with(s.recipe().with(s.recipe().setup().oriented(12, Mirroring.NO))));
        tick();
        assertTrue(bench.unsaved());
        Path file = folder.resolve("night.json");
        controller.save(file, () -> {});
        assertTrue(Files.exists(file));
        assertFalse(bench.unsaved());
        controller.end();
        assertEquals(List.of(), controller.leftovers());
        assertEquals(List.of(file), new Preferences(folder).sessions());
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
        controller.save(file, () -> {});
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere")).resolve("jupiter-B.fits");
        Files.move(night.resolve("jupiter-B.fits"), elsewhere);

        controller.open(file);
        assertEquals(2, bench.draft().frames().size());
        assertEquals(Topic.FRAME, bench.selectionProperty().get().topic());
        assertEquals(
                "jupiter-B.fits is not where the session expects it; drop it onto the window, or discard it.",
                UserMessages.inWords(bench.draft().absent().get(0).problem()));
        controller.save(file, () -> {});
        controller.open(file);
        assertEquals(1, bench.draft().absent().size(), "saving forgets nothing");

        bench.take(List.of(elsewhere));
        run(pictures);
        assertEquals(3, bench.draft().frames().size());
        assertEquals(List.of(), bench.draft().absent());
        bench.undo();
        bench.edit("forget a file", d -> d.without(java.util.Set.of(night.resolve("jupiter-B.fits"))));
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
        controller.save(folder, () -> {});
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
                Recipe.usual(Frames.found(List.of(FrameRequest.of(red)), Conventions.UNKNOWN), Body.JUPITER)));
        controller.save(Files.createLink(night.resolve("night.json"), red), () -> {});
        assertTrue(bench.problemProperty().get().contains("night.json is also an input"), bench.problemProperty()::get);
        assertArrayEquals(before, Files.readAllBytes(night.resolve("night.json")));
    }

    /** A large picture is finished once more when it is saved: that may be too much. */
    @Test
    void tooLittleMemoryIsSaidSo() {
        controller.inBackground(
                () -> {
                    throw new OutOfMemoryError("as if");
                },
                never -> {});
        assertTrue(bench.problemProperty().get().contains("do not fit"), bench.problemProperty()::get);
    }

    @Test
    void remembersSitesTelescopesAndTheme() {
        Preferences first = new Preferences(folder);
        Site balcony = new Site(46.2, 8.5, 480);
        first.keep("balcony", balcony);
        first.use(balcony);
        Setup setup = new Setup(OptionalDouble.of(20), Mirroring.YES, OptionalDouble.of(0.11), Mount.ALTAZ);
        first.keep(Preferences.NamedTelescope.of("Newton", setup));
        first.setTheme("NIGHT");
        Preferences next = new Preferences(folder);
        assertEquals(List.of(new Preferences.NamedSite("balcony", balcony)), next.sites());
        assertEquals(Optional.of(balcony), next.site());
        assertEquals("NIGHT", next.theme());
        Setup other = next.telescopes().get(0).on(Setup.UNKNOWN);
        assertEquals(Mirroring.YES, other.mirroring());
        assertEquals(0.11, other.scaleArcsecPerPx().orElseThrow());
        assertTrue(other.northDeg().isEmpty(), "north belongs to the night, not to the telescope");
        next.forget(next.sites().get(0));
        next.forget(next.telescopes().get(0));
        Preferences last = new Preferences(folder);
        assertEquals(List.of(), last.sites());
        assertEquals(List.of(), last.telescopes());
        assertEquals(Optional.of(balcony), last.site(), "new sessions still begin there");
    }

    @Test
    void damagedPreferencesCountAsNone() throws Exception {
        Files.writeString(folder.resolve("preferences.json"), "{ \"sites\": [");
        assertEquals(List.of(), new Preferences(folder).sites());
    }
}
