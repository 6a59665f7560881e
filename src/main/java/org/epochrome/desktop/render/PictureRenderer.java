package org.epochrome.desktop.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.style.Texts;
import org.epochrome.disk.Disk;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.preview.Preview;
import org.epochrome.session.preview.Preview.Care;
import org.epochrome.session.product.DetailLevels;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;

/**
 * Makes the pictures of a draft: a quick one at once, the full one as soon as it can; the newest request wins. While a hand
 * drags, only quick ones are made.
 */
public final class PictureRenderer {
    private final LatestTaskRunner quick;
    private final LatestTaskRunner full;
    private final LatestTaskRunner aside;
    private final LatestTaskRunner plain;
    private final LatestTaskRunner measuring;
    private final Consumer<Throwable> refused;
    private final BackgroundWork work = new BackgroundWork();
    private final ReadOnlyObjectWrapper<Optional<ScreenPicture>> shown = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<ScreenPicture>> before = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Combination>> combination =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<DetailLevels>> detail = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ObjectProperty<Display> display = new SimpleObjectProperty<>(Display.FINISHED);
    private final List<Request> requests = new ArrayList<>();
    private Draft wanted = Draft.EMPTY;
    private Optional<Preview> preview = Optional.empty();
    private Optional<Refusal> refusal = Optional.empty();
    private boolean split;
    private boolean framed;
    private Look beforeLook;
    private Look keptLook = Look.DEFAULT;

    public PictureRenderer(Executor background, Executor quickly, Executor face, Consumer<Throwable> refused) {
        quick = new LatestTaskRunner(quickly, face, false);
        full = new LatestTaskRunner(background, face, true);
        aside = new LatestTaskRunner(background, face, true);
        plain = new LatestTaskRunner(background, face, true);
        measuring = new LatestTaskRunner(background, face, true);
        this.refused = refused;
        display.addListener((o, old, now) -> show(wanted, false));
    }

    /** The newest picture. */
    public ReadOnlyObjectProperty<Optional<ScreenPicture>> shownProperty() {
        return shown.getReadOnlyProperty();
    }

    /** The simple stack of the frames, if it was asked for. */
    public ReadOnlyObjectProperty<Optional<ScreenPicture>> beforeProperty() {
        return before.getReadOnlyProperty();
    }

    /** The newest combination; it may belong to an earlier draft while another is made. */
    public ReadOnlyObjectProperty<Optional<Combination>> combinationProperty() {
        return combination.getReadOnlyProperty();
    }

    /** How strong detail and noise are in the newest combination. */
    public ReadOnlyObjectProperty<Optional<DetailLevels>> detailProperty() {
        return detail.getReadOnlyProperty();
    }

    public ObjectProperty<Display> displayProperty() {
        return display;
    }

    public BackgroundWork work() {
        return work;
    }

    /** Whether the finished picture is shown within the edges that it is saved with. */
    public void setFramed(boolean on) {
        if (framed != on) {
            framed = on;
            show(wanted, false);
        }
    }

    private Display how() {
        return framed && display.get() == Display.FINISHED ? Display.SAVED : display.get();
    }

    /** The combination of a draft, if it is made. */
    public Optional<Combination> combination(Draft draft) {
        return combination
                .get()
                .filter(c -> draft.recipe().filter(c.recipe()::equals).isPresent());
    }

    /** Shows a draft while a hand drags. */
    public void tryOut(Draft draft) {
        wanted = draft;
        full.cancel();
        work.ends();
        draft.session()
                .ifPresent(s -> quickly(s, s.look().equals(keptLook) ? soft(s.look()) : s.look(), Care.NEAREST_FRAMES));
    }

    /** Sharpening takes longer than all the rest, and a hand that drags something else need not wait for it. */
    private static Look soft(Look look) {
        return look.with(Look::sharpening, Sharpening.NONE);
    }

    /** Shows a draft, first quickly, then in full. */
    public void show(Draft draft, boolean anew) {
        wanted = draft;
        if (anew) {
            giveUpRequests();
            preview = Optional.empty();
            refusal = Optional.empty();
        }
        Optional<Session> session =
                draft.session().filter(s -> !s.recipe().frames().used().isEmpty());
        if (session.isEmpty()) {
            full.cancel();
            quick.cancel();
            work.ends();
            giveUpRequests();
            preview = Optional.empty();
            shown.set(Optional.empty());
            before.set(Optional.empty());
            combination.set(Optional.empty());
            return;
        }
        keptLook = session.get().look();
        quickly(session.get(), keptLook, Care.ALL_FRAMES);
        fully(session.get());
    }

    /** Goes on with the full picture, if it was stopped. */
    public void resume() {
        if (full.idle()) {
            show(wanted, false);
        }
    }

    /** Stops the work at the full picture; what is shown stays. */
    public void cancel() {
        full.cancel();
        work.ends();
        giveUpRequests();
    }

    /**
     * Hands over the combination of the session on the bench, now or as soon as it is made.
     *
     * @param never runs instead if it cannot be made, is stopped, or another session comes first
     */
    public void whenMade(Consumer<Combination> made, Runnable never) {
        Optional<Combination> there = combination(wanted);
        if (there.isPresent()) {
            made.accept(there.get());
            return;
        }
        requests.add(new Request(made, never));
        if (!work.busyProperty().get()) {
            show(wanted, false);
        }
    }

    /** Someone who waits for the combination. */
    private record Request(Consumer<Combination> made, Runnable never) {}

    private List<Request> takeRequests() {
        List<Request> taken = List.copyOf(requests);
        requests.clear();
        return taken;
    }

    private void giveUpRequests() {
        takeRequests().forEach(r -> r.never.run());
    }

    private void quickly(Session session, Look look, Care care) {
        Optional<Preview> held = preview;
        Display how = how();
        if (held.isPresent()) {
            quick.submit(
                    progress -> held.get().holds(session.recipe())
                            ? Optional.of(Pictures.quick(held.get(), session.recipe(), look, how, care, progress))
                            : Optional.<ScreenPicture>empty(),
                    found -> found.filter(s -> stillQuick(session)).ifPresent(s -> shown.set(found)),
                    refused,
                    (at, doing) -> {});
        }
    }

    /** A quick picture must not cover the full one that came first. */
    private boolean stillQuick(Session session) {
        boolean others = wanted.recipe()
                .filter(r -> r.frames().all().equals(session.recipe().frames().all()))
                .isEmpty();
        if (others) {
            return false;
        }
        boolean fullIsThere = combination(wanted).isPresent()
                && shown.get().filter(s -> s.factor() == 1 && full.idle()).isPresent();
        return !fullIsThere || !wanted.session().filter(session::equals).isPresent();
    }

    private void fully(Session session) {
        Recipe recipe = session.recipe();
        Optional<Refusal> known = refusal.filter(r -> r.recipe.equals(recipe));
        if (known.isPresent()) {
            full.cancel();
            work.ends();
            giveUpRequests();
            refused.accept(known.get().cause);
            return;
        }
        Optional<Combination> made = combination.get().filter(c -> c.recipe().equals(recipe));
        Optional<Preview> held = preview;
        Display how = how();
        work.begins(made.isPresent() ? Texts.of("status.finishing") : Texts.of("status.reading"));
        full.submit(
                progress -> {
                    if (made.isPresent()) {
                        return new Made(made.get(), held, Pictures.full(made.get(), session.look(), how));
                    }
                    Optional<Preview> first = held.filter(p -> p.holds(recipe));
                    if (first.isEmpty()) {
                        first = Optional.of(Preview.rough(recipe, progress.part(0, 0.2)));
                        Preview rough = first.get();
                        handQuick(rough, session, how, progress);
                    }
                    Combination c = new Combiner(recipe).combine(progress.part(0.2, 0.95));
                    progress.doing(Texts.of("status.finishing"));
                    return new Made(c, Optional.of(first.get().refined(c)), Pictures.full(c, session.look(), how));
                },
                result -> {
                    preview = result.preview;
                    if (made.isEmpty()) {
                        combination.set(Optional.of(result.combination));
                        measure(result.combination);
                    }
                    shown.set(Optional.of(result.picture));
                    work.ends();
                    refreshBefore();
                    takeRequests().forEach(r -> r.made.accept(result.combination));
                },
                cause -> {
                    work.ends();
                    refusal = Optional.of(new Refusal(recipe, cause));
                    giveUpRequests();
                    refused.accept(cause);
                },
                work);
    }

    private void measure(Combination c) {
        measuring.submit(p -> DetailLevels.of(c), l -> detail.set(Optional.of(l)), refused, (at, doing) -> {});
    }

    /** A recipe that cannot be made, and why. */
    private record Refusal(Recipe recipe, Throwable cause) {}

    private record Made(Combination combination, Optional<Preview> preview, ScreenPicture picture) {}

    private void handQuick(Preview rough, Session session, Display how, Progress progress) {
        ScreenPicture first = Pictures.quick(rough, session.recipe(), session.look(), how, Care.ALL_FRAMES, progress);
        quick.submit(
                p -> first,
                s -> {
                    preview = Optional.of(rough);
                    if (wanted.session().filter(session::equals).isPresent()
                            && combination(wanted).isEmpty()) {
                        shown.set(Optional.of(s));
                    }
                },
                refused,
                (at, doing) -> {});
    }

    /** Whether the picture before is wanted too. */
    public void setSplit(boolean wantsBefore) {
        split = wantsBefore;
        refreshBefore();
    }

    private void refreshBefore() {
        Optional<Combination> c = combination(wanted);
        if (!split || c.isEmpty()) {
            return;
        }
        Look look = wanted.session().orElseThrow().look();
        if (before.get().isPresent()
                && look.equals(beforeLook)
                && before.get().get().epoch().equals(c.get().epoch())) {
            return;
        }
        plain.submit(
                progress -> Pictures.before(c.get(), look),
                picture -> {
                    before.set(Optional.of(picture));
                    beforeLook = look;
                },
                refused,
                (at, doing) -> {});
    }

    /** A frame as it was shot. */
    public void frame(Exposure exposure, Disk disk, boolean lifted, Consumer<ScreenPicture> done) {
        aside.submit(
                progress -> Pictures.frame(exposure, disk, lifted ? Display.STRETCHED : Display.LINEAR),
                done,
                refused,
                (at, doing) -> {});
    }
}
