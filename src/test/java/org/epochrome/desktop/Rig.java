package org.epochrome.desktop;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.event.ActionEvent;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.stage.Stage;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.control.SessionController;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.render.Display;
import org.epochrome.desktop.render.WarmUp;
import org.epochrome.desktop.view.FileChoosers;
import org.epochrome.desktop.view.Probe;
import org.epochrome.desktop.view.Workbench;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.fits.FitsImage;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.session.recipe.Frames;
import org.epochrome.time.RecordingSpan;
import org.epochrome.time.UtcText;

/** The workbench in a stage, with choosers that answer what a test says. */
final class Rig {
    /** Work that is asked for while a test ends is dropped. */
    private final ExecutorService background = new ThreadPoolExecutor(
            0,
            Integer.MAX_VALUE,
            60,
            TimeUnit.SECONDS,
            new SynchronousQueue<>(),
            work -> {
                Thread thread = new Thread(work, "bench");
                thread.setDaemon(true);
                return thread;
            },
            new ThreadPoolExecutor.DiscardPolicy());

    private final ForkJoinPool quick = new ForkJoinPool(1);
    private final Workspace bench;
    private final SessionController controller;
    private final Workbench workbench;
    private final Preferences preferences;
    private Path answer = Path.of("unset");
    private List<Path> opens = List.of();

    Rig(Path folder, Stage stage) {
        this(folder, stage, 1280, 800);
    }

    Rig(Path folder, Stage stage, double width, double height) {
        bench = new Workspace(background, quick, Platform::runLater);
        preferences = new Preferences(folder);
        controller = new SessionController(
                bench, preferences, folder, "development", background, work -> {}, Platform::runLater);
        workbench = new Workbench(bench, controller, preferences, new FileChoosers() {
            @Override
            public List<Path> open() {
                return opens;
            }

            @Override
            public Optional<Path> save(String title, String name, List<String> suffixes) {
                return Optional.of(answer);
            }
        });
        stage.setScene(new Scene(workbench, width, height));
        workbench.prepare();
    }

    Workspace bench() {
        return bench;
    }

    /** As the window does when it opens. */
    void rehearse(Path folder) {
        new WarmUp(folder.resolve("rehearsal"), quick).run();
    }

    SessionController controller() {
        return controller;
    }

    /** North up, cropped, with a caption. */
    void frame() {
        bench.editSession("frame the picture", s -> {
            Look l = s.look();
            Framing framing = new Framing(
                    Framing.Orientation.NORTH_UP,
                    OptionalDouble.of(0.25),
                    OptionalDouble.empty(),
                    Optional.of(new Framing.Canvas(900, 760)),
                    true);
            return s.with(new Look(l.white(), l.sharpening(), l.tone(), framing));
        });
    }

    /** Cuts a frame of {@link #demoFrames} so that its disk lies across the edge. */
    void cut(Path file) throws IOException {
        DatedFrame frame = Frames.found(List.of(FrameRequest.of(file)), Conventions.UNKNOWN)
                .get(0);
        Plane whole = frame.load().planes().get(0);
        Plane part = new Plane(whole.width() / 2, whole.height());
        for (int y = 0; y < part.height(); y++) {
            System.arraycopy(whole.data(), y * whole.width(), part.data(), y * part.width(), part.width());
        }
        write(file, part, frame.timing().span(), "G");
    }

    Workbench workbench() {
        return workbench;
    }

    Preferences preferences() {
        return preferences;
    }

    void renewTheme() {
        Probe.theme(workbench, preferences.theme());
    }

    void display(String name) {
        bench.renderer().displayProperty().set(Display.valueOf(name));
    }

    void end() {
        background.shutdownNow();
    }

    void answer(Path file) {
        answer = file;
    }

    void open(Path... files) {
        opens = List.of(files);
    }

    /** The frames of the invented Jupiter on pixels so many times as wide, which is quicker. */
    void demoFrames(Path to, int factor) throws IOException {
        demoFrames(to, factor, Map.of());
    }

    /** These frames with wrong times: by how much each band's are later. */
    void demoFrames(Path to, int factor, Map<String, Duration> later) throws IOException {
        Files.createDirectories(to);
        for (String band : List.of("R", "G", "B")) {
            String name = "jupiter-" + band + ".fits";
            DatedFrame frame = Frames.found(
                            List.of(FrameRequest.of(Path.of("demo-data", "jupiter", name))), Conventions.UNKNOWN)
                    .get(0);
            Duration by = later.getOrDefault(band, Duration.ZERO);
            RecordingSpan said = frame.timing().span();
            RecordingSpan span =
                    new RecordingSpan(said.start().plus(by), said.end().plus(by));
            write(to.resolve(name), Binning.by(factor, frame.load().planes().get(0)), span, band);
        }
    }

    /** As {@link #demoFrames}, as TIFF files whose names tell the middle of the recording and the band, and nothing else. */
    void namedFrames(Path to, int factor) throws IOException {
        Files.createDirectories(to);
        for (String band : List.of("R", "G", "B")) {
            DatedFrame frame = demo(band);
            String name = UtcText.format(frame.timing().span().mid())
                    .replaceAll("[-:Z]", "")
                    .replace('T', '-');
            FrameWriter.write(
                    to.resolve(name + "-" + band + ".tif"),
                    Binning.by(factor, frame.load().planes().get(0)),
                    List.of(),
                    true);
        }
    }

    /** A colour camera's frame without dispersion: three times the green of the invented Jupiter. */
    void colourFrame(Path to, int factor) throws IOException {
        List<Plane> planes = new java.util.ArrayList<>();
        RecordingSpan span = demo("G").timing().span();
        for (int i = 0; i < 3; i++) {
            planes.add(Binning.by(factor, demo("G").load().planes().get(0)));
        }
        FitsWriter.write(
                to,
                List.of(new FitsImage(
                        "",
                        planes,
                        List.of(
                                new FitsCard("DATE-OBS", fits(span.start()), "UTC, start"),
                                new FitsCard("DATE-END", fits(span.end()), "UTC, end"),
                                new FitsCard("TIMESYS", "UTC", ""),
                                new FitsCard("OBJECT", "Jupiter", "invented surface")),
                        List.of())),
                true);
    }

    private static DatedFrame demo(String band) {
        return Frames.found(
                        List.of(FrameRequest.of(Path.of("demo-data", "jupiter", "jupiter-" + band + ".fits"))),
                        Conventions.UNKNOWN)
                .get(0);
    }

    private static void write(Path file, Plane plane, RecordingSpan span, String band) {
        FrameWriter.write(
                file,
                plane,
                List.of(
                        new FitsCard("DATE-OBS", fits(span.start()), "UTC, start"),
                        new FitsCard("DATE-END", fits(span.end()), "UTC, end"),
                        new FitsCard("TIMESYS", "UTC", ""),
                        new FitsCard("FILTER", band, ""),
                        new FitsCard("OBJECT", "Jupiter", "invented surface")),
                true);
    }

    private static String fits(Instant at) {
        return UtcText.format(at).replace("Z", "");
    }

    /** Takes the band out of a FITS header. */
    void blankBand(Path file) {
        try {
            byte[] bytes = Files.readAllBytes(file);
            String head = new String(bytes, 0, 2880, StandardCharsets.US_ASCII);
            int card = head.indexOf("FILTER  =");
            byte[] other = String.format("%-80s", "COMMENT no filter").getBytes(StandardCharsets.US_ASCII);
            System.arraycopy(other, 0, bytes, card, 80);
            Files.write(file, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Where the epoch's marker stands on the ribbon. */
    double epochX() {
        return Probe.epochX(workbench);
    }

    /** Where a handle of the limb is on the screen. */
    Optional<Point2D> handleAt(String grip) {
        return Probe.handle(workbench, grip);
    }

    <T> void choose(String id, T value) {
        Node node = workbench.lookup(id);
        @SuppressWarnings("unchecked")
        ComboBox<T> box = (ComboBox<T>) node;
        box.setValue(value);
    }

    /** Types a text into a field and confirms it. */
    void type(String id, String text) {
        TextField field = (TextField) workbench.lookup(id);
        field.setText(text);
        field.fireEvent(new ActionEvent());
    }

    /** Types a text into a field without confirming it. */
    void enter(String id, String text) {
        ((TextField) workbench.lookup(id)).setText(text);
    }

    String text(String id) {
        return ((javafx.scene.control.Labeled) workbench.lookup(id)).getText();
    }

    /** Presses a button, wherever it is scrolled to. */
    void press(String id) {
        ((javafx.scene.control.ButtonBase) workbench.lookup(id)).fire();
    }
}
