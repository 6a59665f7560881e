package org.epochrome.colour.finish;

import org.epochrome.disk.RingLight;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * How light falls off over a globe, and over its rings, in one band of a picture.
 *
 * @param shading limb darkening and blur, on the picture's pixels
 * @param rings brightness of the rings
 */
public record BandLight(Shading shading, RingLight rings) {
    /** An even globe with its rings, 1 where Sun and observer stand overhead. */
    Plane picture(View view, int width, int height) {
        if (rings.isNone()) {
            return shading.picture(view, width, height);
        }
        Plane light = shading.pictureAndVeiled(view, width, height)[1];
        Plane around = rings.picture(view, shading, width, height);
        for (int i = 0; i < light.data().length; i++) {
            light.data()[i] += around.data()[i];
        }
        return light;
    }

    /** This light without a smear and with another blur. */
    BandLight blurredBy(double blurPx) {
        return new BandLight(shading.blurredBy(blurPx), rings);
    }

    /** This light, blurred by the core of the spread function alone, without wings. */
    BandLight withoutWings() {
        return new BandLight(shading.withoutWings(), rings);
    }
}
