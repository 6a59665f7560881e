package org.epochrome.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.epochrome.colour.finish.Finish;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.truth.TruthTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Colours of planets, recomputed here from the published albedos and the table of CIE 1931 by another path. */
class SunlitTest {
    private static final List<TruthTable.Row> EYE = TruthTable.rows("colour/cie1931.csv");

    /** Effective wavelengths of Bessell 2005, Johnson 1966 (R) and Fukugita et al. 1996, nm. */
    private static final Map<String, Double> BANDS =
            Map.of("U", 366.0, "B", 436.0, "g", 477.0, "V", 545.0, "r", 623.0, "Rc", 641.0, "R", 700.0, "Ic", 798.0);

    @Test
    void greyIsWhite() {
        double[] white = Sunlit.of(nm -> 0.5);
        for (double part : white) {
            assertEquals(white[1], part, 2e-7 * white[1]);
        }
    }

    @Test
    void knowsThePublishedAlbedos() {
        List<TruthTable.Row> rows = TruthTable.rows("colour/albedos.csv");
        for (TruthTable.Row row : rows) {
            Body body = Body.valueOf(row.text("body"));
            BANDS.forEach(
                    (band, nm) -> assertEquals(row.number(band), body.albedo().at(nm), 1e-12, body + band));
        }
        assertEquals(Body.values().length, rows.size());
    }

    /** The whole disk of the finished picture: within 3 % of the colour worked out from the tables. */
    @ParameterizedTest
    @EnumSource(Body.class)
    void picturesHaveThePlanetsColour(Body body) {
        double[] expected = byTheTables(body);
        Plane disk = Plane.filled(32, 32, 1);
        ColourCube cube = new ColourCube(ramp(0.2), ramp(0.3), ramp(0.1));
        ColourCube balanced = Finish.balanced(cube, disk, body, WhiteBalance.of(White.PHOTOMETRIC));
        List<Plane> shown = Finish.shown(balanced, disk, Tone.DEFAULT);
        double[] sum = new double[3];
        for (int c = 0; c < 3; c++) {
            for (float v : shown.get(c).data()) {
                sum[c] += Srgb.decode(v);
            }
        }
        assertEquals(expected[0] / expected[1], sum[0] / sum[1], 0.03 * expected[0] / expected[1]);
        assertEquals(expected[2] / expected[1], sum[2] / sum[1], 0.03 * expected[2] / expected[1]);
    }

    /** Mars is red, Uranus and Neptune are blue-green, Venus is nearly white: no slip of rows can pass this. */
    @ParameterizedTest
    @CsvSource({
        "MERCURY,1,1.5,0.6,0.95",
        "VENUS,1,1.2,0.85,1",
        "MARS,1.4,2.6,0.3,0.7",
        "JUPITER,1,1.2,0.7,0.95",
        "SATURN,1.05,1.6,0.5,0.85",
        "URANUS,0.4,0.8,1,1.4",
        "NEPTUNE,0.3,0.8,1,1.6"
    })
    void planetsHaveTheirKnownTints(Body body, double leastRed, double mostRed, double leastBlue, double mostBlue) {
        double[] colour = Sunlit.of(body);
        double red = colour[0] / colour[1];
        double blue = colour[2] / colour[1];
        assertTrue(red >= leastRed && red <= mostRed, "red over green: " + red);
        assertTrue(blue >= leastBlue && blue <= mostBlue, "blue over green: " + blue);
    }

    /** The table instead of the fit, the paper's albedos, Bradford's adaptation by a general-purpose inverse. */
    private static double[] byTheTables(Body body) {
        TruthTable.Row albedos = TruthTable.rows("colour/albedos.csv").stream()
                .filter(row -> row.text("body").equals(body.name()))
                .findFirst()
                .orElseThrow();
        List<String> bands = BANDS.keySet().stream()
                .sorted((a, b) -> Double.compare(BANDS.get(a), BANDS.get(b)))
                .toList();
        double[] seen = xyz(nm -> {
            for (int i = 1; i < bands.size(); i++) {
                double left = BANDS.get(bands.get(i - 1));
                double right = BANDS.get(bands.get(i));
                if (nm <= right) {
                    double part = (nm - left) / (right - left);
                    return (1 - part) * albedos.number(bands.get(i - 1)) + part * albedos.number(bands.get(i));
                }
            }
            throw new IllegalArgumentException("no band beyond " + nm);
        });
        double[] sun = xyz(nm -> 1);
        RealMatrix cones = MatrixUtils.createRealMatrix(
                new double[][] {{0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}});
        double[] adapted = cones.operate(seen);
        double[] white = cones.operate(new double[] {0.9505, 1, 1.089});
        for (int i = 0; i < 3; i++) {
            adapted[i] *= white[i] / cones.operate(sun)[i];
        }
        adapted = new LUDecomposition(cones).getSolver().getInverse().operate(adapted);
        double x = adapted[0];
        double y = adapted[1];
        double z = adapted[2];
        // IEC 61966-2-1, the matrix with four decimals.
        return new double[] {
            3.2406 * x - 1.5372 * y - 0.4986 * z,
            -0.9689 * x + 1.8758 * y + 0.0415 * z,
            0.0557 * x - 0.2040 * y + 1.0570 * z,
        };
    }

    private static double[] xyz(DoubleUnaryOperator albedo) {
        assertEquals(81, EYE.size());
        double[] sum = new double[3];
        for (TruthTable.Row row : EYE) {
            double nm = row.number("nm");
            // A black body of 5772 K: hc/kT is 2492.7 nm.
            double light = albedo.applyAsDouble(nm) * Math.pow(500 / nm, 5) / (Math.exp(2492.7 / nm) - 1);
            sum[0] += light * row.number("x");
            sum[1] += light * row.number("y");
            sum[2] += light * row.number("z");
        }
        return sum;
    }

    private static Plane ramp(double level) {
        Plane plane = new Plane(32, 32);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) (level * (0.9 + 0.1 * (i % 32) / 32));
        }
        return plane;
    }
}
