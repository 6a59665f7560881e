package org.epochrome.atmosphere;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExtinctionTest {
    /**
     * Optical depth of the molecules at sea level by Bodhaine et al. 1999 (J. Atmos. Oceanic Technol. 16, 1854, eq. 30), plus dust of an
     * optical depth of 0.046 at 1 micrometre with Angstrom's exponent of 1.3. The power law here differs by 3 % of the molecules.
     * Measured: 0.002 of the light.
     */
    @ParameterizedTest
    @CsvSource({"400", "450", "550", "650", "800"})
    void agreesWithRayleighScattering(double nm) {
        double l2 = Math.pow(nm / 1000, 2);
        double depth =
                0.0021520 * (1.0455996 - 341.29061 / l2 - 0.90230850 * l2) / (1 + 0.0027059889 / l2 - 85.968563 * l2);
        double dust = 0.05 / 1.0857 * Math.pow(nm / 1000, -1.3);
        double transmitted = Math.exp(-2 * (depth + dust));
        assertEquals(transmitted, Extinction.transmission(nm, 2, new Air(1013.25, 15, 0)), 0.005);
    }
}
