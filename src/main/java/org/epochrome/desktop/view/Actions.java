package org.epochrome.desktop.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import org.epochrome.desktop.control.SessionController;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Texts;
import org.epochrome.desktop.style.Theme;
import org.epochrome.plan.NightPlan;
import org.epochrome.session.product.Session;
import org.epochrome.session.sessionfile.CommandLineFormatter;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.time.UtcText;

/** What can be done with the session as a whole, wherever it was asked for. */
final class Actions {
    private final Workspace bench;
    private final SessionController controller;
    private final FileChoosers choosers;
    private final Workbench workbench;

    Actions(Workspace bench, SessionController controller, FileChoosers choosers, Workbench workbench) {
        this.bench = bench;
        this.controller = controller;
        this.choosers = choosers;
        this.workbench = workbench;
    }

    void open() {
        take(choosers.open());
    }

    /** Takes files that were chosen or dropped. */
    void take(List<Path> files) {
        if (files.isEmpty()) {
            return;
        }
        Optional<Path> session = files.stream().filter(SessionFile::isName).findFirst();
        if (session.isPresent()) {
            workbench.guarded(Texts.of("question.open"), () -> controller.open(session.get()));
        } else {
            bench.take(files);
        }
    }

    void save() {
        controller.fileProperty().get().ifPresentOrElse(path -> controller.save(path, () -> {}), this::saveAs);
    }

    void saveAs() {
        saveAs(() -> {});
    }

    void saveAs(Runnable then) {
        if (bench.draft().session().isPresent()) {
            chosen(Texts.of("chooser.saveSession"), name() + SessionFile.SUFFIX, List.of(SessionFile.SUFFIX, ".json"))
                    .ifPresent(path -> controller.save(path, then));
        }
    }

    /** Saves and goes on. */
    void saveThen(Runnable then) {
        controller.fileProperty().get().ifPresentOrElse(path -> controller.save(path, then), () -> saveAs(then));
    }

    /** The folder of the frames. */
    private Path folder() {
        return bench.draft().frames().stream()
                .map(f -> f.head().file().toAbsolutePath().getParent())
                .findFirst()
                .orElse(Path.of("").toAbsolutePath());
    }

    private Optional<Path> chosen(String title, String proposed, List<String> suffixes) {
        choosers.startIn(folder());
        return choosers.save(title, proposed, suffixes);
    }

    void saveMapWithGraticule() {
        if (bench.draft().session().isPresent()) {
            chosen(Texts.of("chooser.saveMap"), name() + "-map.png", List.of(".png"))
                    .ifPresent(path -> controller.exports().saveMap(path, true));
        }
    }

    void saveTurning() {
        if (bench.draft().session().isPresent()) {
            chosen(Texts.of("chooser.saveTurning"), name() + "-turning.gif", List.of(".gif", ".png"))
                    .ifPresent(controller.exports()::saveTurning);
        }
    }

    void saveSeveral() {
        if (bench.draft().session().isPresent()) {
            workbench.showProducts(folder(), name());
        }
    }

    /** Shows in the system's file manager what was saved last. */
    void reveal() {
        controller.savedProperty().get().ifPresent(choosers::reveal);
    }

    void savePicture() {
        if (bench.draft().session().isPresent()) {
            chosen(Texts.of("chooser.savePicture"), name() + ".png", List.of(".png", ".tif", ".jpg", ".fits"))
                    .ifPresent(controller.exports()::savePicture);
        }
    }

    void saveReport() {
        if (bench.draft().session().isPresent()) {
            chosen(Texts.of("chooser.saveReport"), name() + ".html", List.of(".html", ".json"))
                    .ifPresent(controller.exports()::saveReport);
        }
    }

    void savePlan(NightPlan plan) {
        choosers.save(
                        Texts.of("chooser.savePlan"),
                        "plan-" + plan.settings().body().displayName().toLowerCase(java.util.Locale.ROOT) + "-"
                                + plan.settings().date() + ".html",
                        List.of(".html", ".csv", ".ics", ".json"))
                .ifPresent(path -> controller.exports().savePlan(plan, path));
    }

    void showPlan() {
        workbench.showPlan();
    }

    void saveMap() {
        if (bench.draft().session().isPresent()) {
            chosen(Texts.of("chooser.saveMap"), name() + "-map.png", List.of(".png", ".fits"))
                    .ifPresent(controller.exports()::saveMap);
        }
    }

    /** The planet and the epoch, as names of files can have them. */
    private String name() {
        String body = bench.draft().recipe().map(r -> r.body().displayName()).orElse("session");
        String epoch =
                bench.epoch().map(e -> "-" + UtcText.format(e).replace(":", "")).orElse("");
        return body.toLowerCase(java.util.Locale.ROOT) + epoch;
    }

    void copyCommand() {
        Optional<Session> session = bench.draft().session();
        if (session.isPresent()) {
            ClipboardContent content = new ClipboardContent();
            content.putString(
                    "java -jar epochrome.jar " + CommandLineFormatter.line(CommandLineFormatter.of(session.get())));
            Clipboard.getSystemClipboard().setContent(content);
            workbench.say(Texts.of("status.commandCopied"));
        }
    }

    void close() {
        workbench.guarded(Texts.of("question.close"), controller::close);
    }

    void setTheme(Theme theme) {
        workbench.setTheme(theme);
    }

    /** Asks for frames of something white, and balances the colours by them. */
    void measureWhite() {
        List<Path> files = choosers.open();
        if (!files.isEmpty() && bench.draft().session().isPresent()) {
            controller.measureWhite(files);
        }
    }

    void showSetup() {
        workbench.showSetup();
    }

    void showHelp() {
        workbench.showHelp();
    }

    void showKeys() {
        workbench.showKeys();
    }
}
