package org.epochrome.session.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;

class PlaneStoreTest {
    private static final int BYTES = 10 * 10 * 4;

    private final AtomicInteger made = new AtomicInteger();

    private PlaneStore store(long most) {
        return new PlaneStore(
                5,
                i -> {
                    made.incrementAndGet();
                    return Plane.filled(10, 10, i);
                },
                most);
    }

    @Test
    void keepsWhatFitsAndMakesTheRestAnew() {
        PlaneStore store = store(2 * BYTES + 10);
        for (int round = 0; round < 3; round++) {
            for (int i = 0; i < 5; i++) {
                assertEquals(i, store.get(i).at(3, 3));
                assertTrue(store.heldBytes() <= 2 * BYTES);
            }
        }
        assertEquals(2 * BYTES, store.heldBytes());
        assertEquals(2 + 3 * 3, made.get());
        assertSame(store.get(0), store.get(0));
        assertNotSame(store.get(4), store.get(4));
    }

    @Test
    void isFilledAsFarAsMemoryAllows() {
        PlaneStore store = store(3 * BYTES).filled();
        assertEquals(3, made.get());
        assertEquals(3 * BYTES, store.heldBytes());
        assertEquals(4, store.get(4).at(0, 0));
    }

    @Test
    void keepsNothingWithoutMemory() {
        PlaneStore store = store(BYTES - 1).filled();
        assertEquals(0, store.heldBytes());
        assertEquals(5, store.size());
    }

    /** Threads that ask for the same plane at the same time count it once. */
    @Test
    void countsWhatIsHeldOnce() {
        PlaneStore store = store(5 * BYTES);
        IntStream.range(0, 1000)
                .parallel()
                .forEach(i -> assertEquals(i % 5, store.get(i % 5).at(1, 1)));
        assertEquals(5 * BYTES, store.heldBytes());
    }

    /** A hundred frames of two megapixels in three bands, under a heap of 1500 MB. */
    @Test
    void mergesAsManyRowsAsMemoryAllows() {
        Memory memory = new Memory(150_000_000, 256 << 20);
        int rows = memory.mergeRows(34, 1600);
        assertTrue(rows > 600 && rows < 1250, rows + " rows");
        assertTrue(2L * 4 * 34 * 1600 * rows <= 256 << 20);
        assertEquals(1, new Memory(0, 10).mergeRows(34, 1600));
    }
}
