package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.world.Surface;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The fit where its first assumptions do not hold: a halo by Moffat's profile (1969, A&A 3, 455), a sloping sky, sharpening. */
class RealOpticsTest {
    private static final Noise QUIET = new Noise(200, 0.2, 3);
    private static final double RADIUS_PX = 60;

    private static Portrait portrait() {
        return Portrait.full(Body.JUPITER, 2.5, RADIUS_PX, 12).sunAt(-5, 2);
    }

    /** Measured: centre 0.02 to 0.05 px, radius 0.03 to 0.1 px; with a Gaussian blur and an even sky 0.3 to 1.2 px and 1 px. */
    @ParameterizedTest
    @CsvSource({"0, 0.03", "0.08, 0", "0.08, 0.03"})
    void aHaloAndASlopingSkyMoveNoLimb(double halo, double slope) {
        Portrait p = portrait();
        Rendered frame = p.taken(Surface.grey(Belts.map()), QUIET);
        FittedDisk f = fit(p, sloping(withHalo(frame.pixels(), halo, 8), slope));
        double off = Math.hypot(
                f.disk().x() - frame.disk().x(), f.disk().y() - frame.disk().y());
        assertTrue(off < 0.1, "centre off by " + off);
        assertEquals(frame.disk().equatorialRadiusPx(), f.disk().equatorialRadiusPx(), 0.004 * RADIUS_PX);
    }

    /**
     * A sky and a halo cut off at a part of the peak. Measured: 0.01, 0.27 and 0.19 px, stated 0.11 to 0.2; with the cut-off pixels as
     * data 0.02, 0.23 and 0.35 px, stated 0.007.
     */
    @ParameterizedTest
    @CsvSource({"0.02", "0.05", "0.1"})
    void aSkyCutOffMovesNoLimb(double cutoff) {
        Portrait p = portrait();
        Rendered frame = p.taken(Surface.grey(Belts.map()), QUIET);
        Plane dark = withHalo(frame.pixels(), 0.08, 8);
        float least = (float) (cutoff * peak(dark));
        for (int i = 0; i < dark.data().length; i++) {
            dark.data()[i] = Math.max(0, dark.data()[i] - least);
        }
        FittedDisk f = fit(p, dark);
        double off = Math.hypot(
                f.disk().x() - frame.disk().x(), f.disk().y() - frame.disk().y());
        assertTrue(off < 0.3, "centre off by " + off);
        assertTrue(off < 3 * f.centreSigmaPx(), off + " px off, stated " + f.centreSigmaPx());
        assertEquals(frame.disk().equatorialRadiusPx(), f.disk().equatorialRadiusPx(), 0.004 * RADIUS_PX);
    }

    /** A halo spreads the sky's light as well, and takes from the slope that the core alone would show. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.2})
    void tellsTheSkysSlope(double halo) {
        Portrait p = portrait();
        Plane level = withHalo(p.even(QUIET).pixels(), halo, 8);
        FittedDisk f = fit(p, sloping(level, 0.05));
        double perPx = 0.05 * peak(level) / level.width();
        assertEquals(perPx, f.skySlope().right(), 0.05 * perPx);
        assertEquals(0, f.skySlope().down(), 0.05 * perPx);
    }

    private static FittedDisk fit(Portrait p, Plane pixels) {
        return new DiskFit(
                        p.globe(),
                        true,
                        p.mirrored(),
                        Smear.NONE,
                        OptionalDouble.of(p.northDeg()),
                        OptionalDouble.empty())
                .fit(pixels, Progress.NONE);
    }

    private static double peak(Plane plane) {
        double peak = 0;
        for (float v : plane.data()) {
            peak = Math.max(peak, v);
        }
        return peak;
    }

    /** A part of the frame's peak from its left to its right edge. */
    private static Plane sloping(Plane plane, double part) {
        Plane result = plane.copy();
        double peak = peak(plane);
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                result.set(x, y, (float) (plane.at(x, y) + part * peak * (x / (double) plane.width() - 0.5)));
            }
        }
        return result;
    }

    /** Part of the light spread by Moffat's profile with an exponent of 3, by direct summation. */
    private static Plane withHalo(Plane plane, double part, double fwhmPx) {
        int reach = (int) (4 * fwhmPx);
        double alpha = 0.5 * fwhmPx / Math.sqrt(Math.pow(2, 1 / 3.0) - 1);
        double[][] kernel = new double[2 * reach + 1][2 * reach + 1];
        double sum = 0;
        for (int j = -reach; j <= reach; j++) {
            for (int i = -reach; i <= reach; i++) {
                double v = Math.pow(1 + (i * i + j * j) / (alpha * alpha), -3);
                kernel[j + reach][i + reach] = v;
                sum += v;
            }
        }
        Plane result = plane.copy();
        for (int y = 0; part > 0 && y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double spread = 0;
                for (int j = -reach; j <= reach; j++) {
                    int row = Math.max(0, Math.min(plane.height() - 1, y + j));
                    for (int i = -reach; i <= reach; i++) {
                        int column = Math.max(0, Math.min(plane.width() - 1, x + i));
                        spread += kernel[j + reach][i + reach] * plane.at(column, row);
                    }
                }
                result.set(x, y, (float) ((1 - part) * plane.at(x, y) + part * spread / sum));
            }
        }
        return result;
    }
}
