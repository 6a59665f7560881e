package org.epochrome.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.time.RecordingSpan;

/** Jupiter in three small frames, sound or spoilt. */
public final class SmallEvening {
    static final int SIDE = 160;
    static final Map<String, Integer> START_S = Map.of("R", 0, "G", 125, "B", 250);

    private static final Instant BEGIN = Instant.parse("2024-12-18T19:20:00Z");
    private static final Map<String, Plane> COUNTS = photographed();

    private final Path folder;

    public SmallEvening(Path folder) {
        this.folder = folder;
    }

    private static Map<String, Plane> photographed() {
        BandSetting setting = new BandSetting(0.9, 2.6, 0.9);
        Scene scene = new Scene(
                Surfaces.jupiter(),
                instant -> Ephemeris.aspect(Body.JUPITER, instant, Optional.empty()),
                Map.of("R", setting, "G", setting, "B", setting),
                0.01);
        Camera camera = Camera.withNorthAngle(
                SIDE, SIDE, 0.44, 11, false, Ephemeris.aspect(Body.JUPITER, BEGIN, Optional.empty()));
        Map<String, Plane> counts = new TreeMap<>();
        int k = 0;
        for (Band band : List.of(Band.R, Band.G, Band.B)) {
            Instant start = BEGIN.plusSeconds(START_S.get(band.name()));
            Camera there = camera.offsetBy(1.3 * k, -0.7 * k);
            Shot shot = new Shot(
                    band,
                    new RecordingSpan(start, start.plusSeconds(120)),
                    there,
                    1,
                    List.of(),
                    new Noise(200, 0.1, k));
            counts.put(band.name(), scene.photograph(shot).sixteenBit());
            k++;
        }
        return counts;
    }

    /** Pixels of the sound frame, a copy, counts of 16 bits. */
    static Plane counts(String band) {
        return COUNTS.get(band).copy();
    }

    Path folder() {
        return folder;
    }

    Path file(String name) {
        return folder.resolve(name);
    }

    /** Band, times and planet as a header tells them. */
    static List<FitsCard> cards(String band) {
        String start = BEGIN.plusSeconds(START_S.get(band)).toString().replace("Z", "");
        return List.of(
                new FitsCard("DATE-OBS", start, ""),
                new FitsCard("EXPTIME", 120.0, ""),
                new FitsCard("FILTER", band, ""),
                new FitsCard("OBJECT", "Jupiter", ""));
    }

    /** The header with one keyword said differently, or left out if the value is null. */
    static List<FitsCard> cardsBut(String band, String keyword, Object value) {
        List<FitsCard> cards = new ArrayList<>();
        for (FitsCard card : cards(band)) {
            if (!card.keyword().equals(keyword)) {
                cards.add(card);
            } else if (value != null) {
                cards.add(new FitsCard(keyword, value, ""));
            }
        }
        return cards;
    }

    /** A sound frame. */
    public Path sound(String band) {
        return frame("jupiter-" + band + ".fits", counts(band), cards(band));
    }

    Path frame(String name, Plane counts, List<FitsCard> cards) {
        FrameWriter.write(file(name), counts, cards, true);
        return file(name);
    }

    /** A frame of floats, which can hold no data. */
    Path floats(String name, Plane counts, List<FitsCard> cards) {
        Plane plane = counts.copy();
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] /= 65535;
        }
        FitsWriter.write(file(name), List.of(plane), cards, List.of(), true);
        return file(name);
    }

    /** A header alone, without pixels behind it. */
    Path header(String name, String... cards) {
        StringBuilder text = new StringBuilder();
        for (String card : cards) {
            text.append(String.format("%-80s", card));
        }
        text.append(String.format("%-80s", "END"));
        while (text.length() % 2880 != 0) {
            text.append(' ');
        }
        return text(name, text.toString());
    }

    Path text(String name, String content) {
        try {
            return Files.writeString(file(name), content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The first half of a file under another name. */
    Path half(Path whole, String name) {
        try {
            byte[] bytes = Files.readAllBytes(whole);
            return Files.write(file(name), Arrays.copyOf(bytes, bytes.length / 2));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Plane noise() {
        Random random = new Random(77);
        Plane plane = new Plane(SIDE, SIDE);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) (2000 + 300 * random.nextGaussian());
        }
        return plane;
    }

    /** The frame moved to the right; what is uncovered is sky. */
    static Plane moved(Plane plane, int dx) {
        Plane result = new Plane(SIDE, SIDE);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                result.set(x, y, plane.at(Math.min(SIDE - 1, Math.max(0, x - dx)), y));
            }
        }
        return result;
    }

    /** The frame overexposed: everything brighter by a factor, clipped at full scale. */
    static Plane overexposed(Plane plane, float factor) {
        Plane result = plane.copy();
        for (int i = 0; i < result.data().length; i++) {
            result.data()[i] = Math.min(65535, factor * result.data()[i]);
        }
        return result;
    }

    /** Names of all that lies in the folder, with their sizes. */
    Map<String, Long> contents() {
        Map<String, Long> found = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.toList()) {
                found.put(folder.relativize(file).toString(), Files.isDirectory(file) ? -1 : Files.size(file));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found;
    }
}
