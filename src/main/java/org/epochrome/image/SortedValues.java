package org.epochrome.image;

/**
 * Sorts many values by their bits, eleven at a time from the lowest (radix sort: Knuth 1998, The Art of Computer Programming 3, section
 * 5.2.5), which takes a fraction of the time of sorting by comparison.
 */
final class SortedValues {
    private static final int BITS = 11;
    private static final int BUCKETS = 1 << BITS;

    private SortedValues() {}

    /** The values that are not NaN in ascending order, -0 before 0. */
    static float[] of(float[] values) {
        int[] keys = new int[values.length];
        int n = 0;
        for (float value : values) {
            if (!Float.isNaN(value)) {
                keys[n++] = key(value);
            }
        }
        int[] other = new int[n];
        for (int shift = 0; shift < Integer.SIZE; shift += BITS) {
            spread(keys, other, n, shift);
            int[] done = other;
            other = keys;
            keys = done;
        }
        float[] sorted = new float[n];
        for (int i = 0; i < n; i++) {
            sorted[i] = value(keys[i]);
        }
        return sorted;
    }

    /** An unsigned number that grows with the value: the sign bit turned, and of negative values all others too. */
    private static int key(float value) {
        int bits = Float.floatToRawIntBits(value);
        return bits ^ (bits >> 31 | Integer.MIN_VALUE);
    }

    private static float value(int key) {
        return Float.intBitsToFloat(key ^ (~key >> 31 | Integer.MIN_VALUE));
    }

    private static void spread(int[] from, int[] to, int n, int shift) {
        int[] next = new int[BUCKETS + 1];
        for (int i = 0; i < n; i++) {
            next[(from[i] >>> shift & BUCKETS - 1) + 1]++;
        }
        for (int i = 0; i < BUCKETS; i++) {
            next[i + 1] += next[i];
        }
        for (int i = 0; i < n; i++) {
            to[next[from[i] >>> shift & BUCKETS - 1]++] = from[i];
        }
    }
}
