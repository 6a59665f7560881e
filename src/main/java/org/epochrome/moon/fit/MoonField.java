package org.epochrome.moon.fit;

import java.util.Arrays;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.moon.MoonFrame;

/**
 * The light of a frame, and what it would be without markings and companions; above the sky, 1 for the even globe's brightest
 * part.
 *
 * @param frame its geometry
 * @param light brightness of the frame
 * @param even brightness of an even globe with its rings, on a belted one with its zones
 * @param rough standard error of that as a ground for companions, where it is known; else NaN
 */
public record MoonField(MoonFrame frame, Plane light, Plane even, Plane rough) {

    public static MoonField of(MoonFrame frame, Plane plane) {
        FittedDisk fit = frame.fit();
        Plane light = plane.copy();
        for (int i = 0; i < light.data().length; i++) {
            light.data()[i] = (float) ((light.data()[i] - fit.background()) / fit.brightness());
        }
        Plane even = even(frame.view(), fit, plane.width(), plane.height());
        if (fit.rings().isNone()) {
            ZonalBackground.lay(even, light, frame.view());
        }
        Plane rough = new Plane(plane.width(), plane.height());
        Arrays.fill(rough.data(), Float.NaN);
        return new MoonField(frame, light, even, rough);
    }

    private static Plane even(View view, FittedDisk fit, int width, int height) {
        Shading shading = fit.shading();
        if (fit.rings().isNone()) {
            return shading.picture(view, width, height);
        }
        Plane even = shading.pictureAndVeiled(view, width, height)[1];
        Plane rings = fit.rings().picture(view, shading, width, height);
        for (int i = 0; i < even.data().length; i++) {
            even.data()[i] += rings.data()[i];
        }
        return even;
    }

    /** What lies within a distance of a pixel, as far as the picture goes; places on the sky axes stay the same. */
    public MoonField around(double x, double y, double reachPx) {
        Region near = Region.around(x, y, reachPx, light.width(), light.height());
        return new MoonField(
                frame.with(frame.fit().on(near), near.width(), near.height()),
                near.of(light),
                near.of(even),
                near.of(rough));
    }
}
