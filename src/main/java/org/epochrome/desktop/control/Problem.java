package org.epochrome.desktop.control;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.epochrome.desktop.state.Lacking;
import org.epochrome.desktop.state.UserMessages;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.locate.NoDiskInFrame;
import org.epochrome.session.recipe.SessionRefused;

/** What went wrong last, and what it is about. */
public final class Problem {
    private final ReadOnlyStringWrapper text = new ReadOnlyStringWrapper("");
    private Optional<Throwable> cause = Optional.empty();

    Problem() {}

    /** What went wrong, a sentence or some lines; empty if nothing did. */
    public ReadOnlyStringProperty textProperty() {
        return text.getReadOnlyProperty();
    }

    void set(Throwable reason) {
        cause = Optional.of(UserMessages.unwrapped(reason));
        text.set(UserMessages.of(reason));
    }

    void set(List<String> sentences) {
        cause = Optional.empty();
        text.set(String.join("\n", sentences));
    }

    void clear() {
        cause = Optional.empty();
        text.set("");
    }

    /** The number of the frame that it is about, if it is about one. */
    public OptionalInt frame(List<DatedFrame> frames) {
        return cause.filter(NoDiskInFrame.class::isInstance)
                .map(c -> ((NoDiskInFrame) c).file())
                .map(file -> IntStream.range(0, frames.size())
                        .filter(i -> frames.get(i).head().file().equals(file))
                        .findFirst())
                .orElse(OptionalInt.empty());
    }

    /** What the session lacks, if that is the problem. */
    public Optional<Lacking> lack() {
        return cause.filter(SessionRefused.class::isInstance)
                .flatMap(c -> Lacking.of(((SessionRefused) c).message().key()));
    }
}
