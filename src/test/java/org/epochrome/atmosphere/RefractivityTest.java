package org.epochrome.atmosphere;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RefractivityTest {
    @ParameterizedTest
    @CsvSource({
        // dry air of 450 ppm CO2 at 633 nm, (n - 1) 1e8: Ciddor 1996, table 1 (from memory; the same as Birch & Downs
        // 1993)
        "633.0, 800, 20, 21458.0",
        "633.0, 1000, 20, 26824.4",
        "633.0, 1200, 20, 32191.6",
        "633.0, 1000, 10, 27774.7",
        "633.0, 1000, 30, 25937.2"
    })
    void agreesWithPublishedDryAir(double nm, double hPa, double celsius, double expected) {
        // printed to 0.1; the paper's agreement with measurement is 1
        assertEquals(expected, 1e8 * Refractivity.ciddor(nm, new Air(hPa, celsius, 0)), 0.15);
    }

    @ParameterizedTest
    @CsvSource({"400", "500", "644", "890"})
    void isTheDispersionFormulaInStandardAir(double nm) {
        double s = 1e6 / (nm * nm);
        // 15 C, 1013.25 hPa, dry: the formula as refractive-index databases print it, in another unit
        double expected = 0.05792105 / (238.0185 - s) + 0.00167917 / (57.362 - s);
        assertEquals(expected, Refractivity.ciddor(nm, new Air(1013.25, 15, 0)), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"450, 25, 1.0", "540, 10, 0.4", "645, 0, 0.9", "800, 30, 0.6"})
    void moistAirAgreesWithEdlenAsRevisedByBirchAndDowns(double nm, double celsius, double humidity) {
        Air moist = new Air(950, celsius, humidity);
        double vapourPa = humidity * 611.2 * Math.exp(17.62 * celsius / (243.12 + celsius));
        double s = 1e6 / (nm * nm);
        double lowered = vapourPa * (3.7345 - 0.0401 * s) * 1e-10;
        double actual = Refractivity.ciddor(nm, new Air(950, celsius, 0)) - Refractivity.ciddor(nm, moist);
        // Birch & Downs 1994 give 3e-8 for humid air between the two equations; the saturation formulas add 0.5 %
        assertEquals(lowered, actual, 3e-8);
    }
}
