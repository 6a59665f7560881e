package org.epochrome.turn;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.SaturnSketch;
import org.epochrome.disk.View;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Saturn's globe turns under its rings, which stay; against sketches with other ring depths than the engine supposes. */
class RingedTurnerTest {
    private static final int WIDTH = 230;
    private static final int HEIGHT = 210;
    private static final double TURN_DEG = 12;

    /**
     * The markings are 1.5 % of the globe's light strong and move by half their length. Where the frame may be turned it is
     * turned, elsewhere nothing but markings that were not turned is left of the difference.
     */
    @ParameterizedTest
    @CsvSource({"22, 20, 5", "-8, -10, -5", "-2, -1.2, 3"})
    void theGlobeTurnsUnderTheRings(double opening, double sunLatitude, double sunEast) {
        SaturnSketch now = new SaturnSketch(opening, sunLatitude, sunEast, 113.3, 106.8, 42, 20, false, 0);
        Plane expected = now.picture(WIDTH, HEIGHT);
        SaturnSketch then = now.turned(TURN_DEG);
        FittedDisk fitted = new DiskFit(
                        now.globe(), true, false, Smear.NONE, OptionalDouble.empty(), OptionalDouble.empty())
                .fit(then.frame(WIDTH, HEIGHT, 7), Progress.NONE);
        Plane frame = then.picture(WIDTH, HEIGHT);
        for (int i = 0; i < frame.data().length; i++) {
            frame.data()[i] += (float) fitted.background();
        }
        View view = new View(now.globe(), fitted.disk());
        Turned turned = new Turner(frame, fitted, now.globe())
                .turn(view, WIDTH, HEIGHT, Rotation.rigid(Math.toRadians(TURN_DEG)), Progress.NONE);
        double[] rms = new double[2];
        int[] count = new int[2];
        double worst = 0;
        double unturned = 0;
        for (int i = 0; i < frame.data().length; i++) {
            double off = turned.picture().data()[i] * fitted.brightness() - expected.data()[i];
            int kind = turned.trust().data()[i] > 0.99f ? 1 : 0;
            rms[kind] += off * off;
            count[kind]++;
            worst = Math.max(worst, Math.abs(off));
            unturned += kind == 1 ? square(frame.data()[i] - fitted.background() - expected.data()[i]) : 0;
        }
        double carried = Math.sqrt(rms[1] / count[1]);
        double plain = Math.sqrt(unturned / count[1]);
        assertTrue(count[1] > 0.25 * Math.PI * 42 * 42, "turned " + count[1]);
        assertTrue(carried < 0.25 * plain, "left " + carried + " of " + plain);
        // A seam or a ring that was carried along would be several times worse than markings left where they were.
        assertTrue(worst < 0.035, "worst " + worst);
    }

    private static double square(double v) {
        return v * v;
    }
}
