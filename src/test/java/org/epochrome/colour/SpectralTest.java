package org.epochrome.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.junit.jupiter.api.Test;

class SpectralTest {
    @Test
    void filtersLookLikeTheirNames() {
        double[] red = Spectral.colour(Band.R.passband());
        double[] green = Spectral.colour(Band.G.passband());
        double[] blue = Spectral.colour(Band.B.passband());
        assertEquals(1, red[0], 1e-9);
        assertTrue(red[1] < 0.6 && red[2] < 0.4);
        assertEquals(1, green[1], 1e-9);
        assertTrue(green[0] < 0.7 && green[2] < 0.7);
        assertEquals(1, blue[2], 1e-9);
        assertTrue(blue[0] < 0.7 && blue[1] < 0.7);
    }

    /** Even light over all that is seen is nearly white: of equal energy, which has a touch of pink. */
    @Test
    void clearIsNearlyWhite() {
        for (double part : Spectral.colour(new Passband(400, 690))) {
            assertEquals(0.95, part, 0.08);
        }
    }

    @Test
    void unseenLightHasAColourToo() {
        assertEquals(1, Spectral.colour(Band.IR.passband())[0], 1e-9);
        assertEquals(1, Spectral.colour(Band.UV.passband())[2], 1e-9);
    }
}
