package org.epochrome.desktop.render;

import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import org.epochrome.job.CancelledException;
import org.epochrome.job.Progress;

/**
 * Runs one piece of work at a time in the background. A newer request takes the place of one that waits; the one that runs
 * is either cancelled, where only the last result counts, or finished first, so that something moves while a hand drags.
 */
public final class LatestTaskRunner {
    private final Executor background;
    private final Executor face;
    private final boolean restarts;
    private Job<?> running;
    private Job<?> waiting;
    /** Grows when results that are still on their way shall not arrive any more. */
    private volatile int era;

    /**
     * @param background where work is done
     * @param face where its results are handed over
     * @param restarts whether a newer request cancels the one that runs
     */
    public LatestTaskRunner(Executor background, Executor face, boolean restarts) {
        this.background = background;
        this.face = face;
        this.restarts = restarts;
    }

    /** Hears how far the work has come; called on the face. */
    public interface Listener {
        void at(double fraction, String doing);
    }

    /**
     * Asks for work.
     *
     * @param work runs in the background and looks at its progress now and then
     * @param done takes the result on the face, unless the work was cancelled
     * @param failed takes on the face what went wrong
     */
    public <T> void submit(
            Function<Progress, T> work, Consumer<T> done, Consumer<Throwable> failed, Listener listener) {
        Job<T> job;
        synchronized (this) {
            if (restarts) {
                era++;
            }
            job = new Job<>(work, done, failed, listener);
            if (running != null) {
                if (restarts) {
                    running.cancelled = true;
                }
                waiting = job;
                return;
            }
            running = job;
        }
        background.execute(job);
    }

    /** Stops what runs and forgets what waits. */
    public synchronized void cancel() {
        era++;
        if (running != null) {
            running.cancelled = true;
        }
        waiting = null;
    }

    /** Whether nothing runs or waits. */
    public synchronized boolean idle() {
        return running == null;
    }

    private void next() {
        Job<?> job;
        synchronized (this) {
            running = waiting;
            waiting = null;
            job = running;
        }
        if (job != null) {
            background.execute(job);
        }
    }

    private final class Job<T> implements Runnable, Progress {
        private final Function<Progress, T> work;
        private final Consumer<T> done;
        private final Consumer<Throwable> failed;
        private final Listener listener;
        private final int ownEra = era;
        private volatile boolean cancelled;
        private volatile double fraction;
        private volatile String doing = "";
        private volatile boolean told;

        Job(Function<Progress, T> work, Consumer<T> done, Consumer<Throwable> failed, Listener listener) {
            this.work = work;
            this.done = done;
            this.failed = failed;
            this.listener = listener;
        }

        @Override
        public void run() {
            try {
                check();
                T result = work.apply(this);
                hand(() -> done.accept(result));
            } catch (CancelledException e) {
                // nobody waits for it any more
            } catch (RuntimeException | Error e) {
                hand(() -> failed.accept(e));
            } finally {
                next();
            }
        }

        private void hand(Runnable result) {
            face.execute(() -> {
                if (!cancelled && ownEra == era) {
                    result.run();
                }
            });
        }

        @Override
        public void at(double part) {
            fraction = part;
            tell();
        }

        @Override
        public void doing(String what) {
            doing = what;
            tell();
        }

        /** At most one message is on its way, so that a busy face is not flooded. */
        private void tell() {
            if (!told) {
                told = true;
                face.execute(() -> {
                    told = false;
                    if (!cancelled && ownEra == era) {
                        listener.at(fraction, doing);
                    }
                });
            }
        }

        @Override
        public boolean cancelled() {
            return cancelled;
        }
    }
}
