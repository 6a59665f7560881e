package org.epochrome.demo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.Sheet;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.read.FrameSource;
import org.epochrome.time.LeapSeconds;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sessions that are shipped: written anew they are the shipped ones, and the readers understand them. */
class DemoSessionsTest {
    private static final Path SHIPPED = Path.of("demo-data");

    @TempDir
    private static Path folder;

    private static DemoSession jupiter;

    @BeforeAll
    static void write() {
        jupiter = Shipped.jupiter();
        DemoSessions.write(folder, false);
    }

    @Test
    void theShippedFilesAreTheseFiles() throws IOException {
        List<String> names = names(folder);
        assertEquals(names(SHIPPED), names);
        assertEquals(23, names.size());
        for (String name : names) {
            if (name.endsWith(".png")) { // packed as the zlib of each Java has it
                Plane shipped = FrameReader.read(SHIPPED.resolve(name)).planes().get(0);
                Plane written = FrameReader.read(folder.resolve(name)).planes().get(0);
                assertArrayEquals(shipped.data(), written.data(), name);
            } else {
                assertEquals(-1, Files.mismatch(SHIPPED.resolve(name), folder.resolve(name)), name);
            }
        }
    }

    @Test
    void theyStaySmall() throws IOException {
        long bytes = 0;
        for (String name : names(folder)) {
            bytes += Files.size(folder.resolve(name));
        }
        assertTrue(bytes < 4_000_000, bytes + " bytes");
    }

    private static List<String> names(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> root.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void theHeadersOfJupiterTellBandAndTime() {
        Map<String, String> starts = Map.of("R", "19:21:25", "G", "19:23:30", "B", "19:25:35");
        for (String band : List.of("R", "G", "B")) {
            DatedFrame frame = source().find(FrameRequest.of(folder.resolve("jupiter/jupiter-" + band + ".fits")));
            Instant start = Instant.parse("2024-12-18T" + starts.get(band) + "Z");
            assertEquals(
                    new RecordingSpan(start, start.plusSeconds(120)),
                    frame.timing().span());
            assertEquals(band, frame.band().band().orElseThrow().name());
            assertEquals(Optional.of(Body.JUPITER), frame.object());
        }
    }

    @Test
    void theSheetOfMarsTellsBandAndTime() {
        Sheet sheet = Sheet.read(folder.resolve("mars/session.csv"));
        assertEquals(6, sheet.rows().size());
        Instant start = Instant.parse("2022-10-26T01:57:35Z");
        for (SheetRow row : sheet.rows()) {
            DatedFrame frame = source().find(FrameRequest.of(row));
            assertEquals(
                    new RecordingSpan(start, start.plusSeconds(180)),
                    frame.timing().span());
            start = start.plusSeconds(190);
        }
        String bands =
                sheet.rows().stream().map(row -> row.band().orElseThrow()).collect(Collectors.joining());
        assertEquals("RGBRGB", bands);
    }

    @Test
    void theSheetOfSaturnHoldsThreeRoundsInThreeFormats() {
        Sheet sheet = Sheet.read(folder.resolve("saturn/session.csv"));
        String bands =
                sheet.rows().stream().map(row -> row.band().orElseThrow()).collect(Collectors.joining());
        assertEquals("RGBRGBRGB", bands);
        DemoSession saturn = Shipped.saturn();
        int upsideDown = 0;
        for (SheetRow row : sheet.rows()) {
            Shot shot = saturn.shots().get(row.file().getFileName().toString());
            assertEquals(
                    shot.span(), source().find(FrameRequest.of(row)).timing().span());
            upsideDown += Math.abs(saturn.scene().disk(shot).northAngleDeg()) > 90 ? 1 : 0;
        }
        assertEquals(3, upsideDown);
    }

    private static FrameSource source() {
        return new FrameSource(NameClock.UNKNOWN, Map.of(), LeapSeconds::taiMinusUtcS);
    }

    @Test
    void levelsAreThoseOfAGoodExposure() throws IOException {
        for (String name : names(folder)) {
            if (name.endsWith(".md") || name.endsWith(".csv")) {
                continue;
            }
            Plane frame = FrameReader.read(folder.resolve(name)).planes().get(0);
            float least = Float.MAX_VALUE;
            float most = 0;
            for (float value : frame.data()) {
                least = Math.min(least, value);
                most = Math.max(most, value);
            }
            assertTrue(least > 0 && least < 0.02 * 65535, name + " has " + least);
            assertTrue(most > 0.65 * 65535 && most < 0.95 * 65535, name + " has " + most);
        }
    }

    @Test
    void theEpochIsTheMiddleAndTheTruthLiesOnTheGreenFrame() {
        List<Instant> middles = jupiter.shots().values().stream()
                .map(shot -> shot.span().mid())
                .sorted()
                .toList();
        assertEquals(jupiter.epoch(), new RecordingSpan(middles.get(0), middles.get(2)).mid());
        assertEquals(Band.G, jupiter.reference().band());
        TrueDisk green = jupiter.scene().disk(jupiter.reference());
        List<Rendered> truth = Shipped.truth(jupiter);
        assertEquals(3, truth.size());
        for (Rendered plane : truth) {
            assertEquals(green.x(), plane.disk().x(), 1e-9);
            assertEquals(green.y(), plane.disk().y(), 1e-9);
            assertEquals(11, plane.disk().northAngleDeg(), 1e-6);
        }
    }

    @Test
    void filesAreNotReplacedUnasked() {
        assertThrows(OutputRefused.class, () -> jupiter.write(folder.resolve("jupiter"), false));
    }
}
