package org.epochrome.desktop.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ChangeListener;
import org.epochrome.demo.DemoSession;
import org.epochrome.demo.DemoSessions;
import org.epochrome.evidence.EvidenceReport;
import org.epochrome.io.AtomicFile;
import org.epochrome.session.Combination;
import org.epochrome.session.MapFile;
import org.epochrome.session.Outputs;
import org.epochrome.session.Place;
import org.epochrome.session.Session;
import org.epochrome.session.SessionFile;

/** Keeps what is on the bench: saves, opens, exports, and writes the session down by itself so that a crash loses nothing. */
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
        bench.undoableProperty().addListener((o, old, now) -> changed());
        bench.draftProperty().addListener((o, old, now) -> changed());
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

    /** Saves a picture or the linear cube, the format by the suffix, as soon as it is made. */
    public void savePicture(Path path) {
        export(path, (c, outputs) -> new Outputs(List.of(path), Optional.empty(), outputs.look(), false, true)
                .write(c, version));
    }

    /** Saves the report for people (.html) or for programs (.json). */
    public void saveReport(Path path) {
        boolean forPeople = path.toString().toLowerCase(Locale.ROOT).endsWith(".html");
        export(path, (c, outputs) -> {
            if (forPeople) {
                String page = EvidenceReport.of(c, outputs, version);
                AtomicFile.write(path, true, part -> Files.writeString(part, page));
            } else {
                new Outputs(List.of(), Optional.of(path), outputs.look(), false, true).write(c, version);
            }
        });
    }

    /** Saves the globe as a map. */
    public void saveMap(Path path) {
        export(path, (c, outputs) -> new MapFile(path, OptionalInt.empty()).write(c, outputs, version));
    }

    private interface Export {
        void write(Combination c, Outputs like);
    }

    private void export(Path path, Export export) {
        said.set("Saving " + path.getFileName() + " ...");
        whenMade(c -> {
            Outputs like = new Outputs(
                    List.of(),
                    Optional.empty(),
                    bench.draft().session().orElseThrow().look(),
                    false,
                    true);
            inBackground(
                    () -> {
                        export.write(c, like);
                        return path;
                    },
                    done -> said.set("Saved " + path.getFileName() + "."));
        });
    }

    /** Calls back with the combination of the draft, now or when it is made. */
    private void whenMade(Consumer<Combination> done) {
        if (bench.combination().isPresent()) {
            done.accept(bench.combination().get());
            return;
        }
        bench.studio().resume();
        var made = bench.studio().combinationProperty();
        made.addListener(new ChangeListener<>() {
            @Override
            public void changed(
                    javafx.beans.value.ObservableValue<? extends Optional<Combination>> o,
                    Optional<Combination> old,
                    Optional<Combination> now) {
                if (bench.combination().isPresent()) {
                    made.removeListener(this);
                    done.accept(bench.combination().get());
                }
            }
        });
    }

    private interface Step<T> {
        T run();
    }

    private <T> void inBackground(Step<T> step, Consumer<T> done) {
        background.execute(() -> {
            try {
                T result = step.run();
                face.execute(() -> done.accept(result));
            } catch (RuntimeException e) {
                face.execute(() -> {
                    said.set("");
                    bench.studio().work().ends();
                    bench.refused(e);
                });
            }
        });
    }
}
