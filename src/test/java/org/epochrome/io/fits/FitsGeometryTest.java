package org.epochrome.io.fits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.io.head.HeaderGeometry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Conventions of Greisen and Calabretta 2002 (A&amp;A 395, 1061) and Calabretta and Greisen 2002 (A&amp;A 395, 1077). */
class FitsGeometryTest {
    private static final String TAN = "CTYPE1=RA---TAN;CTYPE2=DEC--TAN;";
    /** Printed to so many digits. */
    private static final double NORTH_DEG = 5e-5;

    private static final double SCALE_ARCSEC = 1e-6;

    private static FitsKeywords keywords(String cards) {
        return new FitsKeywords(Arrays.stream(cards.split(";"))
                .filter(c -> !c.isEmpty())
                .map(c -> c.split("=", 2))
                .collect(Collectors.toMap(c -> c[0], c -> c[1], (a, b) -> b, LinkedHashMap::new)));
    }

    private static HeaderGeometry geometry(String cards, boolean topDown) {
        return FitsGeometry.of(keywords(cards), keywords(cards), topDown);
    }

    /**
     * Scale, direction of celestial north and of east by astropy.wcs 5.2.1 (which uses wcslib, by the authors of the papers), by
     * stepping 1e-5 degrees north and east from the reference point. The first matrix is that of a WFC3 frame whose ORIENTAT,
     * the position angle of its upward axis, is -70.0008 degrees.
     */
    @ParameterizedTest
    @CsvSource({
        "CD1_1=-3.763982045945e-06;CD1_2=-1.0341890424756e-05;CD2_1=-1.0341890424756e-05;CD2_2=3.76398204594508e-06,"
                + "false, 0.039620, 70.0008, false",
        "CD1_1=-3.763982045945e-06;CD1_2=-1.0341890424756e-05;CD2_1=-1.0341890424756e-05;CD2_2=3.76398204594508e-06,"
                + "true, 0.039620, 109.9992, true",
        "CDELT1=-1.5e-4;CDELT2=1.5e-4;CROTA2=30, false, 0.54, 30, false",
        "CDELT1=-1.5e-4;CDELT2=1.5e-4;CROTA2=30, true, 0.54, 150, true",
        "CDELT1=1.5e-4;CDELT2=1.5e-4;CROTA2=30, false, 0.54, -30, true",
        "CDELT1=1.5e-4;CDELT2=1.5e-4;CROTA2=30, true, 0.54, -150, false",
        "CDELT1=-1.5e-4;CDELT2=1.5e-4;PC1_1=-0.93969262;PC1_2=0.34202014;PC2_1=-0.34202014;PC2_2=-0.93969262,"
                + "false, 0.54, 160, false",
        "CDELT1=-2e-4;CDELT2=2e-4, false, 0.72, 0, false",
        "CD1_1=2.1e-5;CD1_2=5e-6;CD2_1=-5e-6;CD2_2=2.1e-5, false, 0.077713, 13.3925, true",
        "CD1_1=2.1e-5;CD1_2=5e-6;CD2_1=-5e-6;CD2_2=2.1e-5, true, 0.077713, 166.6075, false",
    })
    void readsCelestialCoordinates(String cards, boolean topDown, double scale, double north, boolean mirrored) {
        HeaderGeometry found = geometry(TAN + cards, topDown);
        assertEquals(scale, found.scaleArcsecPerPx().orElseThrow(), SCALE_ARCSEC);
        assertEquals(north, found.celestialNorthDeg().orElseThrow(), NORTH_DEG);
        assertEquals(Optional.of(mirrored), found.mirrored());
    }

    @Test
    void readsSwappedAxes() {
        HeaderGeometry plain = geometry(TAN + "CD1_1=-2e-5;CD1_2=-1e-5;CD2_1=-1e-5;CD2_2=2e-5", false);
        HeaderGeometry swapped =
                geometry("CTYPE1=DEC--TAN;CTYPE2=RA---TAN;CD1_1=-1e-5;CD1_2=2e-5;CD2_1=-2e-5;CD2_2=-1e-5", false);
        assertEquals(plain, swapped);
    }

    /** The position angle of the upward axis goes from north through east, which lies to the left unless mirrored. */
    @Test
    void orientatTellsNorthWhereTheStepsTellMirroring() {
        HeaderGeometry plain = geometry(TAN + "CDELT1=-1e-5;CDELT2=1e-5;ORIENTAT=-70.0007", false);
        assertEquals(70.0007, plain.celestialNorthDeg().orElseThrow(), 1e-9);
        assertEquals(Optional.of(false), plain.mirrored());
        HeaderGeometry mirrored = geometry(TAN + "CDELT1=1e-5;CDELT2=1e-5;ORIENTAT=-70.0007", false);
        assertEquals(-70.0007, mirrored.celestialNorthDeg().orElseThrow(), 1e-9);
        assertEquals(Optional.of(true), mirrored.mirrored());
        assertFalse(geometry("ORIENTAT=-70.0007", false).isKnown());
    }

    /** 206.264806 arcsec per pixel for 1 micrometre behind 1 millimetre: 3.75 um and 2800 mm give 0.27625 arcsec. */
    @ParameterizedTest
    @CsvSource({
        "PIXSCALE=0.04, 0.04, PIXSCALE",
        "SECPIX=0.31, 0.31, SECPIX",
        "SCALE=0.25, 0.25, SCALE",
        "SCALE=0.25;PIXSCALE=0.04, 0.04, PIXSCALE",
        "SCALE=0;FOCALLEN=2800;XPIXSZ=3.75, 0.276247508, FOCALLEN and XPIXSZ",
        "FOCALLEN=2800;XPIXSZ=3.75;XBINNING=2, 0.276247508, FOCALLEN and XPIXSZ",
        "FOCALLEN=2800;PIXSIZE1=3.75;XBINNING=2, 0.552495016, FOCALLEN and PIXSIZE1",
    })
    void readsTheScaleAlone(String cards, double scale, String source) {
        HeaderGeometry found = geometry(cards, false);
        assertEquals(scale, found.scaleArcsecPerPx().orElseThrow(), 1e-8);
        assertEquals(source, found.scaleSource());
        assertEquals(OptionalDouble.empty(), found.celestialNorthDeg());
    }

    @ParameterizedTest
    @CsvSource({
        "''",
        "FOCALLEN=0;XPIXSZ=3.75",
        "PIXSCALE=0",
        "CTYPE1=RA---TAN;CTYPE2=DEC--TAN;CD1_1=0;CD1_2=0;CD2_1=0;CD2_2=0",
        "CTYPE1=WAVE;CUNIT1=nm;CDELT1=0.1;CDELT2=0.1",
    })
    void saysNothingWhereNothingIsKnown(String cards) {
        assertFalse(geometry(cards, false).isKnown());
    }

    @Test
    void theExtensionThatHoldsTheImageCountsBeforeThePrimaryHeader() {
        FitsKeywords primary = keywords("PIXSCALE=0.1;CD1_1=1;CD2_2=1;CD1_2=1;CD2_1=0");
        FitsKeywords own = keywords(TAN + "CDELT1=-1e-4;CDELT2=1e-4");
        HeaderGeometry found = FitsGeometry.of(own, own.over(primary), false);
        assertEquals("CDELT", found.scaleSource());
        assertEquals(0.36, found.scaleArcsecPerPx().orElseThrow(), 1e-9);
        HeaderGeometry inherited =
                FitsGeometry.of(FitsKeywords.NONE, FitsKeywords.NONE.over(keywords("PIXSCALE=0.1")), false);
        assertEquals("PIXSCALE", inherited.scaleSource());
    }

    /** Neptune on 2019-09-28 with celestial north at 70.0008 and P -36.94 degrees: north at 33.06, or 106.94 mirrored. */
    @Test
    void theNorthOfABodyIsThatOfTheSkyAndThePositionAngle() {
        Map.of(false, 33.0608, true, 106.9408).forEach((mirrored, north) -> {
            HeaderGeometry geometry = new HeaderGeometry(
                    OptionalDouble.empty(), "", OptionalDouble.of(70.0008), Optional.of(mirrored), "CD matrix");
            assertEquals(north, geometry.northAngleDeg(-36.94).orElseThrow(), 1e-9);
            assertTrue(geometry.isKnown());
        });
    }
}
