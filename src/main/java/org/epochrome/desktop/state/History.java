package org.epochrome.desktop.state;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import java.util.Optional;

/**
 * Snapshots of something immutable, to go back and forth between.
 *
 * @param <T> what is kept
 */
public final class History<T> {
    private static final int MOST = 500;

    private final Deque<Step<T>> past = new ArrayDeque<>();
    private final Deque<Step<T>> future = new ArrayDeque<>();
    private T now;
    /** Whether the last change was one of several small ones, which the next of its name joins. */
    private boolean joins;

    /** A change by name, and what was there on its other side. */
    private record Step<T>(String name, T other) {}

    public History(T start) {
        now = Objects.requireNonNull(start);
    }

    public T now() {
        return now;
    }

    /** Goes on to another state; what was undone before can no longer be redone. */
    public void push(String name, T next) {
        if (next.equals(now)) {
            return;
        }
        joins = false;
        past.push(new Step<>(name, now));
        if (past.size() > MOST) {
            past.removeLast();
        }
        future.clear();
        now = next;
    }

    /** As {@link #push}, but small changes of one name that follow each other are undone as one. */
    public void nudge(String name, T next) {
        if (joins && past.peek() != null && past.peek().name.equals(name)) {
            future.clear();
            now = next;
        } else {
            push(name, next);
            joins = !past.isEmpty();
        }
    }

    /** Exchanges the present state without a step of its own, as when something is read in after it was asked for. */
    public void amend(T next) {
        now = Objects.requireNonNull(next);
    }

    /** Begins anew. */
    public void restart(T start) {
        past.clear();
        future.clear();
        joins = false;
        now = Objects.requireNonNull(start);
    }

    /** What would be undone, in words. */
    public Optional<String> undoable() {
        return Optional.ofNullable(past.peek()).map(Step::name);
    }

    /** What would be redone, in words. */
    public Optional<String> redoable() {
        return Optional.ofNullable(future.peek()).map(Step::name);
    }

    public T undo() {
        return step(past, future);
    }

    public T redo() {
        return step(future, past);
    }

    private T step(Deque<Step<T>> from, Deque<Step<T>> to) {
        Step<T> step = from.poll();
        joins = false;
        if (step != null) {
            to.push(new Step<>(step.name, now));
            now = step.other;
        }
        return now;
    }
}
