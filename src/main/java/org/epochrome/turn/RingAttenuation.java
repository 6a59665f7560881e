package org.epochrome.turn;

import org.epochrome.disk.RingLight;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * What an even globe and its rings would show on some pixels, blurred, 1 where Sun and observer stand overhead.
 *
 * @param shade light of the globe, dimmed by rings in front and by their shadow
 * @param clear part of the globe's light that the rings let through
 * @param rings light of the rings
 */
public record RingAttenuation(Plane shade, Plane clear, Plane rings) {
    private static final float FAINT = 1e-4f;

    public static RingAttenuation of(View view, RingLight rings, Shading shading, int width, int height) {
        if (rings.isNone()) {
            return new RingAttenuation(
                    shading.picture(view, width, height), Plane.filled(width, height, 1), new Plane(width, height));
        }
        Plane[] both = shading.pictureAndVeiled(view, width, height);
        Plane free = both[0];
        Plane shade = both[1];
        Plane clear = new Plane(width, height);
        for (int i = 0; i < clear.data().length; i++) {
            float whole = free.data()[i];
            clear.data()[i] = whole > FAINT ? shade.data()[i] / whole : 1;
        }
        return new RingAttenuation(shade, clear, rings.picture(view, shading, width, height));
    }
}
