package org.epochrome.colour.finish;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Rings;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FramedTest {
    private static final Globe GLOBE = new Globe(0.9, 0, 1, 0, 0);

    /** A spot 20 px north of the centre and one 15 px east of it, placed by hand, land where a map would have them. */
    @ParameterizedTest
    @CsvSource({"30,false,1", "30,true,1", "-140,false,1.5", "75,true,0.8"})
    void northComesUpAndEastToTheLeft(double northDeg, boolean mirrored, double scale) {
        Disk disk = new Disk(61.3, 58.2, 40, northDeg, mirrored);
        double north = Math.toRadians(northDeg);
        // Counter-clockwise from up is (-sin, -cos); east follows north counter-clockwise unless mirrored.
        double east = north + (mirrored ? -1 : 1) * Math.PI / 2;
        Plane poleward = spot(disk.x() - 20 * Math.sin(north), disk.y() - 20 * Math.cos(north));
        Plane eastward = spot(disk.x() - 15 * Math.sin(east), disk.y() - 15 * Math.cos(east));
        Framed framed = Framed.of(
                List.of(poleward, eastward),
                GLOBE,
                disk,
                new Framing(
                        Framing.Orientation.NORTH_UP,
                        OptionalDouble.of(0.25),
                        OptionalDouble.of(scale),
                        Optional.empty(),
                        false),
                0);
        assertEquals(Math.rint(scale * 100), framed.planes().get(0).width());
        assertEquals(Math.rint(scale * 92), framed.planes().get(0).height());
        double[] middle = {
            0.5 * (framed.planes().get(0).width() - 1),
            0.5 * (framed.planes().get(0).height() - 1)
        };
        // Interpolation moves the centroid of a spot of 2 px by less than that.
        assertArrayEquals(
                new double[] {middle[0], middle[1] - 20 * scale},
                centroid(framed.planes().get(0)),
                0.02);
        assertArrayEquals(
                new double[] {middle[0] - 15 * scale, middle[1]},
                centroid(framed.planes().get(1)),
                0.02);
        assertEquals(0, framed.disk().northAngleDeg());
        assertEquals(40 * scale, framed.disk().equatorialRadiusPx(), 1e-9);
    }

    /** A picture on pixels twice as wide fills the same edges: with and without a canvas, cropped and whole. */
    @Test
    void aCoarsePictureIsFramedLikeTheFineOne() {
        Disk disk = new Disk(60.5, 58.5, 40, 30, false);
        Disk coarse = new Disk(30, 29, 20, 30, false);
        Plane fine = new Plane(124, 120);
        Plane binned = new Plane(62, 60);
        Optional<Framing.Canvas> canvas = Optional.of(new Framing.Canvas(150, 110));
        for (Framing framing : List.of(
                new Framing(
                        Framing.Orientation.NORTH_UP, OptionalDouble.of(0.5), OptionalDouble.empty(), canvas, false),
                new Framing(
                        Framing.Orientation.NORTH_UP, OptionalDouble.of(0.5), OptionalDouble.of(1.5), canvas, false),
                new Framing(
                        Framing.Orientation.AS_SHOT,
                        OptionalDouble.empty(),
                        OptionalDouble.of(1.5),
                        Optional.empty(),
                        false),
                Framing.AS_SHOT)) {
            Framed wanted = Framed.of(List.of(fine), GLOBE, disk, framing, 0);
            Framed quick = Framed.of(List.of(binned), GLOBE, coarse, framing.enlarged(2), 0);
            assertEquals(wanted.planes().get(0).width(), quick.planes().get(0).width());
            assertEquals(wanted.planes().get(0).height(), quick.planes().get(0).height());
            assertEquals(wanted.disk().equatorialRadiusPx(), quick.disk().equatorialRadiusPx(), 1e-9);
            assertEquals(wanted.disk().x(), quick.disk().x(), 1e-9);
            assertEquals(wanted.disk().y(), quick.disk().y(), 1e-9);
        }
    }

    @Test
    void southUpIsNorthUpTurnedRound() {
        Disk disk = new Disk(60, 58, 40, 12, false);
        List<Plane> planes = List.of(spot(50, 40));
        Plane north = Framed.of(planes, GLOBE, disk, oriented(Framing.Orientation.NORTH_UP), 0)
                .planes()
                .get(0);
        Plane south = Framed.of(planes, GLOBE, disk, oriented(Framing.Orientation.SOUTH_UP), 0)
                .planes()
                .get(0);
        int n = north.data().length;
        for (int i = 0; i < n; i++) {
            assertEquals(north.data()[i], south.data()[n - 1 - i], 1e-5);
        }
    }

    /** Cropping moves whole pixels. */
    @Test
    void croppingResamplesNothing() {
        Plane plane = new Plane(120, 110);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (i * 37 % 101) / 101f;
        }
        Disk disk = new Disk(61.3, 58.2, 30, 90, false);
        Framing framing = new Framing(
                Framing.Orientation.AS_SHOT, OptionalDouble.of(0), OptionalDouble.empty(), Optional.empty(), false);
        Framed framed = Framed.of(List.of(plane), GLOBE, disk, framing, 0);
        Plane result = framed.planes().get(0);
        // The pole lies to the left, so the flattening is in the width.
        assertEquals(54, result.width());
        assertEquals(60, result.height());
        int left = (int) Math.round(disk.x() - framed.disk().x());
        int top = (int) Math.round(disk.y() - framed.disk().y());
        for (int y = 0; y < result.height(); y++) {
            for (int x = 0; x < result.width(); x++) {
                assertEquals(plane.at(x + left, y + top), result.at(x, y));
            }
        }
    }

    @Test
    void fillsACanvas() {
        Disk disk = new Disk(60, 58, 40, 0, false);
        Framing framing = new Framing(
                Framing.Orientation.AS_SHOT,
                OptionalDouble.of(0.25),
                OptionalDouble.empty(),
                Optional.of(new Framing.Canvas(300, 220)),
                false);
        Framed framed = Framed.of(List.of(spot(60, 58)), GLOBE, disk, framing, 20);
        assertEquals(300, framed.planes().get(0).width());
        assertEquals(200, framed.planes().get(0).height());
        // 2 x (0.9 + 0.25) radii in 200 px.
        assertEquals(200 / 2.3, framed.disk().equatorialRadiusPx(), 1e-9);
        assertEquals(149.5, framed.disk().x(), 1e-9);
    }

    /** Saturn's rings reach to 2.27 radii. */
    @Test
    void leavesRoomForRings() {
        Globe ringed = new Globe(0.9, Math.toRadians(20), 1, 0, 0, Rings.of(Body.SATURN));
        Disk disk = new Disk(150, 150, 50, 0, false);
        Framed framed = Framed.of(
                List.of(spot(60, 58)),
                ringed,
                disk,
                new Framing(
                        Framing.Orientation.NORTH_UP,
                        OptionalDouble.of(0),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        false),
                0);
        assertEquals(227, framed.planes().get(0).width(), 1);
    }

    @Test
    void refusesWhatMakesNoSense() {
        assertThrows(IllegalArgumentException.class, () -> new Framing.Canvas(5, 100));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Framing(
                        Framing.Orientation.AS_SHOT,
                        OptionalDouble.of(-1),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        false));
    }

    private static Framing oriented(Framing.Orientation orientation) {
        return new Framing(orientation, OptionalDouble.of(0.1), OptionalDouble.empty(), Optional.empty(), false);
    }

    private static Plane spot(double atX, double atY) {
        Plane plane = new Plane(120, 110);
        for (int y = 0; y < 110; y++) {
            for (int x = 0; x < 120; x++) {
                double r2 = (x - atX) * (x - atX) + (y - atY) * (y - atY);
                plane.set(x, y, (float) (0.9 * Math.exp(-r2 / 8)));
            }
        }
        return plane;
    }

    private static double[] centroid(Plane plane) {
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                sum += plane.at(x, y);
                sumX += x * plane.at(x, y);
                sumY += y * plane.at(x, y);
            }
        }
        return new double[] {sumX / sum, sumY / sum};
    }
}
