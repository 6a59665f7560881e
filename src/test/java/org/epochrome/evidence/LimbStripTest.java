package org.epochrome.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;

/** Against disks whose edges are known in closed form: plain geometry of circle and ellipse, no source. */
class LimbStripTest {
    private static final int SIZE = 160;
    private static final double RADIUS = 55;
    private static final double BLUR_PX = 1.1;
    private static final LimbStrip STRIP = new LimbStrip(90, 240, 6);
    /** How closely cubic splines follow an edge of this blur. Measured: 0.0023 px. */
    private static final double NEAR_PX = 0.006;

    /** A shift of the disk shows as the part of it along the limb's normal, whichever way the camera looked. */
    @Test
    void aShiftIsSeenAllAround() {
        Globe round = new Globe(1, 0, 1, 0, 0);
        for (boolean mirrored : new boolean[] {false, true}) {
            Disk disk = new Disk(80.3, 78.6, RADIUS, 25, mirrored);
            Plane moved = edge(80.3 + 0.4, 78.6 - 0.2, 1);
            Plane strip = STRIP.sampled(moved, new View(round, disk));
            for (int x = 0; x < STRIP.columns(); x++) {
                double east = STRIP.at(x, 0).angleDeg();
                double turned = Math.toRadians(25 + (mirrored ? -east : east));
                double expected = 0.4 * -Math.sin(turned) - 0.2 * -Math.cos(turned);
                assertEquals(expected, halfWay(strip, x), NEAR_PX, mirrored + " at " + east);
            }
        }
    }

    /** The limb of a flat globe lies on one row, and rows count along its normal. */
    @Test
    void theLimbOfAFlatGlobeIsStraight() {
        Globe flat = new Globe(0.9, 0, 1, 0, 0);
        View view = new View(flat, new Disk(80, 80, RADIUS, 0, false));
        Plane strip = STRIP.sampled(edge(80, 80, 0.9), view);
        for (int x = 0; x < STRIP.columns(); x++) {
            assertEquals(0, halfWay(strip, x), NEAR_PX, "at " + STRIP.at(x, 0).angleDeg());
        }
        Plane column = new Plane(SIZE, SIZE);
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                column.set(x, y, y);
            }
        }
        Plane rows = STRIP.sampled(column, view);
        double limb = 80 - 0.9 * RADIUS * Math.cos(Math.toRadians(2));
        assertEquals(limb - STRIP.at(0, 20).outsidePx(), rows.at(0, 20), 0.01, "pixels above the northern limb");
    }

    /** Equal bands make a grey strip; a band that lies beside the others colours opposite edges differently. */
    @Test
    void onlyBandsApartMakeColours() {
        View view = new View(new Globe(1, 0, 1, 0, 0), new Disk(80, 80, RADIUS, 0, false));
        Plane one = edge(80, 80, 1);
        Plane bright = edge(80, 80, 1);
        for (int i = 0; i < bright.data().length; i++) {
            bright.data()[i] *= 3;
        }
        assertEquals(0, apart(STRIP.picture(new ColourCube(one, bright, one), view), 0, 2), 1e-5);
        List<Plane> fringed = STRIP.picture(new ColourCube(one, bright, edge(80, 80.5, 1)), view);
        int north = 0;
        int south = STRIP.columns() / 2;
        assertTrue(apart(fringed, north, 2) < -0.05, "blue lies south, so that the north lacks it");
        assertTrue(apart(fringed, south, 2) > 0.05, "and the south has more");
    }

    /** How much more of a band there is than of red, on the limb. */
    private static double apart(List<Plane> planes, int column, int band) {
        int row = (int) Math.round(STRIP.row(0));
        return planes.get(band).at(column, row) - planes.get(0).at(column, row);
    }

    /** How far outside the limb a column falls to half, pixels. */
    private static double halfWay(Plane strip, int column) {
        for (int y = 1; y < strip.height(); y++) {
            double above = strip.at(column, y - 1);
            double here = strip.at(column, y);
            if (above < 0.5 && here >= 0.5) {
                double row = y - 1 + (0.5 - above) / (here - above);
                return STRIP.at(column, row).outsidePx();
            }
        }
        return Double.NaN;
    }

    /** A disk of brightness 1 that falls off over its edge, where it is one half. */
    private static Plane edge(double centreX, double centreY, double ratio) {
        Plane plane = new Plane(SIZE, SIZE);
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                double beyond = RADIUS * (Math.hypot(x - centreX, (y - centreY) / ratio) / RADIUS - 1);
                plane.set(x, y, (float) (1 / (1 + Math.exp(beyond / BLUR_PX))));
            }
        }
        return plane;
    }
}
