package org.epochrome.atmosphere;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AirTest {
    @ParameterizedTest
    // ICAO standard atmosphere (Doc 7488), geopotential heights; from memory
    @CsvSource({"0, 1013.25", "1000, 898.75", "2000, 794.95", "4000, 616.40", "8000, 356.00"})
    void followsTheStandardAtmosphere(double heightM, double hPa) {
        assertEquals(hPa, Air.standardAt(heightM).pressureHpa(), 0.005);
    }

    @ParameterizedTest
    @CsvSource({
        "5, 10, 0.5",
        "1300, 10, 0.5",
        "1000, -90, 0.5",
        "1000, 70, 0.5",
        "1000, 10, -0.1",
        "1000, 10, 50",
        "NaN, 10, 0.5"
    })
    void refusesWhatIsNoAir(double hPa, double celsius, double humidity) {
        var refused = assertThrows(IllegalArgumentException.class, () -> new Air(hPa, celsius, humidity));
        assertTrue(refused.getMessage().contains("must be between"), refused.getMessage());
    }

    /** The limits themselves are air: the first and the last of each range. */
    @ParameterizedTest
    @CsvSource({"10, -80, 0", "1200, 60, 1"})
    void takesTheLimitsOfItsRanges(double hPa, double celsius, double humidity) {
        assertEquals(hPa, new Air(hPa, celsius, humidity).pressureHpa());
        assertThrows(IllegalArgumentException.class, () -> new Air(hPa, celsius, 3 * humidity - 1));
    }

    @Test
    void airMassFollowsKastenAndYoung() {
        // Kasten & Young 1989, table 2, from memory: 38 at the horizon, 10.3 at 5 degrees, 5.6 at 10, 2 near 30
        assertEquals(1.0, AirMass.at(90), 0.001);
        assertEquals(1.994, AirMass.at(30), 0.002);
        assertEquals(5.586, AirMass.at(10), 0.0005);
        assertEquals(10.32, AirMass.at(5), 0.03);
        assertEquals(37.92, AirMass.at(0), 0.005);
        assertThrows(IllegalArgumentException.class, () -> AirMass.at(-1));
    }
}
