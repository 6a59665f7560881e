package org.epochrome.desktop.render;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.style.Texts;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.preview.Preview;
import org.epochrome.session.preview.Preview.Care;
import org.epochrome.session.product.DetailLevels;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Recipe;

/**
 * Makes the pictures of a draft: a quick one at once, the full one as soon as it can; the newest request wins. While a hand
 * drags, only quick ones are made.
 */
public final class PictureRenderer {
    private final LatestTaskRunner quick;
    private final LatestTaskRunner full;
    private final SidePictures side;
    private final ComparedPicture compared;
    private final FinePart fine;
    private final LatestTaskRunner measuring;
    private final Consumer<Throwable> refused;
    private final BackgroundWork work = new BackgroundWork();
    private final Thumbnails thumbnails;
    private final ReadOnlyBooleanWrapper outdated = new ReadOnlyBooleanWrapper();
    private Optional<Session> shownSession = Optional.empty();
    private final ReadOnlyObjectWrapper<Optional<ScreenPicture>> shown = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Combination>> combination =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<DetailLevels>> detail = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ObjectProperty<Display> display = new SimpleObjectProperty<>(Display.FINISHED);
    private final WaitingRequests requests = new WaitingRequests();
    private Draft wanted = Draft.EMPTY;
    private Optional<Preview> preview = Optional.empty();
    private Optional<Refusal> refusal = Optional.empty();
    private boolean framed;
    private Look keptLook = Look.DEFAULT;

    public PictureRenderer(Executor background, Executor quickly, Executor face, Consumer<Throwable> refused) {
        quick = new LatestTaskRunner(quickly, face, false);
        full = new LatestTaskRunner(background, face, true);
        side = new SidePictures(background, face, refused);
        compared = new ComparedPicture(background, face, refused);
        fine = new FinePart(background, quickly, face, refused);
        measuring = new LatestTaskRunner(background, face, true);
        thumbnails = new Thumbnails(background, face);
        this.refused = refused;
        shown.addListener((o, old, now) -> outdated.set(false));
        display.addListener((o, old, now) -> show(wanted, false));
    }

    /** The newest picture. */
    public ReadOnlyObjectProperty<Optional<ScreenPicture>> shownProperty() {
        return shown.getReadOnlyProperty();
    }

    /** What the result is compared with, if it was asked for. */
    public ReadOnlyObjectProperty<Optional<ScreenPicture>> beforeProperty() {
        return compared.pictureProperty();
    }

    /** The part at full resolution that follows a hand. */
    public FinePart fine() {
        return fine;
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

    /** Small pictures of frames. */
    public Thumbnails thumbnails() {
        return thumbnails;
    }

    /** Whether the picture is of an earlier draft, since the newest cannot be made. */
    public ReadOnlyBooleanProperty outdatedProperty() {
        return outdated.getReadOnlyProperty();
    }

    private void show(ScreenPicture picture, Session session) {
        shown.set(Optional.of(picture));
        shownSession = Optional.of(session);
    }

    private void refuse(Throwable cause) {
        outdated.set(shown.get().isPresent() && !shownSession.equals(wanted.session()));
        refused.accept(cause);
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
        finely(draft);
        draft.session()
                .ifPresent(s -> quickly(s, s.look().equals(keptLook) ? soft(s.look()) : s.look(), Care.NEAREST_FRAMES));
    }

    /** The part that the user looks at, if only the look has changed. */
    private void finely(Draft draft) {
        Optional<Combination> c = combination(draft).filter(made -> how() == Display.FINISHED);
        c.ifPresentOrElse(made -> fine.show(made, draft.session().orElseThrow().look()), fine::clear);
    }

    /** Sharpening takes longer than all the rest, and a hand that drags something else need not wait for it. */
    private static Look soft(Look look) {
        return look.with(Look::sharpening, Sharpening.NONE);
    }

    /** Shows a draft, first quickly, then in full. */
    public void show(Draft draft, boolean anew) {
        wanted = draft;
        if (anew) {
            requests.giveUp();
            preview = Optional.empty();
            refusal = Optional.empty();
        }
        Optional<Session> session =
                draft.session().filter(s -> !s.recipe().frames().used().isEmpty());
        if (session.isEmpty()) {
            full.cancel();
            quick.cancel();
            work.ends();
            requests.giveUp();
            preview = Optional.empty();
            shown.set(Optional.empty());
            compared.clear();
            fine.forget();
            combination.set(Optional.empty());
            return;
        }
        boolean looks = !session.get().look().equals(keptLook);
        keptLook = session.get().look();
        if (looks) {
            finely(draft);
        } else if (combination(draft).isEmpty()) {
            fine.clear();
        }
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
        requests.giveUp();
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
        requests.add(made, never);
        if (!work.busyProperty().get()) {
            show(wanted, false);
        }
    }

    private void quickly(Session session, Look look, Care care) {
        Optional<Preview> held = preview;
        Display how = how();
        if (held.isPresent() && !how.isOfGlobe()) {
            quick.submit(
                    progress -> held.get().holds(session.recipe())
                            ? Optional.of(Pictures.quick(held.get(), session.recipe(), look, how, care, progress))
                            : Optional.<ScreenPicture>empty(),
                    found -> found.filter(s -> stillQuick(session)).ifPresent(s -> show(s, session)),
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
            requests.giveUp();
            refuse(known.get().cause);
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
                    show(result.picture, session);
                    fine.clear();
                    fine.prepare(result.combination, session.look());
                    work.ends();
                    refreshBefore();
                    requests.hand(result.combination);
                },
                cause -> {
                    work.ends();
                    refusal = Optional.of(new Refusal(recipe, cause));
                    requests.giveUp();
                    refuse(cause);
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
                        show(s, session);
                    }
                },
                refused,
                (at, doing) -> {});
    }

    /** Says what the result is compared with. */
    public void compare(ComparedPicture.Kind kind) {
        compared.set(kind);
        refreshBefore();
    }

    private void refreshBefore() {
        combination(wanted)
                .ifPresent(
                        c -> compared.refresh(c, wanted.session().orElseThrow().look()));
    }

    /** Pictures of something else than the result. */
    public SidePictures side() {
        return side;
    }
}
