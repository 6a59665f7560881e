package org.epochrome.ephemeris;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SiteTest {
    @ParameterizedTest
    @CsvSource({"90, 360, 10000", "-90, -180, -500"})
    void takesTheLimitsOfItsRanges(double latitudeDeg, double longitudeDeg, double heightM) {
        assertEquals(latitudeDeg, new Site(latitudeDeg, longitudeDeg, heightM).latitudeDeg());
    }

    @ParameterizedTest
    @CsvSource({"90.01, 0, 0", "-90.01, 0, 0", "NaN, 0, 0", "0, 360.01, 0", "0, -180.01, 0", "0, 0, 10001", "0, 0, -501"
    })
    void refusesWhatIsNotOnEarth(double latitudeDeg, double longitudeDeg, double heightM) {
        assertThrows(IllegalArgumentException.class, () -> new Site(latitudeDeg, longitudeDeg, heightM));
    }
}
