package org.epochrome.map;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.Spline;
import org.epochrome.turn.Veil;

/**
 * The surface of a globe in a merged picture with its shading taken off: at every place the brightness that it would have
 * with Sun and observer overhead. Rings are taken out.
 */
public final class Skin {
    /** Parts of the brightest shading between which a place comes to count as lit. */
    private static final double DARK = 0.06;

    private static final double LIT = 0.14;
    /** Parts of its light that get through the rings between which a place comes to count as unveiled. */
    private static final double VEILED = 0.85;

    private static final double UNVEILED = 0.97;

    private final View view;
    private final List<BandLight> lights;
    private final List<Spline> bands = new ArrayList<>();
    private final Plane darkest;
    private final Plane clear;

    /**
     * Takes the shading off.
     *
     * @param cube red, green, blue: light above the sky
     * @param view where the globe lies in them
     * @param lights the light of each
     */
    public Skin(List<Plane> cube, View view, List<BandLight> lights) {
        this.view = view;
        this.lights = List.copyOf(lights);
        int width = cube.get(0).width();
        int height = cube.get(0).height();
        darkest = Plane.filled(width, height, Float.MAX_VALUE);
        clear = Plane.filled(width, height, 1);
        for (int band = 0; band < cube.size(); band++) {
            Veil veil = lights.get(band).on(view, width, height);
            float brightness = (float) lights.get(band).brightness();
            Plane even = new Plane(width, height);
            for (int i = 0; i < even.data().length; i++) {
                float light = cube.get(band).data()[i];
                float shade = veil.shade().data()[i];
                float globe = (Float.isNaN(light) ? 0 : light)
                        - brightness * veil.rings().data()[i];
                even.data()[i] = globe / Math.max(shade, 0.5f * (float) DARK);
                darkest.data()[i] = Float.isNaN(light) ? 0 : Math.min(darkest.data()[i], shade);
                clear.data()[i] = Math.min(clear.data()[i], veil.clear().data()[i]);
            }
            bands.add(new Spline(even));
        }
    }

    View view() {
        return view;
    }

    List<BandLight> lights() {
        return lights;
    }

    int bands() {
        return bands.size();
    }

    /** How steeply a place must be seen to count: cosines of emission between which trust grows from none to full. */
    enum Reach {
        /** For measuring: from 80 degrees off the middle on nothing is told, within 70 degrees all. */
        MAP(0.17, 0.34),
        /** For looking at: nearly up to the limb. */
        PICTURE(0.05, 0.15);

        private final double none;
        private final double full;

        Reach(double none, double full) {
            this.none = none;
            this.full = full;
        }
    }

    /** How well a place was seen, 0 to 1. */
    double seen(double column, double row, double emission, Reach reach) {
        if (!(emission > reach.none) || !bands.get(0).contains(column, row)) {
            return 0;
        }
        int x = Math.max(0, Math.min(darkest.width() - 1, (int) Math.round(column)));
        int y = Math.max(0, Math.min(darkest.height() - 1, (int) Math.round(row)));
        return step(emission, reach.none, reach.full)
                * step(darkest.at(x, y), DARK, LIT)
                * step(clear.at(x, y), VEILED, UNVEILED);
    }

    /** Even brightness at a place of the picture. */
    float at(int band, double column, double row) {
        return bands.get(band).at(column, row);
    }

    private static double step(double value, double from, double to) {
        double t = Math.max(0, Math.min(1, (value - from) / (to - from)));
        return t * t * (3 - 2 * t);
    }
}
