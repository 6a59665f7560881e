package org.epochrome.desktop;

import static java.nio.file.StandardCopyOption.REPLACE_EXISTING;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.scene.Node;
import javafx.scene.SnapshotParameters;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Labeled;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.transform.Transform;
import javax.imageio.ImageIO;
import org.epochrome.desktop.state.PlanInputs;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.view.Probe;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.sessionfile.SessionFile;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/**
 * Makes the guide's pictures of the window from the program itself, on the demo sessions; docs/pictures/make-desktop.sh runs it.
 * Arguments: folder for the pictures, width, height, scale, theme, and optionally the one picture that is wanted.
 */
public final class Portraits {
    private final FxRobot robot = new FxRobot();
    private final Path folder;
    private final double scale;
    private final Optional<String> only;
    private final Rig rig;

    private Portraits(Path folder, double scale, Optional<String> only, Rig rig) {
        this.folder = folder;
        this.scale = scale;
        this.only = only;
        this.rig = rig;
    }

    public static void main(String[] args) throws Exception {
        Path folder = Path.of(args[0]);
        Files.createDirectories(folder);
        Path home = Files.createTempDirectory("portraits");
        FxToolkit.registerPrimaryStage();
        Rig[] rig = new Rig[1];
        FxToolkit.setupStage(stage -> {
            rig[0] = new Rig(home, stage, Double.parseDouble(args[1]), Double.parseDouble(args[2]));
            rig[0].preferences().setTheme(args[4]);
            rig[0].preferences().setAsked();
            rig[0].renewTheme();
            stage.show();
        });
        new Portraits(
                        folder,
                        Double.parseDouble(args[3]),
                        args.length > 5 ? Optional.of(args[5]) : Optional.empty(),
                        rig[0])
                .all();
        System.exit(0);
    }

    private void all() throws Exception {
        take("invitation");
        plan();
        jupiter();
        take("first-picture");
        press(KeyCode.G, KeyCode.L, KeyCode.P);
        hover(0.62, 0.45);
        take("lines");
        press(KeyCode.G, KeyCode.L, KeyCode.P);
        press(KeyCode.S);
        await(() -> rig.bench().renderer().beforeProperty().get().isPresent());
        take("split");
        press(KeyCode.S);
        topic(Topic.FRAME);
        take("frame");
        topic(Topic.DISK);
        await(() -> rig.handleAt("EAST").isPresent());
        take("disk");
        topic(Topic.SHIFT);
        take("shift");
        topic(Topic.COLOUR);
        take("colour");
        topic(Topic.DETAIL);
        await(() -> rig.bench().renderer().detailProperty().get().isPresent());
        take("detail");
        topic(Topic.FRAMING);
        robot.interact(() -> rig.frame());
        settle();
        take("framing");
        robot.interact(() -> rig.bench().undo());
        settle();
        topic(Topic.EVIDENCE);
        take("evidence");
        robot.interact(() -> rig.display("FRINGES"));
        settle();
        take("fringes");
        robot.interact(() -> rig.display("STRIP"));
        settle();
        take("strip");
        robot.interact(() -> rig.display("FINISHED"));
        settle();
        robot.interact(() -> rig.display("MAP"));
        settle();
        take("map");
        robot.interact(() -> rig.display("FINISHED"));
        settle();
        robot.interact(() -> rig.press("#preferences"));
        take("setup");
        robot.interact(() -> rig.press("#setup-later"));
        robot.interact(() -> rig.press("#open-help"));
        take("help");
        robot.interact(() -> rig.press("#help-close"));
        press(KeyCode.F1);
        take("keys");
        press(KeyCode.F1);
        robot.push(KeyCode.CONTROL, KeyCode.W);
        take("unsaved");
        robot.interact(() -> rig.bench().clear());
        mars();
        saturn();
        robot.interact(() -> rig.bench().clear());
        trouble();
    }

    /** A night of Jupiter at an invented site. */
    private void plan() throws Exception {
        rig.preferences()
                .setPlan(PlanInputs.USUAL
                        .with(PlanInputs::latitude, "46.2")
                        .with(PlanInputs::longitude, "8.5")
                        .with(PlanInputs::offset, "+01:00"));
        robot.push(KeyCode.CONTROL, KeyCode.P);
        robot.interact(() -> ((DatePicker) rig.workbench().lookup("#plan-date")).setValue(LocalDate.of(2026, 12, 5)));
        await(() -> ((Labeled) rig.workbench().lookup(".plan-title")).getText().contains("2026-12-05"));
        take("plan");
        robot.push(KeyCode.ESCAPE);
    }

    /** What goes wrong for people. */
    private void trouble() throws Exception {
        Path frames = folder.resolve("frames");
        rig.demoFrames(frames, 2);
        Path broken = frames.resolve("broken.fits");
        Files.write(broken, Arrays.copyOf(Files.readAllBytes(frames.resolve("jupiter-R.fits")), 4000));
        robot.interact(() -> rig.bench().take(List.of(broken)));
        await(() -> !rig.bench().problemProperty().get().isEmpty());
        take("broken");
        Files.delete(broken);
        robot.interact(() -> rig.bench().clear());
        rig.cut(frames.resolve("jupiter-G.fits"));
        robot.interact(() -> rig.bench().take(List.of(frames), Place.at(new Site(46.2, 8.5, 480))));
        await(() -> !rig.bench().problemProperty().get().isEmpty());
        take("cut");
        robot.interact(() -> rig.bench().clear());
        rig.demoFrames(frames, 2);
        robot.interact(() -> rig.bench().take(List.of(frames), Place.at(new Site(46.2, 8.5, 480))));
        settle();
        Path session = frames.resolve("session.json");
        SessionFile.write(rig.bench().draft().session().orElseThrow(), session, "0", true);
        Files.move(frames.resolve("jupiter-B.fits"), folder.resolve("elsewhere.fits"), REPLACE_EXISTING);
        robot.interact(() -> rig.controller().open(session));
        await(() -> !rig.bench().draft().absent().isEmpty()
                && !rig.bench().renderer().work().busyProperty().get());
        take("missing");
    }

    private void jupiter() throws Exception {
        robot.interact(() -> rig.bench()
                .take(
                        List.of(
                                Path.of("demo-data/jupiter/jupiter-R.fits"),
                                Path.of("demo-data/jupiter/jupiter-G.fits"),
                                Path.of("demo-data/jupiter/jupiter-B.fits")),
                        Place.at(new Site(46.2, 8.5, 480))));
        settle();
    }

    private void mars() throws Exception {
        robot.interact(() -> rig.bench().take(List.of(Path.of("demo-data/mars/mars-1-R.png")), Place.UNKNOWN));
        await(() -> !rig.bench().draft().unsettled().isEmpty());
        take("question");
        robot.interact(() -> rig.bench().clear());
        robot.interact(() ->
                rig.bench().take(List.of(Path.of("demo-data/mars/session.csv")), Place.at(new Site(40.4, -3.5, 700))));
        await(() -> !rig.bench().draft().loose().isEmpty());
        take("planet");
        robot.interact(() -> rig.bench().clear());
    }

    private void saturn() throws Exception {
        robot.interact(() -> rig.bench()
                .take(List.of(Path.of("demo-data/saturn/session.csv")), Place.at(new Site(-37, 146.5, 300))));
        settle();
        take("saturn");
    }

    private void topic(Topic topic) throws Exception {
        robot.interact(() -> {
            rig.bench().select(topic);
            rig.bench()
                    .selectionProperty()
                    .set(rig.bench().selectionProperty().get().of(2));
        });
        settle();
    }

    private void press(KeyCode... keys) {
        Node planet = robot.lookup("#planet").query();
        for (KeyCode key : keys) {
            robot.interact(planet::requestFocus);
            robot.push(key);
        }
        WaitForAsyncUtils.waitForFxEvents();
    }

    private void hover(double x, double y) {
        Node planet = robot.lookup("#planet").query();
        var bounds = planet.localToScreen(planet.getBoundsInLocal());
        robot.moveTo(bounds.getMinX() + x * bounds.getWidth(), bounds.getMinY() + y * bounds.getHeight());
    }

    private void settle() throws Exception {
        await(() -> rig.bench().combination().isPresent()
                && !rig.bench().renderer().work().busyProperty().get());
        await(() -> rig.bench().renderer().detailProperty().get().isPresent());
    }

    private static void await(BooleanSupplier condition) throws Exception {
        WaitForAsyncUtils.waitFor(600, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(condition::getAsBoolean)
                .get());
        WaitForAsyncUtils.waitForFxEvents();
    }

    private void take(String name) throws IOException {
        if (only.filter(o -> !o.equals(name)).isPresent()) {
            return;
        }
        WaitForAsyncUtils.waitForFxEvents();
        BufferedImage[] made = new BufferedImage[1];
        robot.interact(() -> {
            SnapshotParameters parameters = new SnapshotParameters();
            parameters.setTransform(Transform.scale(scale, scale));
            made[0] = copied(Probe.root(rig.workbench()).snapshot(parameters, null));
        });
        ImageIO.write(made[0], "png", folder.resolve(name + ".png").toFile());
        if (only.isPresent()) {
            System.exit(0);
        }
    }

    private static BufferedImage copied(WritableImage image) {
        int width = (int) image.getWidth();
        int height = (int) image.getHeight();
        BufferedImage copy = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        PixelReader pixels = image.getPixelReader();
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                copy.setRGB(x, y, pixels.getArgb(x, y));
            }
        }
        return copy;
    }
}
