package org.epochrome.moon;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Random;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FitErrors;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Smear;

/** An even globe on which round spots are painted by counting samples, then blurred: no table of a spot's profile is used. */
public final class PaintedFrame {
    public static final double BLUR_PX = 1.1;
    static final double BACKGROUND = 0.01;
    public static final double BRIGHTNESS = 0.8;
    public static final double RADIUS_PX = 60;
    public static final int SIDE = 190;
    private static final double NOISE = 0.002;
    private static final int FINE = 9;

    private final MoonFrame frame;
    private final Plane plane;

    public PaintedFrame(Body body, Instant mid, double driftX, double driftY) {
        this(body, mid, driftX, driftY, Smear.NONE);
    }

    public PaintedFrame(Body body, Instant mid, double driftX, double driftY, Smear smear) {
        this(body, mid, driftX, driftY, new Shading(0.95, BLUR_PX, smear));
    }

    public PaintedFrame(Body body, Instant mid, double driftX, double driftY, Shading shading) {
        Aspect aspect = Ephemeris.aspect(body, mid, Optional.empty());
        Disk disk = new Disk(0.5 * SIDE + driftX, 0.5 * SIDE + driftY, RADIUS_PX, 17, false);
        FittedDisk fit =
                new FittedDisk(disk, shading, BACKGROUND, BRIGHTNESS, NOISE, new FitErrors(0.02, 0.02, 0), 0.01);
        frame = MoonFrame.of(aspect, Globe.of(aspect), Duration.ofSeconds(1), fit, SIDE, SIDE);
        plane = fit.shading().picture(frame.view(), SIDE, SIDE);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) (BACKGROUND + BRIGHTNESS * plane.data()[i]);
        }
    }

    public MoonFrame frame() {
        return frame;
    }

    public Plane plane() {
        return plane;
    }

    /** Paints a moon of a brightness, 1 for the globe's brightest part. */
    public PaintedFrame moon(SkyPoint place, double radius, double brightness) {
        return spot(frame.x(place), frame.y(place), radius * RADIUS_PX, BACKGROUND + BRIGHTNESS * brightness, 0);
    }

    /** Paints a shadow that lets a part of the light through. */
    public PaintedFrame shadow(SkyPoint place, double radius, double through) {
        return spot(frame.x(place), frame.y(place), radius * RADIUS_PX, (1 - through) * BACKGROUND, through);
    }

    private PaintedFrame spot(double x0, double y0, double radiusPx, double light, double through) {
        Plane cover = new Plane(SIDE, SIDE);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                int inside = 0;
                for (int j = 0; j < FINE; j++) {
                    for (int i = 0; i < FINE; i++) {
                        double dx = x + (i + 0.5) / FINE - 0.5 - x0;
                        double dy = y + (j + 0.5) / FINE - 0.5 - y0;
                        inside += Math.hypot(dx, dy) < radiusPx ? 1 : 0;
                    }
                }
                cover.set(x, y, inside / (float) (FINE * FINE));
            }
        }
        Shading shading = frame.fit().shading();
        Plane soft = shading.wings().of(shading.smear().of(Gaussian.blur(cover, BLUR_PX)));
        for (int i = 0; i < plane.data().length; i++) {
            float c = soft.data()[i];
            plane.data()[i] = (float) (plane.data()[i] * (1 - c) + c * (light + through * plane.data()[i]));
        }
        return this;
    }

    public PaintedFrame noisy(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] += (float) (NOISE * random.nextGaussian());
        }
        return this;
    }
}
