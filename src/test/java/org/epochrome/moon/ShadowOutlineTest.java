package org.epochrome.moon;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.image.blur.Ellipse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The outline of a shadow against rays of sunlight along the edge of a round one, brought to the globe one by one. */
class ShadowOutlineTest {
    private static final double RADIUS = 0.02;
    private static final double PHASE = Math.toRadians(11);
    private static final double TILT = Math.toRadians(-3);
    private static final double RATIO = 0.935;
    private static final View VIEW =
            new View(new Globe(RATIO, TILT, Math.cos(PHASE), Math.sin(PHASE), 0), new Disk(300, 200, 150, 35, false));

    @ParameterizedTest
    @CsvSource({"0, 0", "-0.43, 0.43", "0.6, -0.3", "0.75, 0.1", "-0.75, 0.1"})
    void raysAlongItsEdgeFallOnIt(double side, double pole) {
        Ellipse outline = ShadowOutline.at(VIEW, new SkyPoint(side, pole));
        double depth = VIEW.depth(pole, side);
        double[] middle = {VIEW.bodyX(pole, depth), side, VIEW.bodyZ(pole, depth)};
        double[] sun = {Math.cos(PHASE), Math.sin(PHASE), 0};
        for (int k = 0; k < 12; k++) {
            double angle = Math.PI * k / 6;
            // across the light: one axis in the equator, the other along the pole
            double[] from = {
                middle[0] - RADIUS * Math.cos(angle) * Math.sin(PHASE),
                middle[1] + RADIUS * Math.cos(angle) * Math.cos(PHASE),
                middle[2] + RADIUS * Math.sin(angle)
            };
            double[] hit = hit(from, sun);
            double x = VIEW.column(VIEW.poleOf(hit[0], hit[2]), hit[1]);
            double y = VIEW.row(VIEW.poleOf(hit[0], hit[2]), hit[1]);
            double distance = outline.distance(x - VIEW.column(pole, side), y - VIEW.row(pole, side));
            // the surface bends away from its plane by half of the shadow's radius, squared
            assertEquals(1, distance / (RADIUS * VIEW.disk().equatorialRadiusPx()), 0.02);
        }
    }

    /** Where a ray of sunlight through a point meets the globe, on the point's side. */
    private static double[] hit(double[] from, double[] sun) {
        double a = 0;
        double b = 0;
        double c = -1;
        double[] scale = {1, 1, 1 / RATIO};
        for (int i = 0; i < 3; i++) {
            double p = from[i] * scale[i];
            double d = sun[i] * scale[i];
            a += d * d;
            b += p * d;
            c += p * p;
        }
        double along = (-b + Math.sqrt(b * b - a * c)) / a;
        return new double[] {from[0] + along * sun[0], from[1] + along * sun[1], from[2] + along * sun[2]};
    }

    @Test
    void offTheDiskItIsRound() {
        assertEquals(Ellipse.CIRCLE, ShadowOutline.at(VIEW, new SkyPoint(1.1, 0)));
    }
}
