package org.epochrome.disk;

import java.util.Arrays;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Wings;
import org.epochrome.job.Rows;

/**
 * How bright an even globe looks: Minnaert's law {@code I = mu0^k mu^(k-1)} (Minnaert 1941, ApJ 93, 403), with mu0 and
 * mu the cosines of incidence and emission, times {@code exp(b (1 - sqrt(mu)))} for limbs that are brighter or darker than
 * any exponent makes them, blurred by a spread function with a Gaussian core.
 *
 * @param minnaert the exponent k; 0.5 is a flat disk at full phase, 1 a Lambert sphere
 * @param brightening the coefficient b; positive where haze brightens the limb
 * @param blurPx standard deviation of the core of the blur, pixels
 * @param smear dispersion within the band, on top of that
 * @param wings what the spread function has besides its core
 */
public record Shading(double minnaert, double brightening, double blurPx, Smear smear, Wings wings) {
    /** Minnaert's law and a Gaussian blur. */
    public Shading(double minnaert, double blurPx, Smear smear) {
        this(minnaert, 0, blurPx, smear, Wings.NONE);
    }

    /** Below this emission cosine the law is frozen: it diverges there for k below 1. */
    public static final double LEAST_EMISSION = 0.02;
    /** Below this incidence cosine it is night. */
    public static final double LEAST_INCIDENCE = 1e-6;

    /** Samples along a pixel's side where the shading bends, and where the limb cuts it. */
    private static final int FINE = 3;

    private static final int FINEST = 6;
    /** Of a pixel; one whose middle lies farther off the limb shows nothing of the disk. */
    private static final double HALF_DIAGONAL = Math.sqrt(0.5);
    /** Where a law's array holds the cosine of incidence. */
    private static final int INCIDENCE = 3;
    /** Standard deviations of a blur beyond which hardly any light gets: 3e-5 of what is next to a straight edge. */
    private static final double BLURS = 4;
    /** Wings narrower than so many cores blur detail as the core does. */
    private static final double CLOSE = 3;

    /** The blurred picture of an even globe, 1 where Sun and observer stand overhead; pixels integrate over their area. */
    public Plane picture(View view, int width, int height) {
        Region lit = region(view, 1, width, height);
        return lit.amongZeros(blurred(sharp(view.on(lit), lit.width(), lit.height(), null)), width, height);
    }

    /** The blurred picture of an even globe, and a second one of the globe seen and lit through its rings. */
    public Plane[] pictureAndVeiled(View view, int width, int height) {
        Region lit = region(view, 1, width, height);
        Plane veiled = new Plane(lit.width(), lit.height());
        Plane free = sharp(view.on(lit), lit.width(), lit.height(), veiled.data());
        return new Plane[] {lit.amongZeros(blurred(free), width, height), lit.amongZeros(blurred(veiled), width, height)
        };
    }

    /**
     * The part of an image that gets light.
     *
     * @param extent how far from the globe's centre there is light before it is blurred, equatorial radii
     */
    public Region region(View view, double extent, int width, int height) {
        Disk disk = view.disk();
        double widest = Arrays.stream(wings.widthsPx()).reduce(blurPx, Math::max);
        double reach = extent * disk.equatorialRadiusPx() + smear.farthestPx() + BLURS * widest + 2;
        return Region.around(disk.x(), disk.y(), reach, width, height);
    }

    private Plane blurred(Plane sharp) {
        return wings.of(smear.of(sharp), blurPx);
    }

    /** This shading with another smear by dispersion. */
    public Shading smearedBy(Smear other) {
        return new Shading(minnaert, brightening, blurPx, other, wings);
    }

    /** Standard deviation of the core of the blur together with the wings next to it, pixels. */
    double closeBlurPx() {
        double variance = blurPx * blurPx;
        double[] widths = wings.widthsPx();
        double[] parts = wings.parts();
        for (int i = 0; i < widths.length; i++) {
            if (widths[i] < CLOSE * blurPx) {
                variance += Math.max(0, parts[i]) * widths[i] * widths[i] / (1 - wings.spread());
            }
        }
        return Math.sqrt(variance);
    }

    /** This shading with another Minnaert exponent. */
    public Shading withMinnaert(double exponent) {
        return new Shading(exponent, brightening, blurPx, smear, wings);
    }

    /** The shading without dispersion and with another core of the blur. */
    public Shading blurredBy(double otherPx) {
        return new Shading(minnaert, brightening, otherPx, Smear.NONE, wings);
    }

    /** This shading, blurred by the core of its spread function alone, without wings. */
    public Shading withoutWings() {
        return new Shading(minnaert, brightening, blurPx, smear, Wings.NONE);
    }

    /** This shading on the pixels of another image that shows the same disk. */
    public Shading carried(Disk from, Disk to) {
        double scale = to.equatorialRadiusPx() / from.equatorialRadiusPx();
        boolean flips = from.mirrored() != to.mirrored();
        double turned = to.northAngleDeg() - (flips ? -from.northAngleDeg() : from.northAngleDeg());
        return new Shading(minnaert, brightening, blurPx * scale, smear.on(turned, scale, flips), wings.scaled(scale));
    }

    /** @param veiled filled with the picture behind rings, if it is not null */
    private Plane sharp(View view, int width, int height, float[] veiled) {
        Plane plane = new Plane(width, height);
        float[] out = plane.data();
        double radius = view.disk().equatorialRadiusPx();
        double beyond = HALF_DIAGONAL / view.limbRatio();
        Rows.each(height, (from, to) -> {
            double[] law = new double[4];
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    double pole = view.pole(x, y);
                    double side = view.side(x, y);
                    double beyondPx = (view.ellipticRadius(pole, side) - 1) * radius;
                    if (beyondPx > beyond) {
                        continue;
                    }
                    boolean lit = law(view, pole, side, minnaert, brightening, law);
                    int fine = samples(beyondPx, law[INCIDENCE], radius);
                    if (veiled != null) {
                        meanAndVeiled(view, x, y, Math.max(FINE, fine), law, out, veiled, y * width + x);
                    } else if (fine > 1) {
                        out[y * width + x] = (float) mean(view, x, y, fine, law);
                    } else {
                        out[y * width + x] = lit ? (float) law[0] : 0;
                    }
                }
            }
        });
        return plane;
    }

    /** How many places along a pixel's side the law is taken at: more where it bends within the pixel. */
    private static int samples(double beyondPx, double incidence, double radius) {
        if (beyondPx > -1) {
            return FINEST;
        }
        return beyondPx > -3 || Math.abs(incidence) < 4 / radius ? FINE : 1;
    }

    /** Mean of the law over a pixel, from {@code fine * fine} places in it. */
    private double mean(View view, int x, int y, int fine, double[] law) {
        double sum = 0;
        for (int j = 0; j < fine; j++) {
            double fy = y + (j + 0.5) / fine - 0.5;
            for (int i = 0; i < fine; i++) {
                double fx = x + (i + 0.5) / fine - 0.5;
                sum += law(view, view.pole(fx, fy), view.side(fx, fy), minnaert, brightening, law) ? law[0] : 0;
            }
        }
        return sum / (fine * fine);
    }

    private void meanAndVeiled(View view, int x, int y, int fine, double[] law, float[] free, float[] veiled, int p) {
        double sum = 0;
        double through = 0;
        for (int j = 0; j < fine; j++) {
            double fy = y + (j + 0.5) / fine - 0.5;
            for (int i = 0; i < fine; i++) {
                double fx = x + (i + 0.5) / fine - 0.5;
                double pole = view.pole(fx, fy);
                double side = view.side(fx, fy);
                if (law(view, pole, side, minnaert, brightening, law)) {
                    double slant = Rings.slantDepth(view, pole, side, view.depth(pole, side));
                    sum += law[0];
                    through += slant == 0 ? law[0] : law[0] * Math.exp(-slant);
                }
            }
        }
        free[p] = (float) (sum / (fine * fine));
        veiled[p] = (float) (through / (fine * fine));
    }

    /**
     * The law at a place and its derivatives by the exponent and by the brightening.
     *
     * @param law filled with the three, and with the cosine of incidence, NaN off the disk
     * @return false, and none of the three filled in, off the disk and on the night side
     */
    public static boolean law(View view, double pole, double side, double k, double brightening, double[] law) {
        double depth = view.depth(pole, side);
        if (Double.isNaN(depth)) {
            law[INCIDENCE] = Double.NaN;
            return false;
        }
        double bodyX = view.bodyX(pole, depth);
        double bodyZ = view.bodyZ(pole, depth);
        double inverse = 1 / view.normalLength(bodyX, side, bodyZ);
        double incidence = view.towardsSun(bodyX, side, bodyZ) * inverse;
        law[INCIDENCE] = incidence;
        if (incidence <= LEAST_INCIDENCE) {
            return false;
        }
        double emission = Math.max(LEAST_EMISSION, view.towardsObserver(bodyX, bodyZ) * inverse);
        double logarithm = Math.log(incidence * emission);
        double rim = 1 - Math.sqrt(emission);
        law[0] = Math.exp(k * logarithm + brightening * rim) / emission;
        law[1] = law[0] * logarithm;
        law[2] = law[0] * rim;
        return true;
    }
}
