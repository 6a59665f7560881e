package org.epochrome.align;

import java.util.Arrays;
import java.util.List;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Spline;
import org.epochrome.job.Rows;

/** Markings of one size, of the frame to be predicted and of those that predict it; what they ask of the shifts. */
final class ScaleLevel {
    /** Pixels are binned until the markings are so many of them wide. */
    private static final double SAMPLED = 1.6;

    /**
     * Standard deviation of a softening before pixels are moved by parts of a pixel, binned pixels. Noise as fine as the
     * pixels is not moved evenly by any interpolation: it loses more the farther from whole pixels, and draws the answer
     * there.
     */
    private static final double SOFTENED = 0.5 * SAMPLED;

    /** Columns and rows at the edge that have no slopes. */
    private static final int EDGE = 2;

    private final int factor;
    private final Plane target;
    private final Plane targetWeight;
    private final Spline[] regressor;
    private final Spline[] regressorWeight;
    private final double spot;
    private final int unknowns;
    private final boolean similar;
    private final double half;
    private final double diagonal;
    private final double poleRight;
    private final double poleDown;

    /** @param unknowns how many: two for each regressor, or four for one with growth and turn */
    ScaleLevel(Detail target, List<Detail> regressors, int unknowns) {
        double coarsest = target.grainPx();
        double largest = target.spotPx();
        for (Detail r : regressors) {
            coarsest = Math.max(coarsest, r.grainPx());
            largest = Math.max(largest, r.spotPx());
        }
        factor = Math.max(1, (int) (coarsest / SAMPLED));
        spot = largest / factor;
        this.target = softened(target.binned(factor).markings());
        targetWeight = target.binned(factor).weight();
        regressor = new Spline[regressors.size()];
        regressorWeight = new Spline[regressors.size()];
        for (int k = 0; k < regressor.length; k++) {
            regressor[k] = new Spline(softened(regressors.get(k).binned(factor).markings()));
            regressorWeight[k] = new Spline(regressors.get(k).binned(factor).weight());
        }
        this.unknowns = unknowns;
        similar = regressor.length == 1 && unknowns == 4;
        half = 0.5 * this.target.width();
        diagonal = Math.hypot(this.target.width(), this.target.height());
        poleRight = -Math.sin(Math.toRadians(target.northDeg()));
        poleDown = -Math.cos(Math.toRadians(target.northDeg()));
    }

    private ScaleLevel(ScaleLevel from, Plane weight) {
        factor = from.factor;
        target = from.target;
        targetWeight = Binning.by(factor, weight);
        regressor = from.regressor;
        regressorWeight = new Spline[regressor.length];
        Arrays.fill(regressorWeight, new Spline(targetWeight));
        spot = from.spot;
        unknowns = from.unknowns;
        similar = from.similar;
        half = from.half;
        diagonal = from.diagonal;
        poleRight = from.poleRight;
        poleDown = from.poleDown;
    }

    /** The same markings with another weight, in all frames alike. */
    ScaleLevel weighted(Plane weight) {
        return new ScaleLevel(this, weight);
    }

    private static Plane softened(Plane markings) {
        return Gaussian.blur(markings, SOFTENED);
    }

    /**
     * Adds what these markings ask for.
     *
     * @param shiftPx the unknowns so far, full pixels
     * @param total takes it, for unknowns in full pixels
     */
    void addTo(double[] shiftPx, NormalEquations total) {
        int width = target.width();
        int height = target.height();
        double[] shift = shiftPx.clone();
        for (int i = 0; i < shift.length; i++) {
            shift[i] /= factor;
        }
        Plane weight = new Plane(width, height);
        Plane a = moved(0, shift[0], shift[1], similar ? shift[2] : 0, similar ? shift[3] : 0, weight);
        // What is predicted lies at its own shift; the second regressor is moved by the difference.
        Plane b = regressor.length == 1 ? null : moved(1, shift[0] - shift[2], shift[1] - shift[3], 0, 0, weight);
        LocalRelation local = new LocalRelation(a, b, target, weight, DetailWitness.NEIGHBOURHOOD * spot);
        int side = Math.max(2, (int) Math.round(DetailWitness.NEIGHBOURHOOD * spot));
        NormalEquations[] bands = new NormalEquations[(height + side - 1) / side];
        Rows.each(bands.length, (from, to) -> {
            for (int band = from; band < to; band++) {
                bands[band] = band(band * side, side, a, b, local, weight);
            }
        });
        NormalEquations own = new NormalEquations(unknowns, strips(side));
        for (NormalEquations band : bands) {
            own.add(band);
        }
        own.heedStrips();
        total.add(own.dividedBy(own.dispersion()).onPixels(factor));
    }

    /** Strips along the parallels, as wide as blocks. */
    private int strips(int side) {
        return 1 + (int) (2 * diagonal / side);
    }

    private int strip(int x, int y, int side) {
        double polewards = poleRight * (x - 0.5 * target.width()) + poleDown * (y - 0.5 * target.height());
        return (int) ((polewards + diagonal) / side);
    }

    /** What the blocks in some rows ask for. */
    private NormalEquations band(int top, int side, Plane a, Plane b, LocalRelation local, Plane weight) {
        NormalEquations sum = new NormalEquations(unknowns, strips(side));
        double[] slope = new double[unknowns];
        double[] second = new double[3];
        for (int left = 0; left < target.width(); left += side) {
            sum.beginBlock();
            for (int y = Math.max(EDGE, top); y < Math.min(target.height() - EDGE, top + side); y++) {
                for (int x = Math.max(EDGE, left); x < Math.min(target.width() - EDGE, left + side); x++) {
                    float w = weight.at(x, y);
                    if (w > 0) {
                        add(x, y, strip(x, y, side), w, a, b, local, slope, second, sum);
                    }
                }
            }
            sum.endBlock();
        }
        return sum;
    }

    private Plane moved(int k, double right, double down, double grown, double turned, Plane weight) {
        Plane result = new Plane(target.width(), target.height());
        boolean shifted = grown == 0 && turned == 0;
        Spline.Shifted markings = regressor[k].shifted(-right, -down);
        Spline.Shifted weights = regressorWeight[k].shifted(-right, -down);
        Rows.each(target.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < target.width(); x++) {
                    float w = k == 0 ? targetWeight.at(x, y) : weight.at(x, y);
                    if (w > 0 && shifted) {
                        result.set(x, y, markings.at(x, y));
                        w *= Math.max(0, weights.at(x, y));
                    } else if (w > 0) {
                        double u = across(x);
                        double v = across(y);
                        double dx = right + grown * u - turned * v;
                        double dy = down + grown * v + turned * u;
                        result.set(x, y, regressor[k].at(x - dx, y - dy));
                        w *= Math.max(0, regressorWeight[k].at(x - dx, y - dy));
                    }
                    weight.set(x, y, w);
                }
            }
        });
        return result;
    }

    /** A column or row, from the middle of the window, over half its width. */
    private double across(int xOrY) {
        return (xOrY - half + 0.5) / half;
    }

    private void add(
            int x,
            int y,
            int strip,
            float w,
            Plane a,
            Plane b,
            LocalRelation local,
            double[] slope,
            double[] second,
            NormalEquations sum) {
        int width = a.width();
        int i = y * width + x;
        int at = local.cell(x, y);
        double gain = local.gainA(at);
        double residual = target.data()[i] - gain * a.data()[i];
        slope[0] = -gain * slope(a.data(), i, 1);
        slope[1] = -gain * slope(a.data(), i, width);
        double u = w / Math.max(local.unexplained(at), 1e-9);
        if (b != null) {
            double other = local.gainB(at);
            residual -= other * b.data()[i];
            slope[2] = other * slope(b.data(), i, 1);
            slope[3] = other * slope(b.data(), i, width);
            slope[0] -= slope[2];
            slope[1] -= slope[3];
        }
        if (similar) {
            double across = across(x);
            double down = across(y);
            slope[2] = across * slope[0] + down * slope[1];
            slope[3] = across * slope[1] - down * slope[0];
        }
        sum.add(u, slope, residual, strip);
        if (!similar) {
            seconds(a.data(), i, width, u * residual * gain, second);
            sum.bend(0, second);
            if (b != null) {
                seconds(b.data(), i, width, u * residual * local.gainB(at), second);
                sum.bendOfSecond(second);
            }
        }
    }

    /** The slope along a step, by differences over four pixels (exact to the fourth order). */
    private static double slope(float[] v, int i, int step) {
        return (8 * (v[i + step] - v[i - step]) - (v[i + 2 * step] - v[i - 2 * step])) / 12;
    }

    /** Second derivatives xx, xy, yy times a factor, to the fourth order. */
    private static void seconds(float[] v, int i, int width, double factor, double[] second) {
        second[0] = factor * bend(v, i, 1);
        second[1] = factor
                * (4 * (v[i + 1 + width] - v[i - 1 + width] - v[i + 1 - width] + v[i - 1 - width])
                        - 0.25
                                * (v[i + 2 + 2 * width]
                                        - v[i - 2 + 2 * width]
                                        - v[i + 2 - 2 * width]
                                        + v[i - 2 - 2 * width]))
                / 12;
        second[2] = factor * bend(v, i, width);
    }

    private static double bend(float[] v, int i, int step) {
        return (16 * (v[i + step] + v[i - step]) - (v[i + 2 * step] + v[i - 2 * step]) - 30 * v[i]) / 12;
    }
}
