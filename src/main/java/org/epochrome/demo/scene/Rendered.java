package org.epochrome.demo.scene;

import org.epochrome.image.Plane;

/**
 * A picture and the truth about it.
 *
 * @param pixels linear levels; 1 is the full scale of a 16-bit file
 * @param disk where the planet is
 */
public record Rendered(Plane pixels, TrueDisk disk) {
    private static final float FULL_SCALE = 65535;

    /** The levels as a 16-bit file holds them: whole numbers from 0 to 65535. */
    public Plane sixteenBit() {
        Plane counts = pixels.copy();
        float[] data = counts.data();
        for (int i = 0; i < data.length; i++) {
            data[i] = Math.min(FULL_SCALE, Math.max(0, Math.round(data[i] * FULL_SCALE)));
        }
        return counts;
    }
}
