package org.epochrome.turn;

import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;

/**
 * A frame as it would have looked at the epoch, on the output's pixels.
 *
 * @param picture brightness above the sky, 1 for the even globe's brightest part; NaN where the frame holds no data
 * @param trust 0 to 1: how much of a pixel is detail carried along from a place that the frame saw well; 0 where there is no data and in holes filled from
 *     around
 * @param shade the light that an even globe, with its rings if it has some, would have there, in the same unit
 */
public record Turned(Plane picture, Plane trust, Plane shade) {
    /** This turned frame with its picture smeared; where the frame has no data it is assumed even. */
    public Turned smeared(Smear smear) {
        if (smear == Smear.NONE) {
            return this;
        }
        Plane filled = new Plane(picture.width(), picture.height());
        for (int i = 0; i < filled.data().length; i++) {
            float value = picture.data()[i];
            filled.data()[i] = Float.isNaN(value) ? shade.data()[i] : value;
        }
        Plane drawn = smear.of(filled);
        for (int i = 0; i < filled.data().length; i++) {
            if (Float.isNaN(picture.data()[i])) {
                drawn.data()[i] = Float.NaN;
            }
        }
        return new Turned(drawn, smear.of(trust), smear.of(shade));
    }
}
