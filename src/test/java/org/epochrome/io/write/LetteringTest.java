package org.epochrome.io.write;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;

class LetteringTest {
    /** Every character that captions use has an outline of its own. */
    @Test
    void knowsTheCharactersOfCaptions() {
        String used = "Jupiter Saturn 2024-12-18 19:24:30 UTC CM III 184.7\u00b0 diameter 47.9\u2033 R G B (H_a) +";
        used.chars().forEach(c -> assertTrue(Lettering.width(Character.toString(c)) > 0.1, "character " + (char) c));
        assertEquals(Lettering.width("?"), Lettering.width("\u4e00"), 1e-12);
        assertTrue(Lettering.width("W") > 1.5 * Lettering.width("i"));
        assertEquals(Lettering.width("ab"), Lettering.width("a") + Lettering.width("b"), 1e-12);
    }

    /** A dash is a bar: its pixels hold as much as its outline's area, 400 x 65 units in the table of letters. */
    @Test
    void coversAsMuchAsTheOutline() {
        Plane plane = new Plane(80, 80);
        Lettering.draw(List.of(plane), List.of("\u2013"), 5.3, 4.8, 50, 0.5f);
        double sum = 0;
        for (float v : plane.data()) {
            sum += v;
        }
        assertEquals(0.5 * 400 * 65 * 0.05 * 0.05, sum, 0.05 * 0.5 * 65);
    }

    @Test
    void staysOnThePlanes() {
        Plane plane = new Plane(30, 12);
        Lettering.draw(List.of(plane), List.of("Wide text", "below the edge"), -4, -3, 14, 0.7f);
        float most = 0;
        for (float v : plane.data()) {
            most = Math.max(most, v);
        }
        assertEquals(0.7f, most, 1e-6);
    }
}
