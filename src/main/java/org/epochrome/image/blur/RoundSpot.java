package org.epochrome.image.blur;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.commons.math3.special.Erf;
import org.epochrome.image.Plane;

/**
 * A round disk of even brightness 1, blurred by a spread function with a Gaussian core and repeated in equally strong copies: what a
 * moon looks like. Pixels integrate over their area.
 */
public final class RoundSpot {
    private static final int ANGLES = 96;
    private static final double STEP_PX = 0.05;
    private static final double REACH_SIGMAS = 5;
    /** Variance that the area of a pixel adds to a blur. */
    private static final double PIXEL_VARIANCE = 1 / 12.0;
    /** Brightness, as a part of the disk's, at which wings may end: it is lost in the noise of a stack. */
    private static final double FAINT = 0.001;

    private static final double WING_SIGMAS = 3;

    /** How many profiles are kept, of some ten kilobytes each. */
    private static final int MOST_PROFILES = 200;
    /** Profiles used lately: a moon is tried at many places, and spreading by wings takes time. */
    private static final Map<Blurred, double[]> PROFILES =
            Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<Blurred, double[]> eldest) {
                    return size() > MOST_PROFILES;
                }
            });

    /** A disk and its blur, pixels. */
    private record Blurred(double radiusPx, double sigmaPx, Wings wings) {}

    private final double[] profile;
    private final double coreReachPx;
    private final double reachPx;
    private final double[] copiesX;
    private final double[] copiesY;
    private final Ellipse outline;
    private final double gain;

    /**
     * A spot.
     *
     * @param radiusPx of the disk
     * @param blurPx standard deviation of the blur's core
     * @param wings what the blur has besides its core
     * @param copiesX offsets of its copies to the right, pixels; {0} for none
     * @param copiesY the same downward
     */
    public RoundSpot(double radiusPx, double blurPx, Wings wings, double[] copiesX, double[] copiesY) {
        this(radiusPx, blurPx, wings, copiesX, copiesY, Ellipse.CIRCLE);
    }

    /**
     * One that is seen as an ellipse behind a round blur: right in its light and its variances.
     *
     * @param outline what the disk of that radius is seen as
     */
    public RoundSpot(double radiusPx, double blurPx, Wings wings, double[] copiesX, double[] copiesY, Ellipse outline) {
        this.copiesX = copiesX.clone();
        this.copiesY = copiesY.clone();
        double sigma = Math.sqrt(blurPx * blurPx + PIXEL_VARIANCE);
        coreReachPx = radiusPx + REACH_SIGMAS * sigma;
        this.outline = outline.blurred(radiusPx, sigma);
        gain = outline.area() / this.outline.area();
        profile = profile(new Blurred(radiusPx, sigma, wings), coreReachPx);
        reachPx = Math.max(coreReachPx, (profile.length - 2) * STEP_PX);
    }

    private static double[] profile(Blurred disk, double coreReach) {
        double[] known = PROFILES.get(disk);
        if (known != null) {
            return known;
        }
        double[] core = core(disk.radiusPx, disk.sigmaPx, coreReach);
        double[] seen = disk.wings.equals(Wings.NONE) ? core : spread(core, disk.wings, coreReach);
        PROFILES.put(disk, seen);
        return seen;
    }

    /** Brightness at each step from the middle. */
    private static double[] core(double radiusPx, double sigma, double reach) {
        // The blurred disk is the sum of the chords across it, each blurred along itself in closed form.
        double[] chordX = new double[ANGLES];
        double[] chordLight = new double[ANGLES];
        double[] chordHalf = new double[ANGLES];
        for (int i = 0; i < ANGLES; i++) {
            double angle = Math.PI * ((i + 0.5) / ANGLES - 0.5);
            chordX[i] = radiusPx * Math.sin(angle);
            chordHalf[i] = radiusPx * Math.cos(angle);
            chordLight[i] = Erf.erf(chordHalf[i] / (Math.sqrt(2) * sigma));
        }
        double[] profile = new double[(int) Math.ceil(reach / STEP_PX) + 2];
        for (int k = 0; k < profile.length; k++) {
            double sum = 0;
            for (int i = 0; i < ANGLES; i++) {
                double t = (chordX[i] - k * STEP_PX) / sigma;
                sum += chordHalf[i] * Math.exp(-0.5 * t * t) * chordLight[i];
            }
            profile[k] = sum * Math.PI / ANGLES / (Math.sqrt(2 * Math.PI) * sigma);
        }
        return profile;
    }

    /**
     * A profile with wings. They are smooth over a pixel, so whole pixels are enough to spread by; what they do not spread keeps the
     * profile's fine steps.
     */
    private static double[] spread(double[] core, Wings wings, double coreReach) {
        double widest = Arrays.stream(wings.widthsPx()).max().orElse(0);
        int reach = (int) Math.ceil(coreReach + WING_SIGMAS * widest);
        Plane alone = new Plane(2 * reach + 1, 2 * reach + 1);
        for (int y = 0; y < alone.height(); y++) {
            for (int x = 0; x < alone.width(); x++) {
                alone.set(x, y, (float) at(core, Math.hypot(x - reach, y - reach)));
            }
        }
        Plane seen = wings.of(alone);
        double kept = 1 - wings.spread();
        double[] added = new double[reach + 1];
        for (int k = 0; k <= reach; k++) {
            added[k] = seen.at(reach + k, reach) - kept * alone.at(reach + k, reach);
        }
        int end = reach;
        while (end > coreReach && Math.abs(added[end]) < FAINT) {
            end--;
        }
        double[] profile = new double[Math.max(core.length, (int) Math.ceil(end / STEP_PX) + 2)];
        for (int k = 0; k < profile.length; k++) {
            double place = Math.min(reach - 1e-9, k * STEP_PX);
            int below = (int) place;
            double part = place - below;
            profile[k] = kept * (k < core.length ? core[k] : 0) + (1 - part) * added[below] + part * added[below + 1];
        }
        return profile;
    }

    /** How far the light of its core reaches from the middle, copies included, pixels. */
    public double coreReachPx() {
        return coreReachPx * outline.longest() + farthestCopyPx();
    }

    /** How far its light reaches from the middle, wings and copies included, pixels. */
    public double reachPx() {
        return reachPx * outline.longest() + farthestCopyPx();
    }

    private double farthestCopyPx() {
        double most = 0;
        for (int i = 0; i < copiesX.length; i++) {
            most = Math.max(most, Math.hypot(copiesX[i], copiesY[i]));
        }
        return most;
    }

    /** Brightness at an offset from the middle, 0 to 1. */
    public double at(double dx, double dy) {
        double sum = 0;
        for (int i = 0; i < copiesX.length; i++) {
            sum += at(profile, outline.distance(dx - copiesX[i], dy - copiesY[i]));
        }
        return gain * sum / copiesX.length;
    }

    private static double at(double[] profile, double distancePx) {
        double place = distancePx / STEP_PX;
        int k = (int) place;
        return k < profile.length - 1 ? profile[k] + (place - k) * (profile[k + 1] - profile[k]) : 0;
    }
}
