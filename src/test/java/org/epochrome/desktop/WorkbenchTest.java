package org.epochrome.desktop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import org.epochrome.command.CommandLineRun;
import org.epochrome.desktop.control.SessionController;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.render.ScreenPicture;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.state.Topic;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.sessionfile.CommandLineFormatter;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** Does in the window, without a display, what a user does. */
@Tag("session")
class WorkbenchTest {
    /** Disks 100 pixels wide do for what is told to the window, and take a third of the time of the demo's. */
    private static final int COARSER = 4;

    @TempDir
    private Path folder;

    private final FxRobot robot = new FxRobot();
    private Rig rig;

    @BeforeEach
    void open() throws Exception {
        FxToolkit.registerPrimaryStage();
        FxToolkit.setupStage(stage -> {
            rig = new Rig(folder, stage);
            stage.show();
        });
    }

    @AfterEach
    void close() throws Exception {
        FxToolkit.cleanupStages();
        rig.end();
    }

    /** The whole way of a session: first minute, epoch by hand, limb by hand, back, saved, opened again, the same picture. */
    @Test
    void aSessionFromTheFirstMinuteToTheSavedPicture() throws Exception {
        rig.demoFrames(folder.resolve("demo").resolve("jupiter"), COARSER);
        click("#open-demo");
        await("a first picture", () -> bench().renderer().shownProperty().get().isPresent());
        awaitFull();
        assertTrue(
                bench().problemProperty().get().isEmpty(),
                bench().problemProperty().get());
        looksOtherwise();
        Instant midway = epoch();

        dragTheEpoch(60);
        Instant moved = epoch();
        assertNotEquals(midway, moved);
        assertEquals("move the epoch", bench().undoableProperty().get());
        await(
                "a picture of that epoch",
                () -> moved.equals(
                        bench().renderer().shownProperty().get().orElseThrow().epoch()));

        awaitFull();
        assertTrue(
                bench().problemProperty().get().isEmpty(),
                bench().problemProperty().get());
        click("#topic-disk");
        ManualDisk held = drawTheLimb(3);
        assertEquals("draw the limb", bench().undoableProperty().get());
        click("#undo");
        assertTrue(session().recipe().frames().disks().isEmpty(), "the limb is fitted again");
        click("#redo");
        assertEquals(
                held, session().recipe().frames().disks().values().iterator().next());
        click("#undo");

        Path file = folder.resolve("session.json");
        rig.answer(file);
        robot.push(KeyCode.CONTROL, KeyCode.S);
        await("the session file", () -> Files.exists(file) && !bench().unsaved());
        robot.push(KeyCode.CONTROL, KeyCode.W);
        await("an empty bench", () -> bench().draft().isEmpty());
        rig.open(file);
        robot.push(KeyCode.CONTROL, KeyCode.O);
        await("the session", () -> bench().draft().session().isPresent());
        assertEquals(moved, epoch());
        Path picture = folder.resolve("picture.png");
        rig.answer(picture);
        robot.push(KeyCode.CONTROL, KeyCode.E);
        await("the saved picture", () -> Files.exists(picture));

        Path other = folder.resolve("other.png");
        List<String> words = new ArrayList<>(CommandLineFormatter.of(session()));
        words.addAll(List.of("--out", other.toString(), "--quiet"));
        assertEquals(0, CommandLineRun.exitCode(words.toArray(String[]::new)));
        assertArrayEquals(Files.readAllBytes(other), Files.readAllBytes(picture), "window and command line agree");
    }

    /** The limb unrolled by a key, and the picture within its edges while the page Framing is open. */
    private void looksOtherwise() throws Exception {
        robot.interact(() -> robot.lookup("#planet").query().requestFocus());
        robot.push(KeyCode.U);
        awaitForm(ScreenPicture.Form.STRIP);
        robot.push(KeyCode.U);
        awaitForm(ScreenPicture.Form.SKY);
        click("#topic-framing");
        awaitForm(ScreenPicture.Form.FRAMED);
        click("#topic-session");
        awaitForm(ScreenPicture.Form.SKY);
    }

    private void awaitForm(ScreenPicture.Form form) throws Exception {
        await(
                "the picture as " + form,
                () -> bench().renderer().shownProperty().get().orElseThrow().form() == form);
        awaitFull();
    }

    /** Files that do not say what they are get asked about in place, one by one. */
    @Test
    void asksInPlaceWhatFilesDoNotTell() throws Exception {
        Path frames = folder.resolve("frames");
        rig.demoFrames(frames, COARSER);
        Path nameless = Files.copy(frames.resolve("jupiter-R.fits"), folder.resolve("first.fits"));
        rig.blankBand(nameless);
        rig.open(nameless);
        robot.push(KeyCode.CONTROL, KeyCode.O);
        await("a question", () -> !bench().draft().unsettled().isEmpty());
        assertEquals(Topic.FRAME, bench().selectionProperty().get().topic());
        robot.interact(() -> rig.choose("#ask-band", "R"));
        click("#ask-take");
        await("an answer", () -> bench().draft().frames().size() == 1);
        assertTrue(bench().draft().unsettled().isEmpty());
        assertEquals(
                "R", bench().draft().frames().get(0).band().band().orElseThrow().name());

        robot.interact(() -> {
            bench().selectFrame(0);
            rig.choose("#frame-mirrored", Optional.of(true));
        });
        await(
                "a mirrored frame",
                () -> bench().draft().frames().get(0).givenMirrored().isPresent());
        assertTrue(
                CommandLineFormatter.of(session()).stream()
                        .anyMatch(w -> w.matches("--mirrored-frame=.*first.fits=yes")),
                "the command line says it too");

        robot.interact(() -> rig.type("#frame-encoding", "srgb"));
        await(
                "an encoded frame",
                () -> bench().draft().frames().get(0).givenEncoding().isPresent());
        assertEquals(
                Optional.of(true), bench().draft().frames().get(0).givenMirrored(), "what was said before is kept");
    }

    /** Each session that was left is offered by itself, until it is restored or discarded. */
    @Test
    void offersWhatWasNotSaved() throws Exception {
        rig.demoFrames(folder.resolve("frames"), COARSER);
        leave(Body.JUPITER);
        leave(Body.SATURN);
        FxToolkit.setupStage(stage -> {
            rig.end();
            rig = new Rig(folder, stage);
        });
        WaitForAsyncUtils.waitForFxEvents();
        assertEquals(List.of("Restore unsaved session", "Restore unsaved session"), words(".restore"));
        List<String> labels = words(".label");
        int saturn = labels.indexOf("Saturn, 2024-12-18, 3 frames");
        int jupiter = labels.indexOf("Jupiter, 2024-12-18, 3 frames");
        assertTrue(saturn >= 0 && jupiter > saturn, () -> "the newest first: " + labels);
        click(".discard");
        assertEquals(1, words(".restore").size());
        click(".restore");
        await("the session", () -> bench().draft().session().isPresent());
        assertEquals(Body.JUPITER, session().recipe().body());
        assertTrue(bench().unsaved());

        robot.push(KeyCode.CONTROL, KeyCode.W);
        assertEquals("Cancel", words("#keep-session").get(0));
        click("#keep-session");
        assertFalse(bench().draft().isEmpty());
        robot.push(KeyCode.CONTROL, KeyCode.W);
        assertEquals("Don't save", words("#dont-save").get(0));
        click("#dont-save");
        await("an empty bench", () -> bench().draft().isEmpty());
        assertEquals(List.of(), words(".restore"));
    }

    private List<String> words(String which) {
        return robot.lookup(which).queryAll().stream()
                .filter(Node::isVisible)
                .map(node -> ((Labeled) node).getText())
                .toList();
    }

    /** Works on a session in a window that ends without being asked. */
    private void leave(Body body) {
        Workspace other = new Workspace(work -> {}, work -> {}, Runnable::run);
        SessionController controller = new SessionController(
                other, rig.preferences(), folder, "development", Runnable::run, Runnable::run, Runnable::run);
        List<FrameRequest> files = Stream.of("R", "G", "B")
                .map(band -> FrameRequest.of(folder.resolve("frames").resolve("jupiter-" + band + ".fits")))
                .toList();
        other.edit("begin", d -> Draft.of(Session.usual(Recipe.usual(Frames.found(files, Conventions.UNKNOWN), body))));
        controller.end();
    }

    /** On a small screen no word is cut short, and the page can be folded away for the planet. */
    @Test
    void fitsASmallScreen() throws Exception {
        FxToolkit.setupStage(stage -> {
            rig.end();
            rig = new Rig(folder, stage, 640, 400);
            stage.sizeToScene();
        });
        WaitForAsyncUtils.waitForFxEvents();
        double alone = planetWidth();
        click("#topic-session");
        assertTrue(planetWidth() < alone - 300, "beside a page: " + planetWidth());
        List<Node> words = new ArrayList<>(robot.lookup(".label").queryAll());
        words.addAll(robot.lookup(".button").queryAll());
        int counted = 0;
        for (Node node : words) {
            for (Node drawn : node.lookupAll(".text")) {
                String text = ((Labeled) node).getText();
                assertEquals(text.endsWith("..."), ((Text) drawn).getText().endsWith("..."), text);
                counted++;
            }
        }
        assertTrue(counted > 6, counted + " texts");
        for (String edge : List.of(".status-line", "#topic-evidence", ".tools")) {
            Bounds bounds = inWindow(edge);
            assertTrue(bounds.getMaxX() <= 640 && bounds.getMaxY() <= 400, edge + " " + bounds);
        }
        robot.interact(() -> bench().take(List.of(folder.resolve("gone.fits"))));
        await("a message", () -> !bench().problemProperty().get().isEmpty());
        Bounds last = inWindow("#topic-evidence");
        assertTrue(last.getMaxY() <= inWindow("#ribbon").getMinY(), "below a message: " + last);
        robot.interact(() -> bench().dismissProblem());
        click("#topic-session");
        assertEquals(alone, planetWidth(), 1, "the page folded away");
        click("#topic-frame");
        assertTrue(planetWidth() < alone - 300, "another page opens: " + planetWidth());
    }

    private Bounds inWindow(String part) {
        Node node = robot.lookup(part).query();
        return node.localToScene(node.getLayoutBounds());
    }

    private double planetWidth() {
        return robot.lookup("#planet").query().getBoundsInLocal().getWidth();
    }

    private Workspace bench() {
        return rig.bench();
    }

    private Session session() {
        return bench().draft().session().orElseThrow();
    }

    private Instant epoch() {
        return bench().epoch().orElseThrow();
    }

    private void click(String id) {
        robot.clickOn(id);
        WaitForAsyncUtils.waitForFxEvents();
    }

    private void dragTheEpoch(double dx) {
        Node ribbon = robot.lookup("#ribbon").query();
        Point2D at = ribbon.localToScreen(rig.epochX(), 20);
        robot.drag(at).moveTo(at.add(dx / 2, 0)).moveTo(at.add(dx, 0)).drop();
        WaitForAsyncUtils.waitForFxEvents();
    }

    private ManualDisk drawTheLimb(double dx) throws Exception {
        await("the frame with its handles", () -> rig.handleAt("EAST").isPresent());
        Point2D at = rig.handleAt("EAST").orElseThrow();
        robot.drag(at).moveTo(at.add(dx, 0)).moveTo(at.add(2 * dx, 0)).drop();
        WaitForAsyncUtils.waitForFxEvents();
        assertFalse(session().recipe().frames().disks().isEmpty(), "the limb is held");
        return session().recipe().frames().disks().values().iterator().next();
    }

    private void awaitFull() throws Exception {
        await(
                "the full picture",
                () -> bench().combination().isPresent()
                        && !bench().renderer().work().busyProperty().get());
    }

    private void await(String what, Callable<Boolean> condition) throws Exception {
        try {
            WaitForAsyncUtils.waitFor(60, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(condition)
                    .get());
        } catch (java.util.concurrent.TimeoutException e) {
            throw new AssertionError(
                    what + " did not come; " + bench().problemProperty().get(), e);
        }
        WaitForAsyncUtils.waitForFxEvents();
    }

    /** Every button tells what it does, to eyes and to readers of the screen. */
    @Test
    void everyControlTeaches() {
        for (Node node : robot.lookup(".button").queryAll()) {
            Labeled button = (Labeled) node;
            boolean told = button.getTooltip() != null || !button.getText().isBlank();
            assertTrue(told, "a button without a word: " + node);
        }
        assertTrue(robot.lookup(".button").queryAll().size() > 10);
    }
}
