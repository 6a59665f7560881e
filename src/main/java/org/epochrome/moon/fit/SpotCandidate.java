package org.epochrome.moon.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.MoonTrack;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.SpotFit;

/**
 * A compact feature in a frame: a place where the light differs, on the scale of a moon, from that around it.
 *
 * @param frame its number
 * @param place where it is
 * @param fit what a moon of some size there explains
 * @param around the light around it
 */
public record SpotCandidate(int frame, SkyPoint place, SpotFit fit, MoonField around) {
    /** Radii that a feature may have, equatorial radii of the planet. */
    private static final double[] RADII = {0.008, 0.02, 0.035};

    private static final double GROUND = 0.03;
    /** Difference from the surroundings that stands out: on the globe, near its limb, off it (also in noises). */
    private static final double ON_GLOBE = 0.06;

    private static final double AT_LIMB = 0.1;
    private static final double ON_SKY = 0.004;
    private static final double NOISES = 8;
    /** How far off the rings a moon must be: equatorial radii, and blurs on top of them. */
    private static final double CLEAR = 0.01;

    private static final double CLEAR_BLURS = 4;
    private static final int MOST_PER_FRAME = 24;
    /** Light around a feature that is kept: blurs, and equatorial radii. */
    private static final double REACH_BLURS = 9;

    private static final double REACH = 0.08;
    /** Part of what is not smooth ground that a feature must explain, on the globe and off it. */
    private static final double COMPACT = 0.5;

    private static final double COMPACT_ON_SKY = 0.3;

    /** The features of a frame that stand out most, none of them near the companions that are known. */
    static List<SpotCandidate> in(int index, MoonField field, List<MoonOrShadow> known) {
        MoonFrame frame = field.frame();
        Plane fine = residual(field);
        Plane plane = Gaussian.blur(fine, frame.blurPx());
        Plane ground = Gaussian.blur(fine, Math.max(3 * frame.blurPx(), GROUND * frame.radiusPx()));
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] -= ground.data()[i];
        }
        List<double[]> peaks = peaks(field, plane);
        peaks.sort(Comparator.comparingDouble(p -> -p[2]));
        List<SpotCandidate> result = new ArrayList<>();
        for (double[] peak : peaks.subList(0, Math.min(MOST_PER_FRAME, peaks.size()))) {
            SkyPoint place = frame.place(peak[0], peak[1]);
            if (known.stream().anyMatch(k -> near(k, frame, place))) {
                continue;
            }
            MoonField around = around(field, place);
            SpotFit best = null;
            for (double radius : RADII) {
                MoonOrShadow still = MoonOrShadow.found(false, radius, utc -> place);
                SpotFit fit = new MoonFit(around, still, 0).free(0);
                best = best == null || fit.explained() > best.explained() ? fit : best;
            }
            boolean sky = frame.elliptic(peak[0], peak[1]) > 1 + 3 * frame.blurPx() / frame.radiusPx();
            if (best.explained() > (sky ? COMPACT_ON_SKY : COMPACT)
                    && Math.abs(best.contrast(false)) > MoonTrack.LEAST_CONTRAST) {
                result.add(new SpotCandidate(index, best.place(), best, around));
            }
        }
        return result;
    }

    /** The light around a place, as much as it takes to size a companion there. */
    public static MoonField around(MoonField field, SkyPoint place) {
        MoonFrame frame = field.frame();
        return field.around(frame.x(place), frame.y(place), REACH_BLURS * frame.blurPx() + REACH * frame.radiusPx());
    }

    private static boolean near(MoonOrShadow companion, MoonFrame frame, SkyPoint place) {
        double reach = companion.radius() + 2.5 * frame.blurPx() / frame.radiusPx();
        return companion.at(frame.mid()).minus(place).length() < reach;
    }

    private static Plane residual(MoonField frame) {
        Plane residual = frame.light().copy();
        for (int i = 0; i < residual.data().length; i++) {
            float value = residual.data()[i] - frame.even().data()[i];
            residual.data()[i] = Float.isNaN(value) ? 0 : value;
        }
        return residual;
    }

    private static List<double[]> peaks(MoonField field, Plane plane) {
        MoonFrame frame = field.frame();
        List<double[]> peaks = new ArrayList<>();
        boolean onGlobe = frame.aspect().body().moons().transits();
        int reach = (int) Math.ceil(Math.max(3, 1.5 * frame.blurPx()));
        double sky = Math.max(
                ON_SKY,
                NOISES * frame.fit().noise() / frame.fit().brightness() / (3.5 * Math.max(0.3, frame.blurPx())));
        int margin = (int) Math.ceil(4 * frame.blurPx()) + 2;
        for (int y = margin; y < plane.height() - margin; y++) {
            for (int x = margin; x < plane.width() - margin; x++) {
                double value = Math.abs(plane.at(x, y));
                if (value < sky || !highest(plane, x, y, reach)) {
                    continue;
                }
                double beyondPx = (frame.elliptic(x, y) - 1) * frame.radiusPx();
                boolean dark = field.even().at(x, y) < 0.01 && beyondPx > 0;
                double least = Math.abs(beyondPx) < 3 * frame.blurPx() ? AT_LIMB : dark ? sky : ON_GLOBE;
                boolean looked = dark ? plane.at(x, y) > 0 && clearOfRings(frame, x, y) : onGlobe;
                if (value > least && looked) {
                    peaks.add(new double[] {x, y, value / least});
                }
            }
        }
        return peaks;
    }

    private static boolean clearOfRings(MoonFrame frame, int x, int y) {
        if (frame.fit().rings().isNone()) {
            return true;
        }
        double margin = CLEAR_BLURS * frame.blurPx() / frame.radiusPx();
        double rings = frame.aspect().body().reachRadii() + CLEAR;
        double side = frame.view().side(x, y) / (rings + margin);
        double pole = frame.view().pole(x, y)
                / (rings * Math.abs(Math.sin(frame.view().globe().tilt())) + margin);
        return Math.hypot(side, pole) > 1;
    }

    private static boolean highest(Plane plane, int x, int y, int reach) {
        double value = Math.abs(plane.at(x, y));
        for (int j = Math.max(0, y - reach); j <= Math.min(plane.height() - 1, y + reach); j++) {
            for (int i = Math.max(0, x - reach); i <= Math.min(plane.width() - 1, x + reach); i++) {
                double other = Math.abs(plane.at(i, j));
                if (other > value || (other == value && (j < y || (j == y && i < x)))) {
                    return false;
                }
            }
        }
        return true;
    }
}
