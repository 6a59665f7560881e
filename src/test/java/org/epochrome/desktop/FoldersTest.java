package org.epochrome.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import org.epochrome.desktop.control.Equipment;
import org.epochrome.desktop.control.FrameChanges;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.state.Topic;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.session.product.Session;
import org.epochrome.session.verdict.Verdict;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** Folders as strangers have them, dropped onto the window: each asks at most one question and ends in a picture. */
@Tag("session")
class FoldersTest {
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

    private Workspace bench() {
        return rig.bench();
    }

    private Session session() {
        return bench().draft().session().orElseThrow();
    }

    private void drop(Path... files) {
        robot.interact(() -> rig.workbench().take(List.of(files)));
    }

    private boolean asks() {
        return robot.lookup("#setup").tryQuery().filter(Node::isVisible).isPresent();
    }

    /** The one page that is shown to a new user, with the site as it is written on maps. */
    private void answer(String latitude, String longitude) throws Exception {
        await("the question", this::asks);
        robot.interact(() -> {
            rig.enter("#setup-latitude", latitude);
            rig.enter("#setup-longitude", longitude);
        });
        click("#setup-save");
        assertFalse(asks(), "it is answered at once");
    }

    private void awaitPicture() throws Exception {
        await(
                "the full picture",
                () -> bench().combination().isPresent()
                        && !bench().renderer().work().busyProperty().get());
        assertEquals("", bench().problemProperty().get());
        assertTrue(bench().draft().unsettled().isEmpty(), "no file is asked about");
        assertFalse(asks(), "no further question");
        double misaligned =
                bench().combination().orElseThrow().quality().after().px();
        assertFalse(misaligned > 0.3, misaligned + " px");
        Verdict verdict = bench().combination().orElseThrow().verdict();
        assertEquals(Verdict.Level.GOOD, verdict.level(), verdict.words().toString());
        assertEquals(verdict.words().toString(), ((Hyperlink) rig.workbench().lookup("#verdict-words")).getText());
    }

    /** The time of B is five minutes late: the line says so, and its button corrects the time. */
    @Test
    void aLateFrameIsMendedByAButton() throws Exception {
        rig.demoFrames(folder.resolve("frames"), 2, Map.of("B", Duration.ofMinutes(5)));
        rig.preferences().answered(Optional.of(new Site(46.2, 8.5, 480)), Equipment.UNKNOWN);
        robot.interact(() -> bench().setBeginning(rig.preferences().beginning()));
        drop(folder.resolve("frames"));
        await(
                "the verdict",
                () -> bench().combination().isPresent()
                        && rig.workbench().lookup("#verdict-remedy").isVisible());
        assertTrue(
                ((Hyperlink) rig.workbench().lookup("#verdict-words")).getText().contains("jupiter-B.fits"));
        click("#verdict-remedy");
        awaitPicture();
        assertFalse(rig.workbench().lookup("#verdict-remedy").isVisible());
    }

    @Test
    void jupiter() throws Exception {
        rig.demoFrames(folder.resolve("frames"), COARSER);
        drop(folder.resolve("frames"));
        answer("46° 12' N", "8 30 E");
        awaitPicture();
        Site site = session().recipe().place().site().orElseThrow();
        assertEquals(46.2, site.latitudeDeg(), 1e-6);
        assertEquals(8.5, site.longitudeDeg(), 1e-6);
        assertEquals(Optional.of(site), rig.preferences().site(), "remembered");
    }

    @Tag("thorough")
    @Test
    void marsWithASheet() throws Exception {
        drop(Path.of("demo-data", "mars"));
        answer("40 24 N", "3.5 W");
        awaitPicture();
        assertEquals(Body.MARS, session().recipe().body(), "named by the files");
        assertEquals(-3.5, session().recipe().place().site().orElseThrow().longitudeDeg(), 1e-6);
    }

    @Tag("thorough")
    @Test
    void saturnInThreeFormats() throws Exception {
        rig.preferences().answered(Optional.of(new Site(-37, 146.5, 300)), Equipment.UNKNOWN);
        robot.interact(() -> bench().setBeginning(rig.preferences().beginning()));
        drop(Path.of("demo-data", "saturn"));
        awaitPicture();
        assertEquals(9, bench().draft().frames().size());
    }

    /** Neither headers nor a planet in the names: the planet is asked for together with the rest. */
    @Test
    void namesWithTimesOnly() throws Exception {
        Path night = folder.resolve("night");
        rig.namedFrames(night, COARSER);
        drop(night);
        await("the question", this::asks);
        robot.interact(() -> {
            rig.choose("#setup-planet", Body.JUPITER);
            rig.choose("#setup-meaning", TimestampMeaning.MIDDLE);
            rig.enter("#setup-length", "2 min");
            rig.enter("#setup-latitude", "46.2");
            rig.enter("#setup-longitude", "8.5");
        });
        click("#setup-save");
        await(
                "the length of the recordings",
                () -> bench().draft().frames().get(0).timing().span().duration().toSeconds() == 120);
        awaitPicture();
        assertEquals(
                120,
                bench().draft().frames().get(0).timing().span().duration().toSeconds(),
                "length of the recordings");
    }

    @Tag("thorough")
    @Test
    void colourCamera() throws Exception {
        rig.preferences().answered(Optional.empty(), Equipment.UNKNOWN);
        rig.colourFrame(folder.resolve("colour.fits"), COARSER);
        drop(folder.resolve("colour.fits"));
        awaitPicture();
        assertEquals(1, bench().draft().frames().size());
    }

    /** Half of a site starts nothing, and the message names the field. */
    @Test
    void halfAnAnswerStartsNothing() throws Exception {
        rig.demoFrames(folder.resolve("frames"), COARSER);
        drop(folder.resolve("frames"));
        await("the question", this::asks);
        robot.interact(() -> rig.enter("#setup-latitude", "46.2"));
        click("#setup-save");
        assertTrue(asks(), "it stays open");
        assertTrue(session().recipe().place().site().isEmpty());
        robot.interact(() -> {
            rig.enter("#setup-longitude", "8 75 E");
        });
        click("#setup-save");
        assertTrue(asks(), "it stays open");
        assertTrue(rig.text("#setup-wrong").startsWith("Longitude:"), rig.text("#setup-wrong"));
        click("#setup-later");
        assertFalse(asks());
        assertTrue(rig.preferences().asked(), "it does not ask again");
    }

    /** Frames of another night and of another planet come to sessions of their own. */
    @Test
    void twoPlanetsAndTwoNights() throws Exception {
        rig.preferences().answered(Optional.empty(), Equipment.UNKNOWN);
        rig.demoFrames(folder.resolve("frames"), COARSER);
        drop(folder.resolve("frames"), Path.of("demo-data", "mars"));
        await("a session", () -> bench().draft().session().isPresent());
        assertEquals(6, bench().draft().frames().size(), "the larger one");
        assertEquals(Body.MARS, session().recipe().body());
        assertEquals(1, bench().draft().others().size());
        assertEquals(1, robot.lookup("#other-session").queryAll().size(), "it is told");
        robot.interact(() -> bench().exchangeFor(bench().draft().others().get(0)));
        assertEquals(Body.JUPITER, session().recipe().body());
        assertEquals(3, bench().draft().frames().size());
        assertEquals(6, bench().draft().others().get(0).frames().size(), "the other one waits");
        robot.interact(
                () -> bench().edit("discard", d -> d.withoutOther(d.others().get(0))));
        assertEquals(0, robot.lookup("#other-session").queryAll().size());
    }

    /** Several frames are selected, changed and removed at once; a copy is told and not added. */
    @Tag("thorough")
    @Test
    void changesManyFramesAtOnce() throws Exception {
        rig.preferences().answered(Optional.of(new Site(46.2, 8.5, 480)), Equipment.UNKNOWN);
        robot.interact(() -> bench().setBeginning(rig.preferences().beginning()));
        rig.demoFrames(folder.resolve("frames"), COARSER);
        drop(folder.resolve("frames"));
        awaitPicture();
        robot.interact(() -> bench().select(Topic.FRAME));
        click("#frames-all");
        var before = bench().draft().frames().get(0).timing().span();
        robot.interact(() -> {
            rig.enter("#frames-offset", "+1");
            rig.enter("#frames-length", "90 s");
        });
        robot.interact(() -> rig.press("#frames-apply"));
        await("changed frames", () -> "change frames"
                .equals(bench().undoableProperty().get()));
        var after = bench().draft().frames().get(0).timing().span();
        assertEquals(90, after.duration().toSeconds());
        assertEquals(before.mid().minusSeconds(3600), after.mid());
        assertEquals(
                FrameChanges.TYPED,
                bench().draft().frames().get(0).request().row().orElseThrow().source());
        robot.interact(() -> bench().undo());
        assertEquals(before, bench().draft().frames().get(0).timing().span(), "one step");

        Path copy = Files.copy(folder.resolve("frames").resolve("jupiter-R.fits"), folder.resolve("again.fits"));
        drop(copy);
        await("a message", () -> bench().problemProperty().get().contains("again.fits"));
        assertEquals(3, bench().draft().frames().size());
        robot.interact(() -> rig.press("#frames-remove"));
        assertEquals(0, bench().draft().frames().size(), "all were selected");
    }

    private void click(String what) {
        robot.interact(() -> rig.press(what));
        WaitForAsyncUtils.waitForFxEvents();
    }

    private void await(String what, Callable<Boolean> condition) throws Exception {
        try {
            WaitForAsyncUtils.waitFor(300, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(condition)
                    .get());
        } catch (java.util.concurrent.TimeoutException e) {
            throw new AssertionError(
                    what + " did not come; " + bench().problemProperty().get(), e);
        }
        WaitForAsyncUtils.waitForFxEvents();
    }
}
