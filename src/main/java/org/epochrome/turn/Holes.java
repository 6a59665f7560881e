package org.epochrome.turn;

import java.util.BitSet;
import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;

/**
 * Pixels of a frame that hold no data. Small holes are filled from what surrounds them, so that a picture can be resampled
 * there; what is taken from them deserves no trust. Large ones stay without data.
 */
final class Holes {
    /** Reach of the resampling to either side of a place, pixels. */
    private static final int BEFORE = 1;

    private static final int AFTER = 2;
    /** Width of the surroundings that fill a hole, pixels, and the part of them that must hold data. */
    private static final double SURROUNDINGS_PX = 2;

    private static final float KNOWN = 0.02f;

    private final int width;
    private final int height;
    private final BitSet missing = new BitSet();
    private final BitSet lost = new BitSet();

    private Holes(int width, int height) {
        this.width = width;
        this.height = height;
    }

    /** Finds the holes of a plane and fills the small ones in place; large ones become 0. */
    static Holes filled(Plane plane) {
        Holes holes = new Holes(plane.width(), plane.height());
        float[] data = plane.data();
        for (int i = 0; i < data.length; i++) {
            if (Float.isNaN(data[i])) {
                holes.missing.set(i);
                data[i] = 0;
            }
        }
        if (!holes.missing.isEmpty()) {
            holes.fill(plane);
        }
        return holes;
    }

    private void fill(Plane plane) {
        Plane known = Plane.filled(width, height, 1);
        missing.stream().forEach(i -> known.data()[i] = 0);
        Plane light = Gaussian.blur(plane, SURROUNDINGS_PX);
        Plane share = Gaussian.blur(known, SURROUNDINGS_PX);
        missing.stream().forEach(i -> {
            if (share.data()[i] > KNOWN) {
                plane.data()[i] = light.data()[i] / share.data()[i];
            } else {
                lost.set(i);
            }
        });
    }

    /** Whether a value that is resampled at a place depends on pixels without data. */
    boolean touch(double column, double row) {
        return !missing.isEmpty() && any(missing, column, row);
    }

    /** Whether there is nothing at a place to fill it from. */
    boolean lose(double column, double row) {
        return !lost.isEmpty() && any(lost, column, row);
    }

    private boolean any(BitSet set, double column, double row) {
        int left = Math.max(0, (int) Math.floor(column) - BEFORE);
        int right = Math.min(width - 1, (int) Math.floor(column) + AFTER);
        for (int y = Math.max(0, (int) Math.floor(row) - BEFORE);
                y <= Math.min(height - 1, (int) Math.floor(row) + AFTER);
                y++) {
            int next = set.nextSetBit(y * width + left);
            if (next >= 0 && next <= y * width + right) {
                return true;
            }
        }
        return false;
    }
}
