package org.epochrome.image;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;

class RegionTest {
    private static final Plane PLANE = numbered(7, 5);

    private static Plane numbered(int width, int height) {
        Plane plane = new Plane(width, height);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = i + 1;
        }
        return plane;
    }

    @Test
    void holdsAllPixelsWithinAReach() {
        Region around = Region.around(3.2, 2.2, 1.1, 7, 5);
        assertEquals(new Region(2, 1, 4, 4), around);
        assertEquals(new Region(0, 1, 6, 4), around.with(new Region(0, 2, 1, 1)));
    }

    @Test
    void endsWhereTheImageEnds() {
        assertEquals(new Region(0, 0, 7, 5), Region.around(3, 2, 100, 7, 5));
        assertEquals(new Region(6, 0, 1, 1), Region.around(40, -30, 2, 7, 5));
    }

    @Test
    void cutsAndPutsBack() {
        Region region = new Region(2, 1, 3, 2);
        Plane part = region.of(PLANE);
        assertArrayEquals(new float[] {10, 11, 12, 17, 18, 19}, part.data());
        Plane back = new Plane(7, 5);
        region.put(part, back);
        assertArrayEquals(back.data(), region.amongZeros(part, 7, 5).data());
        assertEquals(18, back.at(3, 2));
        assertEquals(0, back.at(5, 2));
    }

    @Test
    void copiesNothingIfItIsTheWholePlane() {
        Region whole = Region.around(3, 2, 100, 7, 5);
        assertSame(PLANE, whole.of(PLANE));
        assertSame(PLANE, whole.amongZeros(PLANE, 7, 5));
    }
}
