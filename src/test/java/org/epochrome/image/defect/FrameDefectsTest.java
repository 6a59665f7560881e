package org.epochrome.image.defect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is spoilt is found, and a planet is not. */
class FrameDefectsTest {
    private static final int SIZE = 160;
    private static final double CENTRE = 79.3;
    private static final double RADIUS = 55;
    private static final double SKY = 0.02;
    private static final double NOISE = 0.005;

    /** A sharp limb, belts across it in a slanted direction, and a narrow ring around it: all that is to be spared. */
    private static Plane planet(double blurPx, double noise) {
        Plane plane = new Plane(SIZE, SIZE);
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                double r = Math.hypot(x - CENTRE, y - CENTRE);
                double belts = 1 + 0.3 * Math.signum(Math.sin(0.4 * (y - CENTRE) + 0.15 * (x - CENTRE)));
                double ring = Math.abs(r - 70) < 1 ? 0.5 : 0;
                plane.set(x, y, (float) ((r < RADIUS ? belts * (1 - 0.5 * r / RADIUS) : 0) + ring));
            }
        }
        Plane blurred = Gaussian.blur(plane, blurPx);
        Random random = new Random(5);
        for (int p = 0; p < blurred.data().length; p++) {
            blurred.data()[p] += (float) (SKY + noise * random.nextGaussian());
        }
        return blurred;
    }

    /** Sharper than a blur of 0.75 px (1 sigma) no telescope and camera draw: 1.8 px at half maximum, undersampled. */
    @ParameterizedTest
    @ValueSource(doubles = {0.75, 1, 2})
    void sparesAPlanet(double blurPx) {
        Plane plane = planet(blurPx, NOISE);
        FrameDefects found = FrameDefects.of(plane);
        assertSame(plane, found.masked());
        assertEquals(List.of(), found.notes());
    }

    /** Rounding to the levels of eight bits strikes nothing, however little noise there is. */
    @ParameterizedTest
    @ValueSource(doubles = {0.0005, 0.002, 0.005})
    void sparesAPlanetInEightBits(double noise) {
        Plane plane = planet(1.5, noise);
        for (int p = 0; p < plane.data().length; p++) {
            double encoded = Math.pow(Math.max(0, 0.7 * plane.data()[p]), 1 / 2.2);
            plane.data()[p] = (float) (Math.rint(255 * encoded) / 255);
        }
        assertEquals(0, FrameDefects.of(plane).spots());
    }

    /** A frame turned by two degrees about its middle within its stack leaves four wedges; by geometry each covers 80 x 80 tan(2 deg) / 2 pixels. */
    @Test
    void findsTheWedgesOfATurnedFrame() {
        Plane plane = planet(1.5, NOISE);
        double slope = Math.tan(Math.toRadians(2));
        int wedges = 0;
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                boolean above = y < slope * (80 - x) || SIZE - 1 - y < slope * (x - 80);
                boolean beside = SIZE - 1 - x < slope * (80 - y) || x < slope * (y - 80);
                if (above || beside) {
                    plane.set(x, y, 0);
                    wedges++;
                }
            }
        }
        assertEquals(4 * 0.5 * 80 * 80 * slope, wedges, 200);
        FrameDefects found = FrameDefects.of(plane);
        // Two soft pixels more along four times 80.
        assertEquals(wedges + 4 * 80 * 2, found.border(), 12);
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                assertTrue(plane.at(x, y) != 0 || Float.isNaN(found.masked().at(x, y)), x + ", " + y);
            }
        }
    }

    /** A sky that is cut to black, with a halo that ends in it, is no border. */
    @Test
    void aBlackSkyIsNoWedge() {
        Plane plane = Gaussian.blur(planet(1.5, 0), 12);
        for (int p = 0; p < plane.data().length; p++) {
            plane.data()[p] = Math.max(0, plane.data()[p] - 0.05f);
        }
        assertEquals(0, FrameDefects.of(plane).border());
    }

    @Test
    void sparesAStar() {
        Plane plane = new Plane(SIZE, SIZE);
        plane.set(20, 30, 20);
        plane = Gaussian.blur(plane, 0.75);
        assertEquals(0, FrameDefects.of(plane).spots());
    }

    @Test
    void findsHotAndDeadPixelsOnDiskLimbAndSky() {
        Plane plane = planet(1, NOISE);
        int[][] struck = {{80, 82}, {60, 100}, {79, 25}, {134, 79}, {10, 12}, {1, 77}, {95, 60}};
        for (int[] at : struck) {
            plane.set(at[0], at[1], plane.at(at[0], at[1]) + 0.6f);
        }
        plane.set(100, 90, 0);
        FrameDefects found = FrameDefects.of(plane);
        for (int[] at : struck) {
            assertTrue(Float.isNaN(found.masked().at(at[0], at[1])), at[0] + ", " + at[1]);
        }
        assertTrue(Float.isNaN(found.masked().at(100, 90)), "dead");
        assertEquals(struck.length + 1, found.spots());
        assertEquals(List.of("Ignored as defective: 8 hot, dead or cosmic-ray pixels."), Message.texts(found.notes()));
    }

    @Test
    void findsATrackFromItsEnds() {
        Plane plane = planet(1, NOISE);
        for (int i = 0; i < 9; i++) {
            plane.set(20 + i, 140 + i / 2, 0.7f);
        }
        FrameDefects found = FrameDefects.of(plane);
        int inTrack = 0;
        for (int i = 0; i < 9; i++) {
            inTrack += Float.isNaN(found.masked().at(20 + i, 140 + i / 2)) ? 1 : 0;
        }
        assertTrue(inTrack >= 8, inTrack + " of 9");
        assertTrue(found.spots() <= inTrack + 1, found.spots() + " pixels");
    }

    @Test
    void findsADeadColumnAndRow() {
        Plane plane = planet(1, NOISE);
        for (int i = 0; i < SIZE; i++) {
            plane.set(66, i, 0);
            plane.set(i, 130, plane.at(i, 130) + 0.05f);
        }
        FrameDefects found = FrameDefects.of(plane);
        assertEquals(2, found.lines());
        assertTrue(Float.isNaN(found.masked().at(66, 5)));
        assertTrue(Float.isNaN(found.masked().at(5, 130)));
        assertFalse(Float.isNaN(found.masked().at(67, 5)));
    }

    /** As resampled mosaics have them: the edge wanders over two lines, and two more are half as bright. */
    @Test
    void findsARaggedBorderWithASoftEdge() {
        Plane plane = planet(1, NOISE);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] += 0.05f;
        }
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < 6; x++) {
                boolean border = x < 3 || (x == 3 && y % 20 > 0) || (x == 4 && y % 5 > 0);
                plane.set(x, y, border ? 0 : 0.5f * plane.at(x, y));
            }
        }
        assertEquals(new Margins(6, 0, SIZE, SIZE), Margins.of(plane));
    }

    /** Black or without data, over a sky above zero; the line within may be half of the border. */
    @ParameterizedTest
    @CsvSource({"0", "NaN"})
    void findsBorders(float value) {
        Plane plane = planet(1, NOISE);
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                if (x < 7 || y >= SIZE - 12) {
                    plane.set(x, y, value);
                }
            }
        }
        assertEquals(new Margins(8, 0, SIZE, SIZE - 13), Margins.of(plane));
        FrameDefects found = FrameDefects.of(plane);
        assertTrue(Float.isNaN(found.masked().at(3, 80)));
        assertFalse(Float.isNaN(found.masked().at(9, 80)));
        assertEquals(0, found.spots());
    }

    /** A sky clipped at black goes over into the halo of a planet little by little, in eight bits step by step. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 255})
    void aBlackSkyIsNoBorder(double levels) {
        Plane plane = planet(3, 0);
        for (int p = 0; p < plane.data().length; p++) {
            double light = Math.max(0, plane.data()[p] - SKY - 0.01);
            plane.data()[p] = (float) (levels == 1 ? light : Math.rint(light * levels) / levels);
        }
        assertTrue(Margins.of(plane).isWhole(plane));
        assertEquals(0, FrameDefects.of(plane).border());
    }

    @Test
    void leavesOutWhatIsOverexposed() {
        Plane plane = planet(1, NOISE);
        List<Integer> clipped = new ArrayList<>();
        for (int p = 0; p < plane.data().length; p++) {
            if (plane.data()[p] > 1) {
                plane.data()[p] = 1;
                clipped.add(p);
            }
        }
        FrameDefects found = FrameDefects.of(plane);
        assertEquals(clipped.size(), found.clipped());
        assertTrue(clipped.stream().allMatch(p -> Float.isNaN(found.masked().data()[p])));
    }

    @Test
    void aFrameWithoutDataStaysAsItIs() {
        assertEquals(List.of(), FrameDefects.of(Plane.filled(20, 20, Float.NaN)).notes());
        assertEquals(List.of(), FrameDefects.of(Plane.filled(20, 20, 3)).notes());
    }
}
