package org.epochrome.session.schedule;

import org.epochrome.text.Message;

/**
 * How much memory pixels may take. What does not fit is read or made again when it is needed; results are the same.
 *
 * @param heldBytes for planes of one kind that are kept for later: frames as read, frames restored, frames binned
 * @param mergeBytes for the turned rows that are merged at a time
 */
public record Memory(long heldBytes, long mergeBytes) {
    private static final long MERGE_BYTES = 256L << 20;
    /** Part of the heap for each kind of planes; there are up to five kinds, and each frame in work takes some planes too. */
    private static final double HELD_PART = 0.1;

    /** What this Java's heap allows. */
    public static Memory ofThisHeap() {
        long heap = Runtime.getRuntime().maxMemory();
        return new Memory((long) (HELD_PART * heap), Math.min(MERGE_BYTES, heap / 5));
    }

    /** The message for pictures that need more memory than there is. */
    public static String exceeded() {
        long megabytes = Runtime.getRuntime().maxMemory() >> 20;
        return Message.text("check.memory", megabytes, Math.max(4, 2 * megabytes / 1024));
    }

    /** How many rows of so many turned frames, each with its weights, may be merged at a time. */
    public int mergeRows(int frames, int width) {
        return (int) Math.max(1, Math.min(Integer.MAX_VALUE, mergeBytes / (2L * Float.BYTES * frames * width)));
    }
}
