package org.epochrome.robustness;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.Sheet;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.read.FrameSource;
import org.epochrome.io.read.ResponseCurve;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.text.Refusal;
import org.epochrome.time.LeapSeconds;

/** The kinds of files that are read, with sound examples. */
enum HostileInput {
    FITS(".fits", HostileInput::frame),
    GZIP(".fits.gz", HostileInput::frame),
    TILES(".fits", HostileInput::frame),
    TIFF(".tif", HostileInput::frame),
    PNG(".png", HostileInput::frame),
    SHEET(".csv", Sheet::read),
    RESPONSE(".csv", ResponseCurve::read),
    SESSION(".json", SessionFile::read);

    private static final Path FILES = Path.of("src/test/resources/truth/files");
    private static final int LONGEST_SENTENCE = 1000;

    private static final String A_SHEET = """
            file,band,start,end,mid,exposure,interval,mirrored,encoding
            a.fits,R,2031-05-02T21:14:05Z,2031-05-02T21:16:05Z,,,,yes,srgb
            b.fits,G,2031-05-02 21:18:05,,,120.5,,no,
            c.fits,B,,,2031-05-02T23:24:05+02:00,PT2M,,,gamma=2.2
            "d, e.fits",Ha,,,,,2031-05-02T21:14:05Z/PT2M,,
            """;
    private static final String A_RESPONSE = "400,0.5\n450,0.62\n500,0.8\n600,0.7\n700,0.4\n800,0.1\n";
    private static final String A_SESSION = """
            {"format": "epochrome-session", "version": 1, "body": "Jupiter", "epoch": "2031-05-02T21:14:05Z",
             "site": {"latitudeDeg": 46.2, "longitudeDeg": 8.5, "heightM": 480},
             "air": {"pressureHpa": 950, "temperatureC": 4, "relativeHumidity": 0.5},
             "setup": {"northDeg": 12, "mirrored": "no", "scaleArcsecPerPx": 0.2, "mount": "equatorial"},
             "corrections": {"rotationSystem": "II", "turn": true, "unsmear": false, "response": [[400, 0.5], [700, 0.8]]},
             "alignment": {"witnesses": ["limb", "detail"], "shiftsPx": {"R": [0.5, -0.2]}, "freeScale": false},
             "clock": {"meaning": "start", "exposure": "PT2M", "utcOffset": "+02:00"},
             "passbandsNm": {"H": [650, 660]},
             "frames": [{"file": "FRAME", "band": "R", "start": "2031-05-02T21:14:05Z", "end": "2031-05-02T21:16:05Z",
               "disk": {"x": 10, "y": 11, "equatorialRadiusPx": 5}, "bytes": 3, "sha256": "00"}],
             "look": {"white": {"balance": "solar", "gains": [1, 1, 1]}, "tone": {"black": 0.01}},
             "outputs": {"pictures": ["a.png"], "tiffBits": 16, "map": {"file": "m.png", "widthPx": 1440}}}
            """;

    private final String suffix;
    private final Consumer<Path> reading;

    HostileInput(String suffix, Consumer<Path> reading) {
        this.suffix = suffix;
        this.reading = reading;
    }

    String suffix() {
        return suffix;
    }

    private static void frame(Path file) {
        FrameReader.read(file);
        new FrameSource(NameClock.UNKNOWN, Map.of(), LeapSeconds::taiMinusUtcS).find(FrameRequest.of(file));
    }

    /** Sound files of this kind. */
    List<byte[]> seeds() {
        return switch (this) {
            case FITS ->
                Stream.concat(
                                Stream.of(timed()),
                                files(".fits").filter(f -> !isTiled(f)).map(HostileInput::bytes))
                        .toList();
            case TILES ->
                files(".fits")
                        .filter(HostileInput::isTiled)
                        .map(HostileInput::bytes)
                        .toList();
            case GZIP, TIFF, PNG -> files(suffix).map(HostileInput::bytes).toList();
            case SHEET -> List.of(text(A_SHEET), text(A_SHEET.replace(',', ';')));
            case RESPONSE -> List.of(text(A_RESPONSE));
            case SESSION ->
                List.of(text(A_SESSION.replace(
                        "FRAME", FILES.resolve("uint16.fits").toAbsolutePath().toString())));
        };
    }

    private static Stream<Path> files(String suffix) {
        try (Stream<Path> all = Files.list(FILES)) {
            return all.filter(f -> f.toString().endsWith(suffix)).sorted().toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A frame whose header tells its times in several ways, and how it lies on the sky. */
    private static byte[] timed() {
        try {
            Path file = Files.createTempFile("timed", ".fits");
            List<FitsCard> cards = List.of(
                    new FitsCard("DATE-OBS", "2031-05-02T21:14:05", ""),
                    new FitsCard("DATE-END", "2031-05-02T21:16:05", ""),
                    new FitsCard("MJD-AVG", 63354.885, ""),
                    new FitsCard("EXPTIME", 120.0, ""),
                    new FitsCard("TIMESYS", "TT", ""),
                    new FitsCard("TIMEUNIT", "s", ""),
                    new FitsCard("FILTER", "R", ""),
                    new FitsCard("OBJECT", "Jupiter", ""),
                    new FitsCard("CTYPE1", "RA---TAN", ""),
                    new FitsCard("CD1_1", -2.5e-5, ""),
                    new FitsCard("CD2_2", 2.5e-5, ""));
            FitsWriter.write(file, List.of(Plane.filled(20, 18, 7)), cards, List.of(), true);
            byte[] bytes = Files.readAllBytes(file);
            Files.delete(file);
            return bytes;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isTiled(Path file) {
        return file.getFileName().toString().startsWith("tiles");
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /**
     * How the program answers to a file.
     *
     * @param refused whether the file was refused; otherwise it was read
     * @param fault what is wrong: anything but a value or a sentence that refuses the file; empty if nothing
     */
    record Answer(boolean refused, Optional<String> fault) {}

    /** Reads a file as the program would. */
    Answer answer(Path file) {
        PrintStream err = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        try (PrintStream there = new PrintStream(said, true, StandardCharsets.UTF_8)) {
            System.setErr(there);
            reading.accept(file);
        } catch (Refusal refused) {
            return new Answer(true, faultOf(refused));
        } catch (Throwable e) {
            return new Answer(false, Optional.of(e.toString()));
        } finally {
            System.setErr(err);
        }
        return new Answer(
                false, Optional.of(said.toString(StandardCharsets.UTF_8)).filter(text -> !text.isEmpty()));
    }

    private static Optional<String> faultOf(Refusal refused) {
        String sentences = refused.getMessage();
        boolean sound =
                sentences.lines().allMatch(s -> s.endsWith(".") && s.length() > 15 && s.length() < LONGEST_SENTENCE)
                        && sentences.chars().noneMatch(c -> c != '\n' && Character.isISOControl(c))
                        && Stream.of("Exception", "java.", "does not fit into").noneMatch(sentences::contains);
        return sound ? Optional.empty() : Optional.of("no sentence: " + sentences);
    }
}
