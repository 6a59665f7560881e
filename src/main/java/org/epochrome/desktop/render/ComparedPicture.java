package org.epochrome.desktop.render;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.epochrome.colour.Tone;
import org.epochrome.colour.finish.Grading;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.session.combine.Combination;

/** The picture that the result is compared with: what the alignment, or what the processing, started from. */
public final class ComparedPicture {
    private final LatestTaskRunner plain;
    private final Consumer<Throwable> refused;
    private final ReadOnlyObjectWrapper<Optional<ScreenPicture>> picture =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private Kind kind = Kind.NONE;
    private Made made = new Made(Kind.NONE, null, null);

    /** What the result is compared with. */
    public enum Kind {
        NONE,
        /** A simple stack of the frames, processed alike. */
        SIMPLE_STACK,
        /** The result without sharpening, tone and changes by hand. */
        UNPROCESSED
    }

    private record Made(Kind kind, Combination combination, Look look) {
        boolean shows(Combination c) {
            return combination != null && combination.recipe().equals(c.recipe());
        }
    }

    ComparedPicture(Executor background, Executor face, Consumer<Throwable> refused) {
        plain = new LatestTaskRunner(background, face, true);
        this.refused = refused;
    }

    /** The picture, if it was asked for and is made. */
    public ReadOnlyObjectProperty<Optional<ScreenPicture>> pictureProperty() {
        return picture.getReadOnlyProperty();
    }

    Kind kind() {
        return kind;
    }

    void set(Kind next) {
        kind = next;
    }

    void clear() {
        picture.set(Optional.empty());
        made = new Made(Kind.NONE, null, null);
    }

    /** Makes it for a combination and a look, unless it is there. */
    void refresh(Combination c, Look look) {
        Look wanted = kind == Kind.UNPROCESSED ? unprocessed(look) : look;
        if (kind == Kind.NONE || (made.kind == kind && made.shows(c) && wanted.equals(made.look))) {
            return;
        }
        Kind now = kind;
        plain.submit(
                progress -> now == Kind.UNPROCESSED
                        ? Pictures.full(c, wanted, Display.FINISHED)
                        : Pictures.before(c, wanted),
                shown -> {
                    picture.set(Optional.of(shown));
                    made = new Made(now, c, wanted);
                },
                refused,
                (at, doing) -> {});
    }

    private static Look unprocessed(Look look) {
        return look.with(Look::sharpening, Sharpening.NONE)
                .with(Look::tone, Tone.DEFAULT)
                .with(Look::grading, Grading.NONE);
    }
}
