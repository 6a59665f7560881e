package org.epochrome.map;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Spline;
import org.epochrome.turn.RingAttenuation;

/**
 * The surface of a globe in a merged picture with its shading taken off: at every place the brightness that it would have
 * with Sun and observer overhead. Rings are taken out.
 */
public final class NormalisedSurface {
    /** Parts of the brightest shading between which a place comes to count as lit. */
    private static final double DARK = 0.06;

    private static final double LIT = 0.14;
    /** Parts of its light that get through the rings between which a place comes to count as unveiled. */
    private static final double VEILED = 0.85;

    private static final double UNVEILED = 0.97;

    private final View view;
    private final List<BandLight> lights = new ArrayList<>();
    private final List<Spline> bands = new ArrayList<>();
    private final Plane darkest;
    private final Plane clear;

    /**
     * Takes the shading off.
     *
     * @param cube red, green, blue: light above the sky
     * @param view where the globe lies in them
     * @param lights the light of each, as the limb tells it
     * @param belted whether the globe's parallels are about even, which tells the shading better than the limb does
     */
    public NormalisedSurface(List<Plane> cube, View view, List<BandLight> lights, boolean belted) {
        this.view = view;
        int width = cube.get(0).width();
        int height = cube.get(0).height();
        darkest = Plane.filled(width, height, Float.MAX_VALUE);
        clear = Plane.filled(width, height, 1);
        for (int band = 0; band < cube.size(); band++) {
            BandLight light = lights.get(band);
            RingAttenuation veil = light.on(view, width, height);
            Plane even = even(cube.get(band), veil, light.brightness());
            if (belted) {
                light = light.withExponentBy(ZonalLaw.exponentError(even, veil.clear(), view));
                veil = light.on(view, width, height);
                even = even(cube.get(band), veil, light.brightness());
            }
            for (int i = 0; i < even.data().length; i++) {
                boolean data = !Float.isNaN(cube.get(band).data()[i]);
                darkest.data()[i] =
                        data ? Math.min(darkest.data()[i], veil.shade().data()[i]) : 0;
                clear.data()[i] = Math.min(clear.data()[i], veil.clear().data()[i]);
            }
            this.lights.add(light);
            bands.add(new Spline(even));
        }
    }

    private static Plane even(Plane picture, RingAttenuation veil, double brightness) {
        Plane even = new Plane(picture.width(), picture.height());
        for (int i = 0; i < even.data().length; i++) {
            float light = Float.isNaN(picture.data()[i]) ? 0 : picture.data()[i];
            float globe = light - (float) brightness * veil.rings().data()[i];
            even.data()[i] = globe / Math.max(veil.shade().data()[i], 0.5f * (float) DARK);
        }
        return even;
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
        PICTURE(0.08, 0.22);

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
