package org.epochrome.io.identify;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.epochrome.image.Passband;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FilterNameTest {
    /**
     * Pivot wavelength and rectangular width, nm, by the WFC3 Instrument Handbook (STScI), table 6.2; F410M and F343N of WFPC2
     * by the WFPC2 Instrument Handbook, table 3.1. The name tells the wavelength to within 1 %, and the kind of filter
     * the width within a factor of two to three, as those of one kind differ.
     */
    @ParameterizedTest
    @CsvSource({
        "F390M, 389.7, 20.4", "F467M, 468.2, 20.1", "F547M, 544.7, 65.0", "F621M, 621.9, 60.9", "F689M, 687.6, 68.3",
        "F763M, 761.2, 70.8", "F845M, 843.9, 79.4", "F555W, 530.8, 156.2", "F814W, 802.4, 153.6", "F657N, 656.7, 12.1",
        "F631N, 630.4, 5.8", "FQ889N, 889.2, 9.8", "F110W, 1153.4, 443.0", "F410M, 408.8, 14.7", "F343N, 343.3, 2.4"
    })
    void spaceTelescopeNamesTellTheWavelengthAndRoughlyTheWidth(String name, double nm, double width) {
        FilterName filter = FilterName.of(name).orElseThrow();
        Passband passband = filter.band().passband();
        assertEquals(name, filter.band().name());
        assertEquals(1, passband.effectiveNm() / nm, 0.05);
        double ratio = (passband.toNm() - passband.fromNm()) / width;
        assertEquals(0, Math.log(ratio), Math.log(3), "width " + ratio + " times the published one");
        assertEquals(false, filter.widthStated());
    }

    /** Wavelengths of lines in air by the NIST Atomic Spectra Database; the rest is what the name tells. */
    @ParameterizedTest
    @CsvSource({
        "656nm, 656nm, 652.5, 659.5, false",
        "656.3 nm, 656.3nm, 652.8, 659.8, false",
        "656nm/10nm, 656nm, 651, 661, true",
        "656 10 nm, 656nm, 651, 661, true",
        "600-690nm, 600-690nm, 600, 690, true",
        "Ha 7nm, Ha, 652.78, 659.78, true",
        "H-alpha, Ha, 652.78, 659.78, false",
        "H\u03b1 (3 nm), Ha, 654.78, 657.78, true",
        "Ha 656nm 5nm, Ha, 653.5, 658.5, true",
        "hb, Hb, 482.63, 489.63, false",
        "OIII, OIII, 497.18, 504.18, false",
        "[O III] 8.5nm, OIII, 496.43, 504.93, true",
        "SII, SII, 668.9, 675.9, false",
        "CH4 889, CH4, 880, 898, false",
        "CH4 889 8nm, CH4, 885, 893, true",
        "methane 727 nm, CH4-727, 723.365, 730.635, false",
        "IR742, IR, 742, 950, true",
        "IR-pass 685nm, IR, 685, 950, true",
        "F850LP, F850LP, 850, 1050, false",
    })
    void namesTellWavelengths(String text, String name, double from, double to, boolean stated) {
        FilterName filter = FilterName.of(text).orElseThrow();
        assertEquals(name, filter.band().name());
        assertEquals(from, filter.band().passband().fromNm(), 1e-9);
        assertEquals(to, filter.band().passband().toNm(), 1e-9);
        assertEquals(stated, filter.widthStated());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "R", "7nm", "889", "2031nm", "F12M", "0656nm", "5007nm", "Nebula", "F4", "690-600nm", "IR550"
            })
    void otherTextsTellNone(String text) {
        assertEquals(Optional.empty(), FilterName.of(text));
    }
}
