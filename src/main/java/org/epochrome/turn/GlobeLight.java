package org.epochrome.turn;

import org.epochrome.disk.RingLight;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;

/**
 * What an even globe and its rings would show in an image, on the part of it that gets their light.
 *
 * @param part that part
 * @param attenuation on its pixels
 */
record GlobeLight(Region part, RingAttenuation attenuation) {
    static GlobeLight of(View view, RingLight rings, Shading shading, int width, int height) {
        Region part = shading.region(view, view.globe().extent(), width, height);
        return new GlobeLight(part, RingAttenuation.of(view.on(part), rings, shading, part.width(), part.height()));
    }

    /** Light of the globe at a pixel of the image on the globe, dimmed by its rings. */
    float shade(int x, int y) {
        return attenuation.shade().at(x - part.left(), y - part.top());
    }

    /** Part of the globe's light that the rings let through at a pixel of the image on the globe. */
    float clear(int x, int y) {
        return attenuation.clear().at(x - part.left(), y - part.top());
    }

    /** Light of the rings at a pixel of the image on the globe. */
    float rings(int x, int y) {
        return attenuation.rings().at(x - part.left(), y - part.top());
    }

    /** Light of globe and rings together in some rows of the image. */
    Plane light(int width, int top, int rows) {
        Plane light = new Plane(width, rows);
        int first = Math.max(top, part.top());
        int last = Math.min(top + rows, part.top() + part.height());
        for (int y = first; y < last; y++) {
            for (int x = 0; x < part.width(); x++) {
                int p = (y - part.top()) * part.width() + x;
                light.set(
                        part.left() + x,
                        y - top,
                        attenuation.shade().data()[p] + attenuation.rings().data()[p]);
            }
        }
        return light;
    }
}
