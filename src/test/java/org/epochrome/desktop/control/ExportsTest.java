package org.epochrome.desktop.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.time.UtcText;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file that is asked for before its picture is made holds that picture or is not written. */
@Tag("session")
class ExportsTest {
    @TempDir
    private Path folder;

    private final Queue<Runnable> background = new ArrayDeque<>();
    private Workspace bench;
    private SessionController controller;
    private Path picture;

    @BeforeEach
    void begin() {
        bench = new Workspace(background::add, background::add, Runnable::run);
        controller = new SessionController(
                bench, new Preferences(folder), folder, "test", background::add, work -> {}, Runnable::run);
        picture = folder.resolve("first.png");
    }

    private void work() {
        while (!background.isEmpty()) {
            background.remove().run();
        }
    }

    /** Jupiter on pixels four times as wide, which is quicker, or an empty sky. */
    private Session session(String name, boolean empty) {
        List<FrameRequest> files = new ArrayList<>();
        for (String band : List.of("R", "G", "B")) {
            DatedFrame demo = Frames.found(
                            List.of(FrameRequest.of(Path.of("demo-data/jupiter/jupiter-" + band + ".fits"))),
                            Conventions.UNKNOWN)
                    .get(0);
            Plane plane = Binning.by(4, demo.load().planes().get(0));
            Path file = folder.resolve(name + "-" + band + ".fits");
            FrameWriter.write(
                    file,
                    empty ? new Plane(plane.width(), plane.height()) : plane,
                    List.of(
                            new FitsCard("DATE-OBS", fits(demo.timing().span().start()), ""),
                            new FitsCard("DATE-END", fits(demo.timing().span().end()), ""),
                            new FitsCard("FILTER", band, "")),
                    true);
            files.add(FrameRequest.of(file));
        }
        return Session.usual(Recipe.usual(Frames.found(files, Conventions.UNKNOWN), Body.JUPITER));
    }

    private static String fits(java.time.Instant at) {
        return UtcText.format(at).replace("Z", "");
    }

    @Test
    void aPictureThatCannotBeMadeIsNotAwaitedAnyLonger() {
        bench.open(session("sky", true));
        controller.exports().savePicture(picture);
        work();
        assertFalse(bench.problemProperty().get().isEmpty(), "there is no disk");
        assertEquals(
                "first.png was not saved because there is no picture.",
                controller.saidProperty().get());
        bench.open(session("jupiter", false));
        work();
        assertTrue(bench.combination().isPresent(), bench.problemProperty()::get);
        assertFalse(Files.exists(picture), "the picture of another session");
        controller.exports().savePicture(picture);
        work();
        assertTrue(Files.exists(picture));
    }

    @Test
    void anotherSessionDoesNotGoIntoTheFileOfTheFirst() {
        bench.open(session("jupiter", false));
        controller.exports().savePicture(picture);
        bench.open(session("other", false));
        work();
        assertTrue(bench.combination().isPresent(), bench.problemProperty()::get);
        assertFalse(Files.exists(picture), "the picture of another session");
    }

    @Test
    void aPictureThatIsStoppedIsNotSavedLater() {
        bench.open(session("jupiter", false));
        controller.exports().savePicture(picture);
        bench.renderer().cancel();
        work();
        Path second = folder.resolve("second.png");
        controller.exports().savePicture(second);
        controller.exports().saveReport(folder.resolve("second.json"));
        work();
        assertTrue(Files.exists(second));
        assertTrue(Files.exists(folder.resolve("second.json")), "two that wait are both served");
        assertFalse(Files.exists(picture));
    }
}
