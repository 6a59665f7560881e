package org.epochrome.desktop.control;

import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.epochrome.desktop.render.PictureRenderer;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.state.History;
import org.epochrome.desktop.state.Selection;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Passband;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Timetable;

/**
 * The workbench without its window: the draft with its history, what is selected, and the pictures made from it in the
 * background. All methods are called on the face; pictures come back there.
 */
public final class Workspace {
    private final History<Draft> history = new History<>(Draft.EMPTY);
    private final ReadOnlyObjectWrapper<Draft> draft = new ReadOnlyObjectWrapper<>(Draft.EMPTY);
    private final ReadOnlyObjectWrapper<Optional<Timetable>> timetable = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ObjectProperty<Selection> selection = new SimpleObjectProperty<>(Selection.START);
    private final ReadOnlyStringWrapper undoable = new ReadOnlyStringWrapper("");
    private final ReadOnlyStringWrapper redoable = new ReadOnlyStringWrapper("");
    private final Problem problem = new Problem();
    private final PictureRenderer renderer;
    private final FrameImporter door;
    private Draft.Beginning beginning = Draft.Beginning.UNKNOWN;
    private Draft saved = Draft.EMPTY;
    private Runnable replaced = () -> {};

    /**
     * @param background runs work, many pieces at a time
     * @param quick runs quick pictures, one at a time; a fork-join pool of its own, so that no full picture keeps its threads
     * @param face takes results, one after the other
     */
    public Workspace(Executor background, Executor quick, Executor face) {
        renderer = new PictureRenderer(background, quick, face, this::refused);
        door = new FrameImporter(background, face);
        selection.addListener((o, old, now) -> renderer.setFramed(now.topic() == Topic.FRAMING));
    }

    public ReadOnlyObjectProperty<Draft> draftProperty() {
        return draft.getReadOnlyProperty();
    }

    public Draft draft() {
        return draft.get();
    }

    /** When what was recorded; empty as long as there is no session. */
    public ReadOnlyObjectProperty<Optional<Timetable>> timetableProperty() {
        return timetable.getReadOnlyProperty();
    }

    public ObjectProperty<Selection> selectionProperty() {
        return selection;
    }

    /** What undo would undo, empty if nothing. */
    public ReadOnlyStringProperty undoableProperty() {
        return undoable.getReadOnlyProperty();
    }

    /** What redo would do again, empty if nothing. */
    public ReadOnlyStringProperty redoableProperty() {
        return redoable.getReadOnlyProperty();
    }

    /** What went wrong last, one sentence; empty if nothing. */
    public ReadOnlyStringProperty problemProperty() {
        return problem.textProperty();
    }

    /** What went wrong last. */
    public Problem problem() {
        return problem;
    }

    /** The pictures. */
    public PictureRenderer renderer() {
        return renderer;
    }

    /** The combination that belongs to the draft as it is, once it is there. */
    public Optional<Combination> combination() {
        return renderer.combination(draft.get());
    }

    /** The frame that is chosen. */
    public Optional<DatedFrame> selectedFrame() {
        List<DatedFrame> frames = draft.get().frames();
        int index = selection.get().frame();
        return index >= 0 && index < frames.size() ? Optional.of(frames.get(index)) : Optional.empty();
    }

    public void select(Topic topic) {
        selection.set(selection.get().about(topic));
    }

    public void selectFrame(int index) {
        Topic topic = selection.get().topic();
        boolean fits = topic == Topic.FRAME || topic == Topic.DISK || topic == Topic.SHIFT;
        selection.set(new Selection(fits ? topic : Topic.FRAME, index));
    }

    /** What new sessions begin with. */
    public void setBeginning(Draft.Beginning next) {
        beginning = next;
    }

    /** Changes the draft by a step that can be undone. */
    public void edit(String name, UnaryOperator<Draft> change) {
        Draft next = change.apply(history.now());
        if (!next.equals(history.now())) {
            history.push(name, next);
            dismissProblem();
            arrived(false);
        }
    }

    /** Changes the session by a small step, which is undone together with those of its name before it. */
    public void nudge(String name, UnaryOperator<Session> change) {
        Draft next = history.now().with(change);
        if (!next.equals(history.now())) {
            history.nudge(name, next);
            dismissProblem();
            arrived(false);
        }
    }

    /** Changes the session by a step that can be undone. */
    public void editSession(String name, UnaryOperator<Session> change) {
        edit(name, d -> d.with(change));
    }

    /** Shows what an edit would give while a hand drags; nothing is kept until it is edited. */
    public void tryOut(UnaryOperator<Session> change) {
        Draft tried = history.now().with(change);
        draft.set(tried);
        timetable.set(tried.recipe().filter(r -> !r.frames().used().isEmpty()).map(this::timetable));
        renderer.tryOut(tried);
    }

    public void undo() {
        history.undo();
        dismissProblem();
        arrived(false);
    }

    public void redo() {
        history.redo();
        dismissProblem();
        arrived(false);
    }

    private void arrived(boolean anew) {
        Draft now = history.now();
        undoable.set(history.undoable().orElse(""));
        redoable.set(history.redoable().orElse(""));
        timetable.set(now.recipe().filter(r -> !r.frames().used().isEmpty()).map(this::timetable));
        draft.set(now);
        renderer.show(now, anew);
    }

    private Timetable timetable(Recipe recipe) {
        return timetable.get().map(t -> t.changed(recipe)).orElseGet(() -> Timetable.of(recipe));
    }

    /** Takes files that were dropped in or chosen: frames, folders of frames, sheets, or one session. */
    public void take(List<Path> files) {
        take(files, beginning);
    }

    /** Takes files, whose new sessions begin with a place. */
    public void take(List<Path> files, Place place) {
        take(files, new Draft.Beginning(place, beginning.clock(), beginning.planned()));
    }

    private void take(List<Path> files, Draft.Beginning with) {
        dismissProblem();
        door.open(files, history.now(), with.clock(), found -> {
            if (found.session().isPresent()) {
                open(found.session().get());
            } else if (!found.isEmpty()) {
                edit(found.title(), d -> d.plus(found.frames(), found.unsettled(), with));
                if (!found.unsettled().isEmpty()) {
                    select(Topic.FRAME);
                }
            }
            tell(found.notes());
        });
    }

    /** All that could not be used, a line each. */
    private void tell(List<String> notes) {
        if (!notes.isEmpty()) {
            problem.set(notes);
        }
    }

    /** Asks a file again, with what the user now says about it. */
    public void settle(FrameRequest request) {
        settle(List.of(request), Texts.of("step.addFrame"));
    }

    /** Asks files again, with what the user now says about them; one step. */
    public void settle(List<FrameRequest> requests, String step) {
        dismissProblem();
        door.ask(requests, history.now(), beginning.clock(), found -> {
            edit(step, d -> d.plus(found.frames(), found.unsettled(), beginning));
            tell(found.notes());
        });
    }

    /** Changes several frames at once; one step. */
    public void change(List<DatedFrame> frames, FrameChanges changes) {
        door.change(frames, changes, history.now(), beginning.clock(), found -> {
            edit(Texts.of("step.changeFrames"), d -> d.plus(found.frames(), found.unsettled(), beginning));
            tell(found.notes());
        });
    }

    /** Says what times in file names mean and how long recordings are, for all frames of the session that leave it open. */
    public void setClock(NameClock clock) {
        Draft before = history.now();
        Conventions next = before.recipe()
                .map(r -> r.frames().conventions())
                .orElse(Conventions.UNKNOWN)
                .with(Conventions::clock, clock);
        door.again(
                before,
                next,
                found -> edit(Texts.of("step.clock"), d -> d.recipe(
                                r -> r.with(r.frames().with(next)))
                        .plus(
                                found.frames(),
                                found.unsettled(),
                                new Draft.Beginning(beginning.place(), clock, beginning.planned()))));
    }

    /** Says what a filter lets through, for all frames of its band. */
    public void setPassband(String band, Passband passband) {
        Draft before = history.now();
        before.recipe().ifPresent(recipe -> {
            Conventions said = recipe.frames().conventions();
            Map<String, Passband> passbands = new HashMap<>(said.passbands());
            passbands.put(band, passband);
            Conventions next = said.with(Conventions::passbands, passbands);
            door.again(
                    before,
                    next,
                    found -> edit(
                            Texts.of("step.passband"),
                            d -> d.recipe(
                                    r -> r.with(r.frames().with(found.frames()).with(next)))));
        });
    }

    /** Says which planet the frames show. */
    public void name(Body body) {
        edit(Texts.of("step.planet"), d -> d.about(body, beginning));
    }

    /** Goes on with one of the other sessions; this one is then among them. */
    public void exchangeFor(Draft other) {
        Draft next = history.now().exchangedFor(other);
        replaced.run();
        history.restart(next);
        saved = Draft.EMPTY;
        selection.set(Selection.START);
        dismissProblem();
        arrived(true);
    }

    /** Adds the frames of one of the other sessions to this one. */
    public void merge(Draft other) {
        edit(Texts.of("step.addFrames", other.frames().size()), d -> d.merged(other, beginning));
    }

    /** Begins with a session that was opened; the steps before are forgotten. */
    public void open(Session session) {
        replaced.run();
        history.restart(Draft.of(session));
        saved = history.now();
        selection.set(Selection.START);
        dismissProblem();
        arrived(true);
    }

    /** Begins with nothing. */
    public void clear() {
        replaced.run();
        history.restart(Draft.EMPTY);
        saved = Draft.EMPTY;
        selection.set(Selection.START);
        dismissProblem();
        arrived(true);
    }

    /** Calls back just before another session, or none, takes the place of the one that is here. */
    void whenReplaced(Runnable then) {
        replaced = then;
    }

    /** Whether something would be lost without saving. */
    public boolean unsaved() {
        return !history.now().equals(saved);
    }

    /** Remembers the draft as saved. */
    public void wasSaved(Draft which) {
        saved = which;
    }

    /** The instant that the picture is for; empty without a session. */
    public Optional<Instant> epoch() {
        return timetable.get().map(Timetable::epoch);
    }

    /** Says what went wrong; the user stays where he is. */
    public void refused(Throwable reason) {
        problem.set(reason);
    }

    public void dismissProblem() {
        problem.clear();
    }
}
