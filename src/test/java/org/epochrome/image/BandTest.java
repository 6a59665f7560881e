package org.epochrome.image;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandTest {
    @ParameterizedTest
    @CsvSource({"R,600,690", "G,500,580", "B,400,500"})
    void hasTheUsualPassbands(String name, double fromNm, double toNm) {
        Band band = Band.known(name).orElseThrow();
        assertEquals(new Passband(fromNm, toNm), band.passband());
        assertEquals(0.5 * (fromNm + toNm), band.passband().effectiveNm(), 1e-12);
    }

    @Test
    void isKnownInAnyCase() {
        assertEquals(Optional.of(Band.CH4), Band.known(" ch4 "));
        assertEquals(Optional.empty(), Band.known("Q"));
        assertEquals(7, Band.KNOWN.size());
        Band.KNOWN.forEach(band -> assertEquals(Optional.of(band), Band.known(band.name())));
    }

    @Test
    void keepsItsNameBehindAnotherFilter() {
        Band narrow = Band.R.through(new Passband(650, 660));
        assertEquals("R", narrow.name());
        assertEquals(655, narrow.passband().effectiveNm(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"600,600", "690,600", "199,300", "800,2501", "NaN,600", "500,NaN"})
    void refusesWavelengthsWithoutMeaning(double fromNm, double toNm) {
        String message = assertThrows(IllegalArgumentException.class, () -> new Passband(fromNm, toNm))
                .getMessage();
        assertTrue(message.contains("nm"), message);
    }

    @Test
    void widensAboutTheMiddle() {
        assertEquals(new Passband(415, 485), new Passband(400, 500).widened(-0.3));
        assertEquals(new Passband(200, 320), new Passband(210, 310).widened(0.2));
        assertEquals(200, new Passband(210, 310).widened(0.5).fromNm());
    }
}
