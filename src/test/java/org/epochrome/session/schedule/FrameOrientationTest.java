package org.epochrome.session.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Outline;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is read under the cursor must be what the graticule is drawn by. */
class FrameOrientationTest {
    private static final Disk DISK = new Disk(300, 280, 120, -17, true);

    @ParameterizedTest
    @EnumSource
    void theMiddleIsTheSubEarthPoint(Body body) {
        Aspect aspect = aspect(body);
        FrameOrientation sight = FrameOrientation.at(aspect, DISK, body.defaultSystem(), DISK.x(), DISK.y());
        assertEquals(0, sight.fromCentreArcsec(), 1e-9);
        FrameOrientation.Spot spot = sight.spot().orElseThrow();
        assertEquals(aspect.subEarthLatitudeDeg(), spot.latitudeDeg(), 1e-6);
        double off = Disk.wrapDeg(spot.longitudeDeg() - aspect.centralMeridianDeg(body.defaultSystem()));
        assertEquals(0, off, 1e-6);
    }

    @ParameterizedTest
    @EnumSource
    void linesOfTheGraticuleHaveTheirNumbers(Body body) {
        Aspect aspect = aspect(body);
        View view = new View(Globe.of(aspect), DISK);
        double prime = FrameOrientation.primeMeridianEastDeg(aspect, body.defaultSystem());
        List<List<double[]>> lines = Outline.graticule(view, prime, 30);
        int checked = 0;
        for (List<double[]> line : lines) {
            double[] place = line.get(line.size() / 2);
            Optional<FrameOrientation.Spot> spot = FrameOrientation.at(
                            aspect, DISK, body.defaultSystem(), place[0], place[1])
                    .spot();
            if (spot.isPresent()) {
                double latitude = Math.abs(
                        spot.get().latitudeDeg() / 30 - Math.rint(spot.get().latitudeDeg() / 30));
                double longitude = Math.abs(
                        spot.get().longitudeDeg() / 30 - Math.rint(spot.get().longitudeDeg() / 30));
                assertTrue(Math.min(latitude, longitude) < 1e-9, spot.get().toString());
                checked++;
            }
        }
        assertTrue(checked > 8, "only " + checked + " lines were checked");
    }

    /** Half of the apparent diameter, by the aspect itself. */
    @ParameterizedTest
    @EnumSource
    void theLimbIsHalfADiameterOff(Body body) {
        Aspect aspect = aspect(body);
        double[] east = Outline.limb(new View(Globe.of(aspect), DISK)).get(0);
        FrameOrientation sight = FrameOrientation.at(aspect, DISK, body.defaultSystem(), east[0], east[1]);
        assertEquals(aspect.equatorialDiameterArcsec() / 2, sight.fromCentreArcsec(), 1e-6);
    }

    private static Aspect aspect(Body body) {
        return Ephemeris.aspect(body, Instant.parse("2024-12-18T19:24:30Z"), Optional.empty());
    }
}
