package org.epochrome.desktop.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.epochrome.demo.DemoSession;
import org.epochrome.demo.DemoSessions;
import org.epochrome.io.OverwriteGuard;
import org.epochrome.session.Place;
import org.epochrome.session.Session;
import org.epochrome.session.SessionFile;

/** Keeps what is on the bench: saves, opens, and writes the session down by itself so that a crash loses nothing. */
public final class Keeper {
    private final Bench bench;
    private final Remembered remembered;
    private final Path folder;
    private final String version;
    private final Executor background;
    private final Executor later;
    private final Executor face;
    private final ReadOnlyObjectWrapper<Optional<Path>> file = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
    private final Exports exports;
    private int changes;

    /**
     * @param folder where preferences and the session that was not saved are kept
     * @param version of the program, which files name
     * @param background runs work
     * @param later runs work after a second or two
     * @param face takes results
     */
    public Keeper(
            Bench bench,
            Remembered remembered,
            Path folder,
            String version,
            Executor background,
            Executor later,
            Executor face) {
        this.bench = bench;
        this.remembered = remembered;
        this.folder = folder;
        this.version = version;
        this.background = background;
        this.later = later;
        this.face = face;
        exports = new Exports(bench, this, version);
        bench.undoableProperty().addListener((o, old, now) -> changed());
        bench.draftProperty().addListener((o, old, now) -> changed());
    }

    /** Saves what is made of the session. */
    public Exports exports() {
        return exports;
    }

    /** The file of the session; empty if it was never saved. */
    public ReadOnlyObjectProperty<Optional<Path>> fileProperty() {
        return file.getReadOnlyProperty();
    }

    /** What was done last, one sentence. */
    public ReadOnlyStringProperty saidProperty() {
        return said.getReadOnlyProperty();
    }

    /** Says something in the last line. */
    public void say(String sentence) {
        said.set(sentence);
    }

    private Path unsaved() {
        return folder.resolve("unsaved-session.json");
    }

    /** The session that an earlier run did not end with, if there is one. */
    public Optional<Path> leftover() {
        return Optional.of(unsaved()).filter(Files::exists);
    }

    private void changed() {
        int now = ++changes;
        later.execute(() -> face.execute(() -> {
            if (now == changes) {
                writeDown();
            }
        }));
    }

    private void writeDown() {
        Optional<Session> session = bench.draft().session();
        if (session.isEmpty() || !bench.unsaved()) {
            return;
        }
        background.execute(() -> {
            try {
                SessionFile.write(session.get(), unsaved(), version, true);
            } catch (RuntimeException e) {
                face.execute(() -> said.set("The session could not be kept for the case of a crash."));
            }
        });
    }

    /** Nothing is left over: the session was saved, or is not wanted. */
    public void forgetUnsaved() {
        changes++;
        try {
            Files.deleteIfExists(unsaved());
        } catch (IOException e) {
            // It will be offered once more, which does no harm.
        }
    }

    /** Takes up what an earlier run left. */
    public void recover() {
        leftover().ifPresent(path -> open(path, false));
    }

    /** Opens a session file. */
    public void open(Path path) {
        open(path, true);
    }

    private void open(Path path, boolean own) {
        inBackground(() -> SessionFile.read(path), opened -> {
            bench.open(opened.session());
            file.set(own ? Optional.of(path) : Optional.empty());
            if (own) {
                remembered.opened(path);
            } else {
                bench.wasSaved(Draft.EMPTY);
            }
            if (!bench.draft().absent().isEmpty()) {
                bench.select(Topic.FRAME);
            }
            said.set(
                    opened.notes().isEmpty()
                            ? "Opened " + path.getFileName() + "."
                            : Sentences.inWords(String.join(" ", opened.notes())));
        });
    }

    /** Begins with the invented Jupiter, which is written into the folder first. */
    public void openDemo() {
        bench.studio().work().begins("drawing the demo session");
        Path at = folder.resolve("demo").resolve("jupiter");
        inBackground(
                () -> {
                    DemoSession demo = DemoSessions.jupiter();
                    List<Path> frames =
                            demo.shots().keySet().stream().map(at::resolve).toList();
                    if (!frames.stream().allMatch(Files::exists)) {
                        demo.write(at, true);
                    }
                    return new Demo(frames, Place.at(demo.site()));
                },
                demo -> {
                    bench.studio().work().ends();
                    bench.clear();
                    file.set(Optional.empty());
                    bench.take(demo.frames, demo.place);
                    said.set("An invented Jupiter: only its geometry is true.");
                });
    }

    private record Demo(List<Path> frames, Place place) {}

    /** Begins with nothing. */
    public void close() {
        bench.clear();
        file.set(Optional.empty());
        forgetUnsaved();
    }

    /** Saves the session. */
    public void save(Path path, Runnable then) {
        Draft draft = bench.draft();
        draft.session()
                .ifPresent(session -> inBackground(
                        () -> {
                            OverwriteGuard.check(
                                    List.of(path), session.recipe().frames().files());
                            SessionFile.write(session, path, version, true);
                            return path;
                        },
                        done -> {
                            bench.wasSaved(draft);
                            file.set(Optional.of(path));
                            remembered.opened(path);
                            forgetUnsaved();
                            said.set("Saved " + path.getFileName() + ".");
                            then.run();
                        }));
    }

    interface Step<T> {
        T run();
    }

    /** Does something in the background, and tells if it went wrong. */
    <T> void inBackground(Step<T> step, Consumer<T> done) {
        background.execute(() -> {
            try {
                T result = step.run();
                face.execute(() -> done.accept(result));
            } catch (RuntimeException | OutOfMemoryError e) {
                face.execute(() -> {
                    said.set("");
                    bench.studio().work().ends();
                    bench.refused(e);
                });
            }
        });
    }
}
