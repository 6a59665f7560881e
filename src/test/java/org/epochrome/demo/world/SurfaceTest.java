package org.epochrome.demo.world;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.Map;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Maps as functions on the sphere, and what the invented surfaces promise. */
class SurfaceTest {
    private static final double DEG = Math.PI / 180;
    private static final Map<Body, Surface> PAINTED = new EnumMap<>(Body.class);

    /** A surface of seed 5, painted once. */
    private static Surface painted(Body body) {
        return PAINTED.computeIfAbsent(body, unused -> Surface.invented(body, 5));
    }

    /** The spline through smooth coefficients damps them by (k h)^2 / 6: here 1e-4 of the amplitude. */
    @Test
    void aMapFollowsItsCells() {
        AlbedoMap map = AlbedoMap.of(
                720,
                360,
                (latitude, longitude) ->
                        0.5 + 0.3 * Math.cos(latitude * DEG) * Math.sin(3 * longitude * DEG) + 0.001 * latitude);
        for (double latitude = -80; latitude <= 80; latitude += 7.3) {
            for (double longitude = -370; longitude < 740; longitude += 11.1) {
                double wanted = 0.5 + 0.3 * Math.cos(latitude * DEG) * Math.sin(3 * longitude * DEG) + 0.001 * latitude;
                assertEquals(wanted, map.at(latitude * DEG, longitude * DEG), 5e-5);
            }
        }
    }

    @Test
    void aMapIsSmoothOverItsSeamAndItsPoles() {
        AlbedoMap map = AlbedoMap.of(
                720, 360, (latitude, longitude) -> 0.5 + 0.3 * Math.cos(latitude * DEG) * Math.sin(longitude * DEG));
        double step = 1e-6;
        for (double latitude = -89.9; latitude < 90; latitude += 3.1) {
            assertEquals(map.at(latitude * DEG, -step), map.at(latitude * DEG, step), 1e-5);
        }
        for (double longitude = 0; longitude < 360; longitude += 7) {
            double here = map.at(Math.PI / 2, longitude * DEG);
            assertEquals(here, map.at(Math.PI / 2, (longitude + 180) * DEG), 1e-6);
            assertEquals(0.5, map.at(-Math.PI / 2, longitude * DEG), 1e-6);
        }
        assertThrows(IllegalArgumentException.class, () -> AlbedoMap.of(5, 2, new float[10]));
    }

    @Test
    void otherBandsAreMixedByTheirPassbands() {
        Surface surface = new Surface(AlbedoMap.uniform(0.9), AlbedoMap.uniform(0.6), AlbedoMap.uniform(0.3));
        assertEquals(0.9, surface.albedo(Band.R).at(0, 0), 1e-6);
        assertEquals(0.6, surface.albedo(Band.G).at(0, 0), 1e-6);
        assertEquals(0.3, surface.albedo(Band.B).at(0, 0), 1e-6);
        assertEquals(0.9, surface.albedo(Band.IR).at(0, 0), 1e-6);
        assertEquals(0.3, surface.albedo(Band.UV).at(0, 0), 1e-6);
        Band yellow = new Band("yellow", new Passband(590, 595));
        assertEquals(0.75, surface.albedo(yellow).at(0, 0), 1e-6);
        // L by hand: constant to 450 nm, straight to 540, straight to 645, constant to 690, over 290 nm
        double luminance = (0.3 * 50 + 0.45 * 90 + 0.75 * 105 + 0.9 * 45) / 290;
        assertEquals(luminance, surface.albedo(Band.L).at(0, 0), 3e-4);
    }

    @ParameterizedTest
    @EnumSource(names = {"JUPITER", "MARS", "SATURN", "MERCURY"})
    void inventedSurfacesAreAlbedosWithDetail(Body body) {
        Surface surface = painted(body);
        for (Band band : new Band[] {Band.R, Band.G, Band.B}) {
            AlbedoMap map = surface.albedo(band);
            double fine = 0;
            for (double latitude = -60; latitude < 60; latitude += 1.7) {
                for (double longitude = 0; longitude < 360; longitude += 2.3) {
                    double here = map.at(latitude * DEG, longitude * DEG);
                    assertTrue(here > 0.01 && here < 1.1, body + " has an albedo of " + here);
                    fine = Math.max(fine, Math.abs(map.at(latitude * DEG, (longitude + 0.3) * DEG) / here - 1));
                }
            }
            assertTrue(fine > 0.002, body + " has no detail in " + band.name() + ": " + fine);
        }
    }

    @Test
    void theSameSeedGivesTheSameSurface() {
        Surface one = painted(Body.MARS);
        Surface again = Surface.invented(Body.MARS, 5);
        Surface other = Surface.invented(Body.MARS, 6);
        int different = 0;
        for (double longitude = 0; longitude < 6; longitude += 0.05) {
            assertEquals(one.red().at(0.2, longitude), again.red().at(0.2, longitude), 0);
            different += one.red().at(0.2, longitude) != other.red().at(0.2, longitude) ? 1 : 0;
        }
        assertTrue(different > 100, "another seed gives another surface");
    }

    /** The oval's longitude is the first number of the dice. */
    @Test
    void theGreatOvalIsBrightInRedAndDarkInBlue() {
        Surface surface = painted(Body.JUPITER);
        double oval = new Dice(5).next(0, 360) * DEG;
        double red = surface.red().at(-22.3 * DEG, oval);
        double blue = surface.blue().at(-22.3 * DEG, oval);
        double redAround = meanAround(surface.red(), oval);
        double blueAround = meanAround(surface.blue(), oval);
        assertTrue(red > 0.9 * redAround, "red " + red + " against " + redAround);
        assertTrue(blue < 0.5 * blueAround, "blue " + blue + " against " + blueAround);
    }

    private static double meanAround(AlbedoMap map, double longitude) {
        double sum = 0;
        for (int i = 0; i < 60; i++) {
            sum += map.at(-22.3 * DEG, longitude + (40 + 4 * i) * DEG) / 60;
        }
        return sum;
    }

    @Test
    void aDustyWorldHasItsContrastInRed() {
        Surface surface = painted(Body.MARS);
        double inRed = contrast(surface.red());
        double inBlue = contrast(surface.blue());
        assertTrue(inRed > 0.15, "red contrast " + inRed);
        assertTrue(inBlue < 0.75 * inRed, "blue contrast " + inBlue + ", red " + inRed);
    }

    private static double contrast(AlbedoMap map) {
        double sum = 0;
        double squares = 0;
        int count = 0;
        for (double latitude = -50; latitude < 50; latitude += 2) {
            for (double longitude = 0; longitude < 360; longitude += 3) {
                double value = map.at(latitude * DEG, longitude * DEG);
                sum += value;
                squares += value * value;
                count++;
            }
        }
        double mean = sum / count;
        return Math.sqrt(squares / count - mean * mean) / mean;
    }

    /** 100 000 numbers: the mean of a unit normal is good to 0.003, its variance to 0.0045; three times that. */
    @Test
    void diceAreFair() {
        Dice dice = new Dice(11);
        double[] moments = new double[4];
        int count = 100_000;
        for (int i = 0; i < count; i++) {
            double exact = dice.normal(i);
            double quick = dice.nearlyNormal(i + 1_000_000L);
            moments[0] += exact / count;
            moments[1] += exact * exact / count;
            moments[2] += quick / count;
            moments[3] += quick * quick / count;
        }
        assertEquals(0, moments[0], 0.01);
        assertEquals(1, moments[1], 0.0135);
        assertEquals(0, moments[2], 0.01);
        assertEquals(1, moments[3], 0.0135);
    }
}
