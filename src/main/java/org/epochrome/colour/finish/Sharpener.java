package org.epochrome.colour.finish;

import java.util.Collections;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.View;
import org.epochrome.image.LocalRange;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Starlet;
import org.epochrome.image.blur.Wings;

/**
 * Brings out detail in a balanced picture without touching its limb or its hues.
 *
 * <p>The light of an even globe is known from the disk fit, with its blur. It is exchanged for the same light with a
 * smaller blur, so the limb becomes steeper and cannot ring. Markings, the ratio of luminance to that light, are restored
 * in part, from the blur's wings as well as from its core, and strengthened by scale; one factor for all three colours carries them back.
 */
public final class Sharpener {
    private static final double[] LUMINANCE = {0.2126, 0.7152, 0.0722};
    /** Blurs that pixels cannot carry are not aimed at. */
    private static final double LEAST_BLUR_PX = 0.7;
    /** Strength from which on the limb has the new blur in full. */
    private static final double FULL_DEBLUR = 0.25;

    /** Part of the light in wings from which on they are taken off; frames that were sharpened have less than none. */
    private static final double LEAST_WINGS = 0.01;

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
    private final BandLight middle;
    private final List<BandLight> bands;

    private Sharpener(View view, List<BandLight> bands, Sharpening settings, int width, int height) {
        this.view = view;
        this.settings = settings;
        this.width = width;
        this.height = height;
        this.bands = bands;
        middle = bands.get(1);
        blurPx = middle.shading().blurPx();
        targetPx = Math.min(blurPx, Math.max(LEAST_BLUR_PX, (1 - settings.deblur()) * blurPx));
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

    /** What the even globe looks like in a colour. */
    private Plane seen(int c) {
        return bands.get(c).picture(view, width, height);
    }

    /** What the even globe would look like in a colour with the blur that is aimed at. */
    private Plane wanted(int c) {
        return bands.get(c).blurredBy(targetPx).picture(view, width, height);
    }

    /** What is sharpened in luminance: its levels, the even globe's, and where there is light enough. */
    private record Lights(Plane luminance, Plane light, Plane support) {}

    private ColourCube run(ColourCube cube) {
        Plane[] crisp = new Plane[3];
        Lights lights = steeper(cube, crisp);
        Plane common = settings.eachBand() ? null : factor(lights);
        for (int c = 0; c < 3; c++) {
            float[] plane = crisp[c].data();
            Plane factor = settings.eachBand() ? ownFactor(c, cube.planes().get(c), lights.support) : common;
            for (int i = 0; i < plane.length; i++) {
                plane[i] *= factor.data()[i];
            }
        }
        return new ColourCube(crisp[0], crisp[1], crisp[2]);
    }

    /** Exchanges the globe's light in each colour; holds no more than one at a time of what only that needs. */
    private Lights steeper(ColourCube cube, Plane[] crisp) {
        Plane green = seen(1);
        Plane support = support(green);
        Plane luminance = new Plane(width, height);
        Plane light = new Plane(width, height);
        for (int c = 0; c < 3; c++) {
            Plane plane = cube.planes().get(c);
            Plane seen = c == 1 ? green : seen(c);
            crisp[c] = exchanged(plane, seen, wanted(c));
            double level = level(plane, seen, support);
            float share = (float) LUMINANCE[c];
            for (int i = 0; i < luminance.data().length; i++) {
                luminance.data()[i] += share * plane.data()[i];
                light.data()[i] += share * (float) level * seen.data()[i];
            }
        }
        return new Lights(luminance, light, support);
    }

    /** What sharpened markings are of those that are there in one colour, by its own blur. */
    private Plane ownFactor(int c, Plane plane, Plane support) {
        Sharpener own = new Sharpener(view, Collections.nCopies(3, bands.get(c)), settings, width, height);
        Plane light = seen(c);
        float level = (float) level(plane, light, support);
        for (int i = 0; i < light.data().length; i++) {
            light.data()[i] *= level;
        }
        return own.factor(new Lights(plane, light, support));
    }

    /** Where there is light enough to speak of markings, also a little way off: 0 at limb and terminator, to 1. */
    private Plane support(Plane seen) {
        Plane support =
                LocalRange.of(seen, (int) Math.ceil(EDGE_BLURS * blurPx)).least();
        float most = most(seen);
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
    private Plane factor(Lights lights) {
        float[] support = lights.support.data();
        Plane markings = markings(lights);
        float[] v = markings.data();
        Starlet.Scales there = new Starlet.Scales(markings);
        Plane detail = there.next();
        double finest = Grain.inDetail(detail, lights.support);
        Starlet.Scales gained =
                new Starlet.Scales(difference(restored(markings, finest / Starlet.whiteNoise(0)), markings));
        Plane factor = Plane.filled(width, height, 1);
        for (int j = 0; j < SCALES; j++) {
            float extra = (float) settings.extraGain(Starlet.sizePx(j), blurPx);
            double noise = j == 0 ? finest : Grain.ofScale(j, detail, lights.support, finest);
            Plane more = gained.next();
            Plane trust = Grain.trust(detail, noise, lights.light, settings.threshold());
            for (int i = 0; i < v.length; i++) {
                float strength = detail.data()[i] / (STRONG * v[i]);
                float gain = extra / (1 + strength * strength);
                float added = more.data()[i] + gain * detail.data()[i];
                factor.data()[i] += support[i] * trust.data()[i] * added / v[i];
            }
            detail = j + 1 < SCALES ? there.next() : detail;
        }
        for (int i = 0; i < v.length; i++) {
            factor.data()[i] = Math.max(0, factor.data()[i]);
        }
        return factor;
    }

    /** The ratio of luminance to the globe's light, where there is light enough; elsewhere how bright it is thereabouts. */
    private Plane markings(Lights lights) {
        Plane markings = localLevel(lights.luminance, lights.light, lights.support);
        float[] v = markings.data();
        for (int i = 0; i < v.length; i++) {
            float ratio = lights.luminance.data()[i] / lights.light.data()[i];
            float support = lights.support.data()[i];
            if (support > 0 && Float.isFinite(ratio)) {
                v[i] += support * (Math.max(0, ratio) - v[i]);
            }
            v[i] = Math.max(1e-3f, v[i]);
        }
        return markings;
    }

    private Plane restored(Plane markings, double grain) {
        double between = Math.sqrt(blurPx * blurPx - targetPx * targetPx);
        if (between < 0.3) {
            return markings;
        }
        Plane blurred = middle.blurredBy(blurPx).picture(view, width, height);
        for (int i = 0; i < blurred.data().length; i++) {
            blurred.data()[i] *= markings.data()[i];
        }
        Plane light = wanted(1);
        Wings wings = middle.shading().wings();
        if (wings.spread() > LEAST_WINGS) {
            BandLight core = middle.withoutWings().blurredBy(targetPx);
            blurred = mixed(wings.without(blurred), blurred);
            light = mixed(core.picture(view, width, height), light);
            // Beyond the limb hardly any light is left to divide by.
            float glow = GLOW * most(light);
            for (int i = 0; i < light.data().length; i++) {
                light.data()[i] += glow;
                blurred.data()[i] += glow * markings.data()[i];
            }
        }
        return Restoration.markings(
                blurred, light, markings, between, settings.iterations(), settings.smoothing(), grain);
    }

    /** A picture without wings and one with them, by how much of the blur shall go. */
    private Plane mixed(Plane without, Plane with) {
        float part = (float) Math.min(1, settings.deblur() / FULL_DEBLUR);
        Plane mixed = with.copy();
        for (int i = 0; i < mixed.data().length; i++) {
            mixed.data()[i] += part * (without.data()[i] - with.data()[i]);
        }
        return mixed;
    }

    private static Plane difference(Plane a, Plane b) {
        Plane difference = a.copy();
        for (int i = 0; i < difference.data().length; i++) {
            difference.data()[i] -= b.data()[i];
        }
        return difference;
    }
}
