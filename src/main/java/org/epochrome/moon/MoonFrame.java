package org.epochrome.moon;

import java.time.Duration;
import java.time.Instant;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Region;
import org.epochrome.image.blur.Ellipse;
import org.epochrome.image.blur.RoundSpot;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Wings;

/**
 * A frame in which companions may stand.
 *
 * @param aspect how the body stands at the middle of the recording
 * @param lasted how long it ran
 * @param fit the disk
 * @param view how the body stands on its pixels
 * @param wings what the spread function has besides its core, on the scale of companions
 * @param width pixels
 * @param height pixels
 */
public record MoonFrame(Aspect aspect, Duration lasted, FittedDisk fit, View view, Wings wings, int width, int height) {
    private static final int MOTION_COPIES = 7;

    /**
     * A frame whose disk is known.
     *
     * @param globe the body in that aspect, seen through the air
     */
    public static MoonFrame of(Aspect aspect, Globe globe, Duration lasted, FittedDisk fit, int width, int height) {
        return new MoonFrame(
                aspect, lasted, fit, new View(globe, fit.disk()), fit.shading().wings(), width, height);
    }

    public MoonFrame with(FittedDisk other) {
        return with(other, width, height);
    }

    /** Other pixels, on which the disk lies elsewhere. */
    public MoonFrame with(FittedDisk other, int columns, int rows) {
        return new MoonFrame(aspect, lasted, other, new View(view.globe(), other.disk()), wings, columns, rows);
    }

    public MoonFrame with(Wings other) {
        return new MoonFrame(aspect, lasted, fit, view, other, width, height);
    }

    /** The frame on pixels binned by a factor, whose noise is independent. */
    public MoonFrame binned(int factor) {
        FittedDisk small = fit.binned(factor).withNoise(fit.noise() / factor);
        return with(small, width / factor, height / factor).with(wings.scaled(1.0 / factor));
    }

    public Instant mid() {
        return aspect.utc();
    }

    public double radiusPx() {
        return fit.disk().equatorialRadiusPx();
    }

    public double blurPx() {
        return fit.shading().blurPx();
    }

    public double x(SkyPoint place) {
        return view.column(place.pole(), place.side());
    }

    public double y(SkyPoint place) {
        return view.row(place.pole(), place.side());
    }

    public SkyPoint place(double x, double y) {
        return new SkyPoint(view.side(x, y), view.pole(x, y));
    }

    /** The pixels no farther than a reach from where a companion stands at the middle of the recording. */
    public Region around(MoonOrShadow companion, double reachPx) {
        SkyPoint place = companion.at(mid());
        return Region.around(x(place), y(place), reachPx, width, height);
    }

    /** Distance from the disk's centre, 1 on the limb. */
    public double elliptic(double x, double y) {
        return view.ellipticRadius(view.pole(x, y), view.side(x, y));
    }

    /** How far a place lies beyond the limb, pixels; negative on the disk. */
    public double beyondLimbPx(double x, double y) {
        return (elliptic(x, y) - 1) * radiusPx();
    }

    /** Whether a place lies between the outermost pixels. */
    public boolean has(double x, double y) {
        return x > 0 && y > 0 && x < width - 1 && y < height - 1;
    }

    /** Whether a companion is in sight and lies on the picture at least by its middle. */
    public boolean shows(MoonOrShadow companion) {
        SkyPoint place = companion.at(mid());
        return companion.inSight().test(mid()) && has(x(place), y(place));
    }

    /** Whether a companion is in sight and lies on the picture as a whole, with some margin. */
    public boolean holds(MoonOrShadow companion, double marginPx) {
        if (!companion.inSight().test(mid())) {
            return false;
        }
        SkyPoint place = companion.at(mid());
        double margin = companion.radius() * radiusPx() + 3 * blurPx() + marginPx;
        return Math.min(x(place), y(place)) > margin && x(place) < width - 1 - margin && y(place) < height - 1 - margin;
    }

    /** How a companion looks here: smeared by its motion during the recording and by the band's dispersion. */
    public RoundSpot spot(MoonOrShadow companion) {
        return spot(
                companion,
                companion.velocity(mid()).times(lasted.toMillis() / 1000.0),
                fit.shading().smear(),
                mid());
    }

    /**
     * How it would look at an instant.
     *
     * @param unsmeared how much of the dispersion blur is removed
     */
    public RoundSpot still(MoonOrShadow companion, Instant utc, DispersionDeconvolution.Extent unsmeared) {
        return spot(companion, new SkyPoint(0, 0), DispersionDeconvolution.left(fit.shading(), unsmeared), utc);
    }

    private RoundSpot spot(MoonOrShadow companion, SkyPoint moved, Smear smear, Instant utc) {
        double dx = x(moved) - x(new SkyPoint(0, 0));
        double dy = y(moved) - y(new SkyPoint(0, 0));
        int copies = Math.hypot(dx, dy) < 0.2 ? 1 : MOTION_COPIES;
        double spreadPx = spread(smear.offsetsPx());
        double[] offsets = spreadPx < 0.1 ? new double[] {0} : new double[] {-spreadPx, 0, spreadPx};
        double direction = Math.toRadians(smear.directionDeg());
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
                wings,
                copiesX,
                copiesY,
                companion.shadow() ? ShadowOutline.at(view, companion.at(utc)) : Ellipse.CIRCLE);
    }

    /** Offset of three equally strong copies that spread light as widely as many do. */
    private static double spread(double[] offsets) {
        double squares = 0;
        for (double offset : offsets) {
            squares += offset * offset;
        }
        return Math.sqrt(1.5 * squares / Math.max(1, offsets.length));
    }
}
