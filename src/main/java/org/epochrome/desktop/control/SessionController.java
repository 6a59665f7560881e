package org.epochrome.desktop.control;

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
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.Look;
import org.epochrome.demo.DemoSession;
import org.epochrome.demo.DemoSessions;
import org.epochrome.desktop.recovery.RecoveryFile;
import org.epochrome.desktop.recovery.RecoveryFolder;
import org.epochrome.desktop.recovery.UnsavedSession;
import org.epochrome.desktop.render.LatestTaskRunner;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.file.OverwriteGuard;
import org.epochrome.session.product.Session;
import org.epochrome.session.product.WhiteReference;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.sessionfile.SessionFile;

/** Keeps what is on the bench: saves, opens, and writes the session down by itself so that a crash loses nothing. */
public final class SessionController {
    private final Workspace bench;
    private final Preferences preferences;
    private final Path folder;
    private final String version;
    private final Executor background;
    private final Executor later;
    private final Executor face;
    private final ReadOnlyObjectWrapper<Optional<Path>> file = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Path>> saved = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
    private final Exports exports;
    private final RecoveryFolder recovery;
    private Optional<RecoveryFile> own = Optional.empty();
    private boolean givenUp;
    private int changes;
    /** Grows when another session takes the place of the one on the bench. */
    private int sessions;

    /**
     * @param folder where preferences and sessions that were not saved are kept
     * @param version of the program, which files name
     * @param background runs work
     * @param later runs work after a second or two
     * @param face takes results
     */
    public SessionController(
            Workspace bench,
            Preferences preferences,
            Path folder,
            String version,
            Executor background,
            Executor later,
            Executor face) {
        this.bench = bench;
        this.preferences = preferences;
        this.folder = folder;
        this.version = version;
        this.background = background;
        this.later = later;
        this.face = face;
        exports = new Exports(bench, this, version);
        recovery = new RecoveryFolder(folder.resolve("unsaved"));
        bench.whenReplaced(this::replaced);
        bench.undoableProperty().addListener((o, old, now) -> changed());
        bench.draftProperty().addListener((o, old, now) -> {
            changed();
            if (old.session().isPresent() && !old.equals(now)) {
                said.set("");
            }
        });
        said.addListener((o, old, now) -> saved.set(Optional.empty()));
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

    /** The file that was saved last; empty once something else is told. */
    public ReadOnlyObjectProperty<Optional<Path>> savedProperty() {
        return saved.getReadOnlyProperty();
    }

    void saySaved(Path path) {
        said.set(Texts.of("status.saved", path.getFileName()));
        saved.set(Optional.of(path));
    }

    /** Says something in the last line. */
    public void say(String sentence) {
        said.set(sentence);
    }

    /** Sessions that were left without being saved and that no window works on, the newest first. */
    public List<UnsavedSession> leftovers() {
        return recovery.abandoned();
    }

    private void changed() {
        givenUp = false;
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
        try {
            if (own.isEmpty()) {
                own = Optional.of(recovery.begin());
            }
        } catch (IOException e) {
            sayNotKept();
            return;
        }
        RecoveryFile target = own.get();
        int order = changes;
        background.execute(() -> {
            try {
                target.write(session.get(), order, version);
            } catch (IOException | RuntimeException e) {
                face.execute(this::sayNotKept);
            }
        });
    }

    private void sayNotKept() {
        said.set(Texts.of("status.notKept"));
    }

    /** Nothing of this session is left over: it was saved, or is not wanted. */
    public void forgetUnsaved() {
        changes++;
        own.ifPresent(RecoveryFile::delete);
        own = Optional.empty();
    }

    /** Lets go of the session, as when the window ends: what was written down and not forgotten can be restored. */
    public void end() {
        changes++;
        own.ifPresent(RecoveryFile::release);
        own = Optional.empty();
    }

    /** The user does not want what is not saved; it goes as soon as another session takes its place. */
    public void giveUpChanges() {
        givenUp = true;
    }

    private void replaced() {
        if (givenUp || !bench.unsaved()) {
            forgetUnsaved();
        } else {
            end();
        }
        sessions++;
        file.set(Optional.empty());
    }

    /** Goes on with a session that was left; it stays unsaved, and what was written down of it is now this window's. */
    public void restore(UnsavedSession leftover) {
        Optional<RecoveryFile> claimed = recovery.claim(leftover);
        if (claimed.isEmpty()) {
            sayNotThere();
            return;
        }
        RecoveryFile kept = claimed.get();
        inBackground(
                () -> {
                    try {
                        return SessionFile.read(kept.path());
                    } catch (RuntimeException e) {
                        kept.release();
                        throw e;
                    }
                },
                opened -> {
                    bench.open(opened.session());
                    bench.wasSaved(Draft.EMPTY);
                    own = Optional.of(kept);
                    tell(opened, Texts.of("status.restored", leftover.title()));
                });
    }

    /** Deletes a session that was left. */
    public void discard(UnsavedSession leftover) {
        Optional<RecoveryFile> claimed = recovery.claim(leftover);
        if (claimed.isEmpty()) {
            sayNotThere();
            return;
        }
        claimed.get().delete();
        said.set(Texts.of("status.discarded", leftover.title()));
    }

    private void sayNotThere() {
        said.set(Texts.of("status.notThere"));
    }

    /** Opens a session file. */
    public void open(Path path) {
        inBackground(() -> SessionFile.read(path), opened -> {
            bench.open(opened.session());
            file.set(Optional.of(path));
            preferences.opened(path);
            tell(opened, Texts.of("status.opened", path.getFileName()));
        });
    }

    private void tell(SessionFile.Opened opened, String sentence) {
        if (!bench.draft().absent().isEmpty()) {
            bench.select(Topic.FRAME);
        }
        said.set(opened.notes().isEmpty() ? sentence : String.join(" ", opened.notes()));
    }

    /** Begins with the invented Jupiter, which is written into the folder first. */
    public void openDemo() {
        bench.renderer().work().begins(Texts.of("status.demo"));
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
                    bench.renderer().work().ends();
                    bench.clear();
                    bench.take(demo.frames, demo.place);
                    said.set(Texts.of("status.demoOpened"));
                });
    }

    private record Demo(List<Path> frames, Place place) {}

    /** Begins with nothing. */
    public void close() {
        bench.clear();
    }

    /** Saves the session. */
    public void save(Path path, Runnable then) {
        Draft draft = bench.draft();
        int which = sessions;
        draft.session()
                .ifPresent(session -> inBackground(
                        () -> {
                            OverwriteGuard.check(
                                    List.of(path), session.recipe().frames().files());
                            SessionFile.write(session, path, version, true);
                            return path;
                        },
                        done -> {
                            preferences.opened(path);
                            if (which == sessions) {
                                wasSaved(draft, path);
                            }
                            saySaved(path);
                            then.run();
                        }));
    }

    private void wasSaved(Draft draft, Path path) {
        bench.wasSaved(draft);
        file.set(Optional.of(path));
        forgetUnsaved();
        if (bench.unsaved()) {
            changed();
        }
    }

    /** Balances the colours by one frame, or by three for red, green and blue, of something white in sunlight. */
    public void measureWhite(List<Path> files) {
        inBackground(
                () -> WhiteReference.gains(files),
                gains -> bench.editSession(
                        Texts.of("step.whiteBalance"),
                        s -> s.with(s.look().with(Look::white, WhiteBalance.solar(gains)))));
    }

    interface Step<T> {
        T run();
    }

    /** A runner of work beside the session's; a newer request replaces one that runs. */
    public LatestTaskRunner runner() {
        return new LatestTaskRunner(background, face, true);
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
                    bench.renderer().work().ends();
                    bench.refused(e);
                });
            }
        });
    }
}
