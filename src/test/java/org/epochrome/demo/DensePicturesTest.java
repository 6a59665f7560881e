package org.epochrome.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whole pictures against those of truth/raycast, made by other means. */
class DensePicturesTest {
    private static final int SIZE = 48;

    /**
     * Where the limb runs along the rows of samples, it is off by up to half a sample, 1/18 px here, which after the blur
     * is 0.016 of light at worst and a quarter of that in pictures that were not made to show it; 0.0001 was found in
     * the mean square.
     */
    @ParameterizedTest
    @CsvSource({
        "JUPITER, 200, 3, 190, 2.5, 20, true, 0.9, 2.0, 24.0, 22.5",
        "SATURN, 40, -24, 45, -21, -130, false, 0.8, 1.6, 23.2, 24.1",
        "VENUS, 310, 5, 250, -2, 65, false, 1.0, 2.4, 23.5, 23.5",
    })
    void agrees(
            Body body,
            double meridian,
            double subEarth,
            double sunMeridian,
            double subSolar,
            double northAngle,
            boolean mirrored,
            double minnaertK,
            double fwhmPx,
            double x,
            double y)
            throws IOException {
        AlbedoMap map = AlbedoMap.of(1440, 720, (latitude, east) -> {
            double lat = Math.toRadians(latitude);
            double lon = Math.toRadians(east);
            return 0.6 + 0.25 * Math.cos(lat) * Math.cos(3 * lon - 1) + 0.1 * Math.sin(4 * lat);
        });
        HandMade hand = HandMade.facing(body, meridian, subEarth)
                .sunAt(sunMeridian, subSolar)
                .acrossArcsec(4);
        Camera camera = hand.camera(SIZE, SIZE, northAngle, mirrored).offsetBy(x - 23.5, y - 23.5);
        Plane picture = hand.picture(map, minnaertK, fwhmPx, camera);

        List<String[]> rows = rows(body);
        assertEquals(SIZE, rows.size());
        double squares = 0;
        for (int row = 0; row < SIZE; row++) {
            assertEquals(SIZE + 2, rows.get(row).length);
            for (int column = 0; column < SIZE; column++) {
                double wanted = Double.parseDouble(rows.get(row)[column + 2]);
                assertEquals(wanted, picture.at(column, row), 0.004, "pixel " + column + ", " + row);
                squares += Math.pow(wanted - picture.at(column, row), 2);
            }
        }
        assertEquals(0, Math.sqrt(squares / (SIZE * SIZE)), 0.0003);
    }

    private static List<String[]> rows(Body body) throws IOException {
        try (InputStream in = DensePicturesTest.class.getResourceAsStream("/truth/raycast/rows.csv")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(line -> line.split(","))
                    .filter(row -> row[0].equalsIgnoreCase(body.name()))
                    .toList();
        }
    }
}
