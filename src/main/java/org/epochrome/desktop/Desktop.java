package org.epochrome.desktop;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.stage.Screen;
import javafx.stage.Stage;
import org.epochrome.about.Release;
import org.epochrome.desktop.control.KeptPreferences;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.control.SessionController;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.render.WarmUp;
import org.epochrome.desktop.style.AppIcon;
import org.epochrome.desktop.style.Texts;
import org.epochrome.desktop.view.Workbench;

/** The window. */
public final class Desktop extends Application {
    private static final double WIDTH = 1440;
    private static final double HEIGHT = 900;
    private static final double LEAST_WIDTH = 1000;
    private static final double LEAST_HEIGHT = 640;
    private static final long AUTOSAVE_MS = 1500;
    private static final List<Integer> ICON_SIZES = List.of(16, 32, 48, 128, 256);

    private final ExecutorService background = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "bench");
        thread.setDaemon(true);
        return thread;
    });
    /** One processor is left to the window, so that it does not wait for its own pictures. */
    private final ForkJoinPool quick =
            new ForkJoinPool(Math.max(1, Runtime.getRuntime().availableProcessors() - 1));

    private Runnable letGo = () -> {};

    /** Opens the window and returns when it is closed. */
    static void open(String[] args) {
        launch(Desktop.class, args);
    }

    @Override
    public void start(Stage stage) {
        Path folder = Path.of(System.getProperty("user.home"), ".epochrome");
        Preferences preferences = new Preferences(folder);
        Executor later = CompletableFuture.delayedExecutor(AUTOSAVE_MS, TimeUnit.MILLISECONDS, background);
        Workspace bench = new Workspace(background, quick, Platform::runLater);
        WarmUp warmUp = new WarmUp(folder.resolve("warm-up"), quick);
        bench.draftProperty().addListener((o, old, now) -> warmUp.end());
        SessionController controller = new SessionController(
                bench, preferences, folder, Release.THIS.version(), background, later, Platform::runLater);
        letGo = controller::end;
        bench.setBeginning(preferences.beginning());
        Workbench workbench = new Workbench(bench, controller, preferences, new SystemChoosers(stage, this::show));
        Rectangle2D screen = Screen.getPrimary().getVisualBounds();
        stage.setScene(new Scene(workbench, Math.min(WIDTH, screen.getWidth()), Math.min(HEIGHT, screen.getHeight())));
        stage.setMinWidth(Math.min(LEAST_WIDTH, screen.getWidth()));
        stage.setMinHeight(Math.min(LEAST_HEIGHT, screen.getHeight()));
        stage.setTitle(Texts.of("window.title"));
        ICON_SIZES.forEach(px -> stage.getIcons().add(AppIcon.ofSize(px)));
        controller.fileProperty().addListener((o, old, now) -> entitle(stage, bench, controller));
        bench.draftProperty().addListener((o, old, now) -> entitle(stage, bench, controller));
        preferences.window().ifPresent(place -> restore(stage, place));
        stage.setOnCloseRequest(e -> {
            e.consume();
            workbench.leave(() -> {
                preferences.setWindow(new KeptPreferences.WindowPlace(
                        stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight(), stage.isMaximized()));
                stage.close();
            });
        });
        stage.show();
        workbench.prepare();
        background.execute(warmUp);
        workbench.take(Arrays.stream(getParameters().getRaw().toArray(new String[0]))
                .filter(arg -> !arg.equals("desktop"))
                .map(Path::of)
                .toList());
    }

    /** The file's name, with a mark in front while something is not saved. */
    private static void entitle(Stage stage, Workspace bench, SessionController controller) {
        String title = controller
                .fileProperty()
                .get()
                .map(f -> Texts.of("window.title.file", f.getFileName()))
                .orElse(Texts.of("window.title"));
        stage.setTitle(bench.unsaved() ? Texts.of("window.title.unsaved", title) : title);
    }

    /** Puts the window where it was, if a screen is still there. */
    private static void restore(Stage stage, KeptPreferences.WindowPlace place) {
        if (Screen.getScreensForRectangle(place.x(), place.y(), place.width(), place.height())
                .isEmpty()) {
            return;
        }
        stage.setX(place.x());
        stage.setY(place.y());
        stage.setWidth(place.width());
        stage.setHeight(place.height());
        stage.setMaximized(place.maximized());
    }

    private void show(Path folder) {
        getHostServices().showDocument(folder.toUri().toString());
    }

    @Override
    public void stop() {
        letGo.run();
        background.shutdownNow();
        quick.shutdownNow();
    }
}
