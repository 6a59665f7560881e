package org.epochrome.session;

import java.time.Duration;
import java.time.Instant;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.RoundSpot;

/**
 * A frame in which companions are looked for: its light above the sky, 1 for the even globe's brightest part.
 *
 * @param mid middle of the recording
 * @param lasted how long it ran
 * @param fit the disk
 * @param view how the body stands on its pixels
 * @param light brightness of the frame
 * @param even brightness of an even globe with its rings, on a belted one with its zones
 */
record MoonFrame(Instant mid, Duration lasted, FittedDisk fit, View view, Plane light, Plane even) {
    private static final int MOTION_COPIES = 7;

    static MoonFrame of(Exposure exposure, Plane plane, FittedDisk fit) {
        View view = new View(Globe.of(exposure.aspect()), fit.disk());
        Plane light = plane.copy();
        for (int i = 0; i < light.data().length; i++) {
            light.data()[i] = (float) ((light.data()[i] - fit.background()) / fit.brightness());
        }
        Plane even = even(view, fit, plane.width(), plane.height());
        if (DiskFinder.belted(exposure.aspect().body())) {
            ZonalGround.lay(even, light, view);
        }
        return new MoonFrame(exposure.mid(), exposure.frame().timing().span().duration(), fit, view, light, even);
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

    /** The same frame with other light. */
    MoonFrame with(Plane other) {
        return new MoonFrame(mid, lasted, fit, view, other, even);
    }

    double radiusPx() {
        return fit.disk().equatorialRadiusPx();
    }

    double blurPx() {
        return fit.shading().blurPx();
    }

    double x(SkyPoint place) {
        return view.column(place.pole(), place.side());
    }

    double y(SkyPoint place) {
        return view.row(place.pole(), place.side());
    }

    SkyPoint place(double x, double y) {
        return new SkyPoint(view.side(x, y), view.pole(x, y));
    }

    /** Distance from the disk's centre, 1 on the limb. */
    double elliptic(double x, double y) {
        return view.ellipticRadius(view.pole(x, y), view.side(x, y));
    }

    /** Whether a place lies on the picture, with some margin. */
    boolean holds(SkyPoint place, double marginPx) {
        double x = x(place);
        double y = y(place);
        return x > marginPx && y > marginPx && x < light.width() - 1 - marginPx && y < light.height() - 1 - marginPx;
    }

    /** How a companion looks here: drawn out by its motion during the recording and by the band's dispersion. */
    RoundSpot spot(Companion companion) {
        SkyPoint moved = companion.velocity(mid).times(lasted.toMillis() / 1000.0);
        double dx = x(moved) - x(new SkyPoint(0, 0));
        double dy = y(moved) - y(new SkyPoint(0, 0));
        int copies = Math.hypot(dx, dy) < 0.2 ? 1 : MOTION_COPIES;
        double drawnOut = spread(fit.shading().smear().offsetsPx());
        double[] offsets = drawnOut < 0.1 ? new double[] {0} : new double[] {-drawnOut, 0, drawnOut};
        double direction = Math.toRadians(fit.shading().smear().directionDeg());
        double[] copiesX = new double[copies * offsets.length];
        double[] copiesY = new double[copiesX.length];
        for (int i = 0; i < copiesX.length; i++) {
            double part = (i % copies + 0.5) / copies - 0.5;
            double offset = offsets[i / copies];
            copiesX[i] = part * dx - offset * Math.sin(direction);
            copiesY[i] = part * dy - offset * Math.cos(direction);
        }
        return new RoundSpot(
                companion.radius() * radiusPx(),
                Math.hypot(blurPx(), companion.softness() * radiusPx()),
                copiesX,
                copiesY);
    }

    /** Offset of three equally strong copies that spread light as widely as many do. */
    private static double spread(double[] offsets) {
        double squares = 0;
        for (double offset : offsets) {
            squares += offset * offset;
        }
        return Math.sqrt(1.5 * squares / offsets.length);
    }
}
