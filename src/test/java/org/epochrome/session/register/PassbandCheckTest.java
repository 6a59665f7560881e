package org.epochrome.session.register;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.epochrome.disk.PassbandWidth;
import org.epochrome.image.Band;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Test;

class PassbandCheckTest {
    private static final List<PassbandMiddle> UNKNOWN =
            List.of(PassbandMiddle.UNKNOWN, PassbandMiddle.UNKNOWN, PassbandMiddle.UNKNOWN);

    @Test
    void namesWavesThatAreLongerThanAssumed() {
        List<PassbandWidth> widths = List.of(PassbandWidth.UNKNOWN, new PassbandWidth(-0.3, 0.02));
        assertEquals(
                List.of("The dispersion in B suggests a passband of 435-505 nm rather than 400-500 nm; give it with"
                        + " --passband."),
                Message.texts(PassbandCheck.warnings(
                        List.of(Band.R, Band.B),
                        widths,
                        List.of(new PassbandMiddle(10, 2), new PassbandMiddle(20, 3)))));
    }

    @Test
    void namesTheWavelengthsThatFitBetterOncePerBand() {
        PassbandWidth narrow = new PassbandWidth(-0.3, 0.02);
        assertEquals(
                List.of("The dispersion in B suggests a passband of 415-485 nm rather than 400-500 nm; give it with"
                        + " --passband."),
                Message.texts(PassbandCheck.warnings(
                        List.of(Band.B, Band.G, Band.B),
                        List.of(narrow, new PassbandWidth(0.05, 0.02), narrow),
                        UNKNOWN)));
    }

    @Test
    void isSilentWhereFramesDoNotTell() {
        assertEquals(
                List.of(),
                PassbandCheck.warnings(
                        List.of(Band.B, Band.R),
                        List.of(PassbandWidth.UNKNOWN, new PassbandWidth(-0.3, 0.12)),
                        UNKNOWN));
    }
}
