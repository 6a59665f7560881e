package org.epochrome.colour.finish;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.View;
import org.epochrome.image.LocalRange;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Starlet;
import org.epochrome.image.blur.Wings;
import org.epochrome.job.Rows;

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
    /** Standard deviations within which a Gaussian blur reaches. */
    private static final double GAUSSIAN_REACH = 4;
    /** Standard deviations of wings beyond which they change little. */
    private static final double WINGS_REACH = 3;

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
        Region part = around(view, marginPx(bands), balanced.width(), balanced.height());
        ColourCube cube = new ColourCube(part.of(balanced.red()), part.of(balanced.green()), part.of(balanced.blue()));
        ColourCube crisp = new Sharpener(view.on(part), bands, settings, part.width(), part.height()).run(cube);
        return new ColourCube(
                replaced(balanced.red(), part, crisp.red()),
                replaced(balanced.green(), part, crisp.green()),
                replaced(balanced.blue(), part, crisp.blue()));
    }

    /** What lies no further than a margin from globe and rings. */
    private static Region around(View view, int marginPx, int width, int height) {
        double[] half = view.halfSizePx();
        double x = view.disk().x();
        double y = view.disk().y();
        double across = half[0] + marginPx;
        double along = half[1] + marginPx;
        return Region.between(x - across, y - along, x + across, y + along, width, height);
    }

    private static Plane replaced(Plane whole, Region part, Plane crisp) {
        Plane result = whole.copy();
        part.put(crisp, result);
        return result;
    }

    /**
     * So far from the globe nothing is changed: wings have come to little, markings are even, and pixels of the coarsest
     * scale that see as much of the mirrored part as they see beyond its edge see only even ones.
     */
    private static int marginPx(List<BandLight> bands) {
        double blurPx =
                bands.stream().mapToDouble(b -> b.shading().blurPx()).max().orElseThrow();
        double wingsPx = bands.stream()
                .filter(b -> Math.abs(b.shading().wings().spread()) > LEAST_WINGS)
                .flatMapToDouble(b -> Arrays.stream(b.shading().wings().widthsPx()))
                .max()
                .orElse(0);
        int even = (int) Math.ceil(Math.max(GAUSSIAN_REACH * localReachPx(blurPx), WINGS_REACH * wingsPx)) + 2;
        return Math.max(even, (even + Starlet.reachPx(SCALES)) / 2 + 1);
    }

    /** How far from a pixel the brightness nearby is looked for. */
    private static double localReachPx(double blurPx) {
        return Math.max(3, 2 * blurPx);
    }

    /** What the even globe looks like in a colour. */
    private Plane seen(int c) {
        return bands.get(c).picture(view, width, height);
    }

    /** What the even globe would look like in a colour with the blur that is aimed at. */
    private Plane wanted(int c) {
        return bands.get(c).blurredBy(targetPx).picture(view, width, height);
    }

    /** The even globe in a colour, as it is seen and as it would look with the blur that is aimed at. */
    private record Even(Plane seen, Plane wanted) {}

    private Even even(int c) {
        return new Even(seen(c), wanted(c));
    }

    /** What is sharpened in luminance: its levels, the even globe's, and where there is light enough. */
    private record Lights(Plane luminance, Plane light, Plane support, Even middle) {}

    private ColourCube run(ColourCube cube) {
        Plane[] crisp = new Plane[3];
        Lights lights = steeper(cube, crisp);
        Plane common = settings.eachBand() ? null : factor(lights);
        for (int c = 0; c < 3; c++) {
            float[] plane = crisp[c].data();
            float[] factor = (settings.eachBand() ? ownFactor(c, cube.planes().get(c), lights.support) : common).data();
            Rows.each(height, (from, to) -> {
                for (int i = from * width; i < to * width; i++) {
                    plane[i] *= factor[i];
                }
            });
        }
        return new ColourCube(crisp[0], crisp[1], crisp[2]);
    }

    /** Exchanges the globe's light in each colour; holds no more than one at a time of what only that needs. */
    private Lights steeper(ColourCube cube, Plane[] crisp) {
        Even green = even(1);
        Plane support = support(green.seen);
        Plane luminance = new Plane(width, height);
        Plane light = new Plane(width, height);
        for (int c = 0; c < 3; c++) {
            Plane plane = cube.planes().get(c);
            Even even = c == 1 ? green : even(c);
            crisp[c] = exchanged(plane, even);
            float share = (float) LUMINANCE[c];
            float lightShare = share * (float) Markings.level(plane, even.seen, support);
            Rows.each(height, (from, to) -> {
                for (int i = from * width; i < to * width; i++) {
                    luminance.data()[i] += share * plane.data()[i];
                    light.data()[i] += lightShare * even.seen.data()[i];
                }
            });
        }
        return new Lights(luminance, light, support, green);
    }

    /** What sharpened markings are of those that are there in one colour, by its own blur. */
    private Plane ownFactor(int c, Plane plane, Plane support) {
        Sharpener own = new Sharpener(view, Collections.nCopies(3, bands.get(c)), settings, width, height);
        Even even = own.even(c);
        Plane light = even.seen.copy();
        float level = (float) Markings.level(plane, light, support);
        for (int i = 0; i < light.data().length; i++) {
            light.data()[i] *= level;
        }
        return own.factor(new Lights(plane, light, support, even));
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

    /**
     * The picture with the even globe's light exchanged for light of a smaller blur, as a factor: what a fit that is a
     * little off does to one colour it does to all. A little light is put below both, so that the glow around a planet
     * goes on evenly; and nothing gets brighter or darker than what is nearby, so that the limb cannot shoot over.
     */
    private Plane exchanged(Plane plane, Even even) {
        float part = (float) Math.min(1, settings.deblur() / FULL_DEBLUR);
        float glow = GLOW * most(even.seen);
        LocalRange nearby = LocalRange.of(plane, (int) Math.ceil(REACH_BLURS * blurPx));
        float[] seen = even.seen.data();
        float[] wanted = even.wanted.data();
        float[] least = nearby.least().data();
        float[] most = nearby.most().data();
        float[] in = plane.data();
        Plane result = new Plane(width, height);
        float[] out = result.data();
        Rows.each(height, (from, to) -> {
            for (int i = from * width; i < to * width; i++) {
                float factor = 1 + part * ((wanted[i] + glow) / (seen[i] + glow) - 1);
                out[i] = Math.max(least[i], Math.min(most[i], factor * in[i]));
            }
        });
        return result;
    }

    /** What sharpened markings are of those that are there. */
    private Plane factor(Lights lights) {
        float[] support = lights.support.data();
        Plane markings = Markings.of(lights.luminance, lights.light, lights.support, localReachPx(blurPx));
        float[] v = markings.data();
        Starlet.Scales there = new Starlet.Scales(markings);
        Plane detail = there.next();
        double finest = Grain.inDetail(detail, lights.support);
        Starlet.Scales gained = new Starlet.Scales(
                difference(restored(markings, lights.middle, finest / Starlet.whiteNoise(0)), markings));
        Plane factor = Plane.filled(width, height, 1);
        for (int j = 0; j < SCALES; j++) {
            float extra = (float) settings.extraGain(Starlet.sizePx(j), blurPx);
            double noise = j == 0 ? finest : Grain.ofScale(j, detail, lights.support, finest);
            float[] more = gained.next().data();
            float[] trust = Grain.trust(detail, noise, lights.light, settings.threshold())
                    .data();
            float[] strength = detail.data();
            float less = (float) settings.noiseReduction();
            Rows.each(height, (from, to) -> {
                for (int i = from * width; i < to * width; i++) {
                    float strong = strength[i] / (STRONG * v[i]);
                    float added = more[i] + extra / (1 + strong * strong) * strength[i];
                    factor.data()[i] += support[i] * trust[i] * added / v[i];
                    if (less > 0) {
                        factor.data()[i] -= support[i] * (1 - trust[i]) * less * strength[i] / v[i];
                    }
                }
            });
            detail = j + 1 < SCALES ? there.next() : detail;
        }
        for (int i = 0; i < v.length; i++) {
            factor.data()[i] = Math.max(0, factor.data()[i]);
        }
        return factor;
    }

    private Plane restored(Plane markings, Even even, double grain) {
        double between = Math.sqrt(blurPx * blurPx - targetPx * targetPx);
        if (between < 0.3) {
            return markings;
        }
        Plane blurred = product(withoutSmear(even), markings);
        Plane light = even.wanted;
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

    /** The even globe as it is seen, but for dispersion within the band. */
    private Plane withoutSmear(Even even) {
        return middle.shading().smear().equals(Smear.NONE)
                ? even.seen
                : middle.blurredBy(blurPx).picture(view, width, height);
    }

    private static Plane product(Plane a, Plane b) {
        Plane product = a.copy();
        for (int i = 0; i < product.data().length; i++) {
            product.data()[i] *= b.data()[i];
        }
        return product;
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
