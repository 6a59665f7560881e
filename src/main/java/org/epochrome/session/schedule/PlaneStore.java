package org.epochrome.session.schedule;

import java.util.AbstractList;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.epochrome.image.Plane;

/**
 * Planes of a session, one for each exposure, made when asked for. The first ones are kept as far as memory allows; which
 * ones never matters to what they hold. Callers may change no pixel.
 */
public final class PlaneStore extends AbstractList<Plane> {
    private final IntFunction<Plane> maker;
    private final long mostBytes;
    private final AtomicReferenceArray<Plane> held;
    private final AtomicLong heldBytes = new AtomicLong();

    /**
     * @param count how many there are
     * @param maker makes one, always the same for the same number
     * @param mostBytes how much may be kept
     */
    public PlaneStore(int count, IntFunction<Plane> maker, long mostBytes) {
        this.maker = maker;
        this.mostBytes = mostBytes;
        held = new AtomicReferenceArray<>(count);
    }

    /** Makes in parallel what can be kept, supposing that all are as large as the first. */
    public PlaneStore filled() {
        if (held.length() > 0) {
            long fit = mostBytes / bytes(get(0));
            IntStream.range(1, (int) Math.min(held.length(), Math.max(1, fit)))
                    .parallel()
                    .forEach(this::get);
        }
        return this;
    }

    @Override
    public Plane get(int index) {
        Plane kept = held.get(index);
        if (kept != null) {
            return kept;
        }
        Plane made = maker.apply(index);
        long bytes = bytes(made);
        if (heldBytes.addAndGet(bytes) > mostBytes || !held.compareAndSet(index, null, made)) {
            heldBytes.addAndGet(-bytes);
        }
        return made;
    }

    @Override
    public int size() {
        return held.length();
    }

    long heldBytes() {
        return heldBytes.get();
    }

    private static long bytes(Plane plane) {
        return (long) Float.BYTES * plane.width() * plane.height();
    }
}
