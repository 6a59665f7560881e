package org.epochrome.image;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.color.ColorSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EncodingTest {
    /** The JDK's own sRGB curve (IEC 61966-2-1), whose colour management works in 16 bits. */
    @Test
    void undoesSrgbAsTheJdkDoes() {
        ColorSpace linear = ColorSpace.getInstance(ColorSpace.CS_LINEAR_RGB);
        for (int i = 0; i <= 255; i++) {
            float sample = i / 255f;
            float expected = linear.fromRGB(new float[] {sample, sample, sample})[1];
            assertEquals(expected, Encoding.SRGB.light(sample), 1e-4, "sample " + i);
        }
    }

    /** The standard's curve meets its straight part at 0.04045, which stands for 0.0031308. */
    @Test
    void theTwoPartsOfSrgbMeet() {
        assertEquals(0.0031308, Encoding.SRGB.light(0.04045f), 1e-7);
        assertEquals(0.0031308, Encoding.SRGB.light(0.040451f), 2e-7);
    }

    @Test
    void undoesAPowerLaw() {
        assertEquals(0.25f, Encoding.power(2).light(0.5f));
        assertEquals(-0.25f, Encoding.power(2).light(-0.5f));
        assertEquals(1f, Encoding.power(2.2).light(1));
        assertEquals(0.3f, Encoding.LINEAR.light(0.3f));
    }

    @Test
    void noDataStaysNoData() {
        for (String word : new String[] {"linear", "srgb", "gamma=2.2"}) {
            assertTrue(Float.isNaN(Encoding.of(word).light(Float.NaN)), word);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"linear", "srgb", "gamma=2.2", "gamma=0.45"})
    void wordsAreReadAsWritten(String word) {
        assertEquals(word, Encoding.of(word).word());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "2.2", "gamma", "gamma=", "gamma=0", "gamma=9", "gamma=1.2.3", "rec709"})
    void otherWordsAreRefused(String word) {
        assertThrows(IllegalArgumentException.class, () -> Encoding.of(word));
    }
}
