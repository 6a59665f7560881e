package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The shading of even globes against what is known in closed form. */
class ShadingTest {
    private static final int SIDE = 150;
    private static final double RADIUS = 61.3;
    private static final Disk DISK = new Disk(74.2, 75.6, RADIUS, 33, false);

    /** Minnaert's law with k = 1/2 is (mu0 / mu)^(1/2), so 1 all over a disk at full phase (Minnaert 1941). */
    @ParameterizedTest
    @CsvSource({"1, 0", "0.935, 3", "0.9, -26"})
    void flatAtFullPhase(double axisRatio, double tiltDeg) {
        double tilt = Math.toRadians(tiltDeg);
        View view = new View(new Globe(axisRatio, tilt, Math.cos(tilt), 0, Math.sin(tilt)), DISK);
        Plane picture = new Shading(0.5, 0, Smear.NONE).picture(view, SIDE, SIDE);
        int inside = 0;
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                double at = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                // Within 1e-4 of the radius of the limb the law is frozen; a pixel is 0.016 of the radius.
                if (at < 0.98) {
                    assertEquals(1, picture.at(x, y), 1e-6);
                    inside++;
                } else if (at > 1.02) {
                    assertEquals(0, picture.at(x, y));
                }
            }
        }
        assertEquals(0.96 * Math.PI * RADIUS * RADIUS * view.globe().apparentAxisRatio(), inside, 30);
        // A limb that is flat up to its edge holds the light of its area.
        assertEquals(
                Math.PI * RADIUS * RADIUS * view.globe().apparentAxisRatio(), sum(picture), 1e-3 * RADIUS * RADIUS);
    }

    /**
     * The light of a Lambert sphere at a phase angle a: 2/3 (sin a + (pi - a) cos a) in units of the squared radius
     * (Schönberg 1929; Russell 1916, ApJ 43, 173). In parts of the light at full phase, the bound is what nine samples on
     * a pixel of the terminator and 36 on the limb leave.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "20, 90", "45, 0", "70, 180", "90, 200", "120, 45", "150, 300"})
    void lambertSphere(double phaseDeg, double directionDeg) {
        double a = Math.toRadians(phaseDeg);
        double direction = Math.toRadians(directionDeg);
        Globe globe =
                new Globe(1, 0, Math.cos(a), Math.sin(a) * Math.cos(direction), Math.sin(a) * Math.sin(direction));
        Plane picture = new Shading(1, 0, Smear.NONE).picture(new View(globe, DISK), SIDE, SIDE);
        double expected = 2 / 3.0 * (Math.sin(a) + (Math.PI - a) * Math.cos(a));
        double full = 2 / 3.0 * Math.PI;
        assertEquals(expected / full, sum(picture) / (RADIUS * RADIUS) / full, 2e-4);
    }

    /**
     * Helmholtz's reciprocity: brightness times the cosine of emission stays the same when Sun and observer change places
     * (Minnaert 1941, the principle from which the law was made).
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.75, 1, 1.2})
    void reciprocity(double k) {
        double phase = 0.9;
        Globe globe = new Globe(1, 0, Math.cos(phase), Math.sin(phase), 0);
        View view = new View(globe, DISK);
        double[] here = new double[4];
        double[] there = new double[4];
        for (double pole = -0.6; pole < 0.7; pole += 0.1) {
            for (double east = 0.05; east < 0.85; east += 0.1) {
                double reach = Math.sqrt(1 - pole * pole);
                // The mirror image of a longitude at the bisector of Sun and observer exchanges the two.
                double mirrored = phase - east;
                Shading.law(view, pole, reach * Math.sin(east), k, 0, here);
                Shading.law(view, pole, reach * Math.sin(mirrored), k, 0, there);
                double emission = reach * Math.cos(east);
                double otherEmission = reach * Math.cos(mirrored);
                assertEquals(here[0] * emission, there[0] * otherEmission, 1e-12);
            }
        }
    }

    /** A kernel of sum 1 moves light and loses none as long as the picture ends in the dark. */
    @ParameterizedTest
    @ValueSource(doubles = {0.4, 1, 2.5})
    void blurKeepsTheLight(double blurPx) {
        Globe globe = new Globe(0.935, 0.05, Math.cos(0.3), Math.sin(0.3), 0);
        View view = new View(globe, DISK);
        double sharp = sum(new Shading(0.9, 0, Smear.NONE).picture(view, SIDE, SIDE));
        // 2.5 px reach 10 px, which is 3 px less than from the limb to the rim.
        assertEquals(1, sum(new Shading(0.9, blurPx, Smear.NONE).picture(view, SIDE, SIDE)) / sharp, 1e-6);
    }

    @Test
    void smearKeepsTheLight() {
        View view = new View(new Globe(0.935, 0.05, Math.cos(0.05), 0, Math.sin(0.05)), DISK);
        double sharp = sum(new Shading(0.9, 0, Smear.NONE).picture(view, SIDE, SIDE));
        Smear smear = Smear.along(40, -2.1, -0.7, 0.4, 2.4);
        assertEquals(1, sum(new Shading(0.9, 1, smear).picture(view, SIDE, SIDE)) / sharp, 1e-6);
    }

    /** The derivative by the exponent, against a difference quotient. */
    @Test
    void derivativeByTheExponent() {
        View view = new View(new Globe(0.935, 0.05, Math.cos(0.3), Math.sin(0.3), 0), DISK);
        double[] less = new double[4];
        double[] more = new double[4];
        double[] law = new double[4];
        for (double side = -0.6; side < 1; side += 0.1) {
            Shading.law(view, 0.1, side, 0.8 - 1e-4, 0, less);
            Shading.law(view, 0.1, side, 0.8 + 1e-4, 0, more);
            Shading.law(view, 0.1, side, 0.8, 0, law);
            assertEquals((more[0] - less[0]) / 2e-4, law[1], 1e-6);
        }
    }

    private static double sum(Plane plane) {
        double sum = 0;
        for (float v : plane.data()) {
            sum += v;
        }
        return sum;
    }
}
