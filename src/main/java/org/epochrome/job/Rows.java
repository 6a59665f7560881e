package org.epochrome.job;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.RecursiveAction;

/**
 * Shares the rows of an image among threads. Which thread takes which rows never changes a result: work on one row must
 * not depend on another row's, and sums over an image are added up in the order of rows afterwards.
 */
public final class Rows {
    private static final int ROWS_PER_TASK = 16;

    private Rows() {}

    /** What is done to the rows {@code from} (inclusive) to {@code to} (exclusive). */
    @FunctionalInterface
    public interface Work {
        void on(int from, int to);
    }

    /**
     * Does the work for all rows, in the pool of the calling thread if that is a fork-join thread, else in the common
     * pool, and returns when all is done.
     */
    public static void each(int rows, Work work) {
        if (rows <= 0) {
            return;
        }
        Range all = new Range(0, rows, work);
        if (ForkJoinTask.inForkJoinPool()) {
            all.invoke();
        } else {
            ForkJoinPool.commonPool().invoke(all);
        }
    }

    private static final class Range extends RecursiveAction {
        private static final long serialVersionUID = 1L;
        private final int from;
        private final int to;
        private final transient Work work;

        Range(int from, int to, Work work) {
            this.from = from;
            this.to = to;
            this.work = work;
        }

        @Override
        protected void compute() {
            if (to - from <= ROWS_PER_TASK) {
                work.on(from, to);
                return;
            }
            int middle = (from + to) >>> 1;
            invokeAll(new Range(from, middle, work), new Range(middle, to, work));
        }
    }
}
