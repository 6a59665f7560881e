package org.epochrome.colour;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.epochrome.disk.View;
import org.epochrome.image.Gaussian;
import org.epochrome.image.LocalRange;
import org.epochrome.image.Plane;
import org.epochrome.image.Starlet;

/**
 * Brings out detail in a balanced picture without touching its limb or its hues.
 *
 * <p>The light of an even globe is known from the disk fit, with its blur. It is exchanged for the same light with a
 * smaller blur, so the limb becomes steeper and cannot ring. Markings, the ratio of luminance to that light, are restored
 * in part and strengthened by scale; one factor for all three colours carries them back.
 */
public final class Sharpener {
    private static final double[] LUMINANCE = {0.2126, 0.7152, 0.0722};
    /** Blurs that pixels cannot carry are not aimed at. */
    private static final double LEAST_BLUR_PX = 0.7;
    /** Strength from which on the limb has the new blur in full. */
    private static final double FULL_DEBLUR = 0.25;

    private static final double REACH_BLURS = 3;
    private static final double EDGE_BLURS = 1.5;

    /** Light of the sky around a planet, as a part of its own. Common practice, no source. */
    private static final float GLOW = 0.01f;

    /** Detail of this strength, as a part of the brightness, is strengthened half as much: edges need it less. */
    private static final float STRONG = 0.03f;

    private static final int SCALES = 5;
    private static final double DARK = 0.10;
    private static final double LIT = 0.30;

    private final View view;
    private final Sharpening settings;
    private final int width;
    private final int height;
    private final double blurPx;
    private final double targetPx;
    private final Plane[] seen = new Plane[3];
    private final Plane[] wanted = new Plane[3];
    private final BandLight green;
    private final List<BandLight> bands;

    private Sharpener(View view, List<BandLight> bands, Sharpening settings, int width, int height) {
        this.view = view;
        this.settings = settings;
        this.width = width;
        this.height = height;
        this.bands = bands;
        green = bands.get(1);
        blurPx = green.shading().blurPx();
        targetPx = Math.min(blurPx, Math.max(LEAST_BLUR_PX, (1 - settings.deblur()) * blurPx));
        for (int c = 0; c < 3; c++) {
            seen[c] = bands.get(c).picture(view, width, height);
            wanted[c] = bands.get(c).blurredBy(targetPx).picture(view, width, height);
        }
    }

    /**
     * The sharpened cube.
     *
     * @param balanced linear colours, white where they are equal
     * @param view where the globe stands in it
     * @param bands how light falls off in red, green and blue
     */
    public static ColourCube sharpened(ColourCube balanced, View view, List<BandLight> bands, Sharpening settings) {
        if (settings.isNone()) {
            return balanced;
        }
        return new Sharpener(view, bands, settings, balanced.width(), balanced.height()).run(balanced);
    }

    private ColourCube run(ColourCube cube) {
        Plane support = support();
        List<Plane> crisp = new ArrayList<>();
        Plane luminance = new Plane(width, height);
        Plane light = new Plane(width, height);
        for (int c = 0; c < 3; c++) {
            Plane plane = cube.planes().get(c);
            crisp.add(exchanged(plane, seen[c], wanted[c]));
            double level = level(plane, seen[c], support);
            float share = (float) LUMINANCE[c];
            for (int i = 0; i < luminance.data().length; i++) {
                luminance.data()[i] += share * plane.data()[i];
                light.data()[i] += share * (float) level * seen[c].data()[i];
            }
        }
        Plane common = settings.eachBand() ? null : factor(luminance, light, support);
        for (int c = 0; c < 3; c++) {
            Plane plane = crisp.get(c);
            Plane factor = settings.eachBand() ? ownFactor(c, cube.planes().get(c), support) : common;
            for (int i = 0; i < plane.data().length; i++) {
                plane.data()[i] *= factor.data()[i];
            }
        }
        return new ColourCube(crisp.get(0), crisp.get(1), crisp.get(2));
    }

    /** What sharpened markings are of those that are there in one colour, by its own blur. */
    private Plane ownFactor(int c, Plane plane, Plane support) {
        Sharpener own = new Sharpener(view, Collections.nCopies(3, bands.get(c)), settings, width, height);
        Plane light = seen[c].copy();
        float level = (float) level(plane, light, support);
        for (int i = 0; i < light.data().length; i++) {
            light.data()[i] *= level;
        }
        return own.factor(plane, light, support);
    }

    /** Where there is light enough to speak of markings, also a little way off: 0 at limb and terminator, to 1. */
    private Plane support() {
        Plane support =
                LocalRange.of(seen[1], (int) Math.ceil(EDGE_BLURS * blurPx)).least();
        float most = most(seen[1]);
        for (int i = 0; i < support.data().length; i++) {
            double t = (support.data()[i] / most - DARK) / (LIT - DARK);
            t = Math.max(0, Math.min(1, t));
            support.data()[i] = (float) (t * t * (3 - 2 * t));
        }
        return support;
    }

    private static float most(Plane plane) {
        float most = 0;
        for (float v : plane.data()) {
            most = Math.max(most, v);
        }
        return most;
    }

    private static double level(Plane plane, Plane light, Plane support) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i < plane.data().length; i++) {
            if (!Float.isNaN(plane.data()[i])) {
                sum += support.data()[i] * plane.data()[i];
                all += support.data()[i] * light.data()[i];
            }
        }
        return all > 0 && sum > 0 ? sum / all : 1;
    }

    /** How bright the globe is thereabouts, as a factor on its light; goes on beyond the limb. */
    private Plane localLevel(Plane plane, Plane light, Plane support) {
        Plane top = new Plane(width, height);
        Plane bottom = new Plane(width, height);
        for (int i = 0; i < top.data().length; i++) {
            if (!Float.isNaN(plane.data()[i])) {
                top.data()[i] = support.data()[i] * plane.data()[i];
                bottom.data()[i] = support.data()[i] * light.data()[i];
            }
        }
        double reach = Math.max(3, 2 * blurPx);
        Plane above = Gaussian.blur(top, reach);
        Plane below = Gaussian.blur(bottom, reach);
        float everywhere = (float) level(plane, light, support);
        for (int i = 0; i < above.data().length; i++) {
            // The overall level takes over where nothing is near.
            above.data()[i] = Math.max(0, above.data()[i] + 1e-4f * everywhere) / (below.data()[i] + 1e-4f);
        }
        return above;
    }

    /**
     * The picture with the even globe's light exchanged for light of a smaller blur, as a factor: what a fit that is a
     * little off does to one colour it does to all. A little light is put below both, so that the glow around a planet
     * goes on evenly; and nothing gets brighter or darker than what is nearby, so that the limb cannot shoot over.
     */
    private Plane exchanged(Plane plane, Plane from, Plane to) {
        float part = (float) Math.min(1, settings.deblur() / FULL_DEBLUR);
        float glow = GLOW * most(from);
        LocalRange nearby = LocalRange.of(plane, (int) Math.ceil(REACH_BLURS * blurPx));
        Plane result = plane.copy();
        for (int i = 0; i < result.data().length; i++) {
            float factor = 1 + part * ((to.data()[i] + glow) / (from.data()[i] + glow) - 1);
            result.data()[i] =
                    Math.max(nearby.least().data()[i], Math.min(nearby.most().data()[i], factor * plane.data()[i]));
        }
        return result;
    }

    /** What sharpened markings are of those that are there. */
    private Plane factor(Plane luminance, Plane light, Plane support) {
        Plane level = localLevel(luminance, light, support);
        Plane markings = level;
        float[] v = markings.data();
        for (int i = 0; i < v.length; i++) {
            float ratio = luminance.data()[i] / light.data()[i];
            if (support.data()[i] > 0 && Float.isFinite(ratio)) {
                v[i] += support.data()[i] * (Math.max(0, ratio) - v[i]);
            }
            v[i] = Math.max(1e-3f, v[i]);
        }
        Starlet there = Starlet.of(markings, SCALES);
        double[] noise = Grain.perScale(there, support);
        Starlet gained = Starlet.of(difference(restored(markings, noise[0] / Starlet.whiteNoise(0)), markings), SCALES);
        Plane factor = Plane.filled(width, height, 1);
        for (int j = 0; j < SCALES; j++) {
            float extra = (float) settings.extraGain(Starlet.sizePx(j), blurPx);
            Plane detail = there.details().get(j);
            Plane more = gained.details().get(j);
            Plane trust = Grain.trust(detail, noise[j], light, settings.threshold());
            for (int i = 0; i < v.length; i++) {
                float strength = detail.data()[i] / (STRONG * v[i]);
                float gain = extra / (1 + strength * strength);
                float added = more.data()[i] + gain * detail.data()[i];
                factor.data()[i] += support.data()[i] * trust.data()[i] * added / v[i];
            }
        }
        for (int i = 0; i < v.length; i++) {
            factor.data()[i] = Math.max(0, factor.data()[i]);
        }
        return factor;
    }

    private Plane restored(Plane markings, double grain) {
        double between = Math.sqrt(blurPx * blurPx - targetPx * targetPx);
        if (between < 0.3) {
            return markings;
        }
        Plane blurred = green.blurredBy(blurPx).picture(view, width, height);
        for (int i = 0; i < blurred.data().length; i++) {
            blurred.data()[i] *= markings.data()[i];
        }
        return Restoration.markings(
                blurred, wanted[1], markings, between, settings.iterations(), settings.smoothing(), grain);
    }

    private static Plane difference(Plane a, Plane b) {
        Plane difference = a.copy();
        for (int i = 0; i < difference.data().length; i++) {
            difference.data()[i] -= b.data()[i];
        }
        return difference;
    }
}
