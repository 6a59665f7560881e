package org.epochrome.job;

import java.util.function.BooleanSupplier;

/**
 * How far a piece of work has come, and whether it shall stop.
 *
 * <p>Work reports to the instance it was handed and hands {@linkplain #part parts} of it to the work it calls, so
 * nobody needs to know how deep it is nested. Instances may be called from any thread.
 */
public interface Progress {

    /** Listens to nothing and never cancels. */
    Progress NONE = endedBy(() -> false);

    /** Listens to nothing and cancels as soon as something is true. */
    static Progress endedBy(BooleanSupplier over) {
        return new Progress() {
            @Override
            public void at(double fraction) {}

            @Override
            public void doing(String what) {}

            @Override
            public boolean cancelled() {
                return over.getAsBoolean();
            }
        };
    }

    /**
     * Tells how much of this work is done.
     *
     * @param fraction 0 at the beginning, 1 at the end
     */
    void at(double fraction);

    /** Says in a few words what is going on now, for people. */
    void doing(String what);

    /** Whether the user has asked for the work to stop. */
    boolean cancelled();

    /** Ends the work if the user has asked for it. */
    default void check() {
        if (cancelled()) {
            throw new CancelledException();
        }
    }

    /** The stretch of this work between two fractions, as a progress of its own that runs from 0 to 1. */
    default Progress part(double from, double to) {
        Progress whole = this;
        return new Progress() {
            @Override
            public void at(double fraction) {
                whole.at(from + (to - from) * fraction);
            }

            @Override
            public void doing(String what) {
                whole.doing(what);
            }

            @Override
            public boolean cancelled() {
                return whole.cancelled();
            }
        };
    }
}
