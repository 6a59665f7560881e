package org.epochrome.desktop.state;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ZoomTest {
    @Test
    void whatIsUnderTheCursorStaysThere() {
        Zoom zoom = Zoom.around(240, 230, 250, 900, 700);
        double x = zoom.imageX(123);
        double y = zoom.imageY(456);
        Zoom larger = zoom.by(1.7, 123, 456).by(1.1, 123, 456);
        assertEquals(123, larger.viewX(x), 1e-9);
        assertEquals(456, larger.viewY(y), 1e-9);
        assertEquals(zoom.scale() * 1.7 * 1.1, larger.scale(), 1e-12);
    }

    /** Pixel (0, 0) is the centre of the top-left pixel. */
    @Test
    void theFirstPixelReachesFromTheEdge() {
        Zoom zoom = new Zoom(10, 100, 50);
        assertEquals(105, zoom.viewX(0), 1e-12);
        assertEquals(-0.5, zoom.imageX(100), 1e-12);
        assertEquals(55, zoom.viewY(0), 1e-12);
    }

    @Test
    void aroundShowsTheWholeSquare() {
        Zoom zoom = Zoom.around(50, 60, 40, 800, 400);
        assertEquals(400, zoom.viewX(50), 1e-9);
        assertEquals(200, zoom.viewY(60), 1e-9);
        assertEquals(5, zoom.scale(), 1e-12);
    }
}
