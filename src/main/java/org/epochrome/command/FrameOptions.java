package org.epochrome.command;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.epochrome.image.Passband;
import org.epochrome.io.ClockMeaning;
import org.epochrome.io.DatedFrame;
import org.epochrome.io.FrameRefused;
import org.epochrome.io.FrameRequest;
import org.epochrome.io.FrameSource;
import org.epochrome.io.NameClock;
import org.epochrome.io.Sheet;
import org.epochrome.time.LeapSeconds;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Which frames, and what is said about their bands and times. */
final class FrameOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Parameters(
            paramLabel = "FRAME",
            arity = "0..*",
            description = "Stacked images: FITS, TIFF or PNG, linear, one per band and recording."
                    + " Band and time are read from the sheet, the FITS header or the file name.")
    private List<Path> frames = new ArrayList<>();

    @Option(
            names = {"-s", "--sheet"},
            paramLabel = "FILE.csv",
            description =
                    "A table with the columns file, band, start, end (UTC); or interval instead of start and end"
                            + " (2031-05-02T21:14:05Z/PT2M). File names are relative to the sheet; FRAMEs may then be left out.")
    private Path sheet;

    @Option(names = "--red", paramLabel = "FILE", description = "A frame in red light (repeatable).")
    private List<Path> red = new ArrayList<>();

    @Option(names = "--green", paramLabel = "FILE", description = "A frame in green light (repeatable).")
    private List<Path> green = new ArrayList<>();

    @Option(names = "--blue", paramLabel = "FILE", description = "A frame in blue light (repeatable).")
    private List<Path> blue = new ArrayList<>();

    @Option(
            names = "--luminance",
            paramLabel = "FILE",
            description = "A frame through a clear filter (repeatable): the fine brightness comes from it.")
    private List<Path> luminance = new ArrayList<>();

    @Option(
            names = "--colour",
            paramLabel = "FILE",
            description = "A frame of a one-shot-colour camera, red, green and blue at once (repeatable).")
    private List<Path> colour = new ArrayList<>();

    @Option(
            names = "--exposure",
            paramLabel = "LENGTH",
            converter = Texts.Length.class,
            description =
                    "How long each recording ran, where nothing else tells it: PT2M is two minutes, PT90S 90 seconds.")
    private Duration exposure;

    @Option(
            names = "--clock",
            paramLabel = "start|middle|end",
            description = "Which moment of the recording the time in a file name is.")
    private String clock;

    @Option(
            names = "--utc-offset",
            paramLabel = "HH:MM",
            converter = Texts.Offset.class,
            description =
                    "How far the clock in file names is ahead of UTC, such as +02:00 or -05:00. Default: it shows UTC.")
    private ZoneOffset utcOffset = ZoneOffset.UTC;

    @Option(
            names = "--passband",
            paramLabel = "BAND=FROM-TO",
            converter = {IdentityText.class, Texts.Edges.class},
            description = "Wavelengths that a filter lets through, in nm (repeatable), such as R=600-690. Defaults:"
                    + " R 600-690, G 500-580, B 400-500.")
    private Map<String, Passband> passbands = new LinkedHashMap<>();

    /** Map keys as they are written. */
    static final class PlainText implements picocli.CommandLine.ITypeConverter<String> {
        @Override
        public String convert(String text) {
            return text.strip();
        }
    }

    /** Map keys as they are written, in capitals. */
    static final class IdentityText implements picocli.CommandLine.ITypeConverter<String> {
        @Override
        public String convert(String text) {
            return text.strip().toUpperCase(Locale.ROOT);
        }
    }

    /**
     * The frames with their bands and times.
     *
     * @throws FramesRefused if some are refused; all of them are named
     */
    List<DatedFrame> find() {
        FrameSource source = new FrameSource(
                new NameClock(meaning(), Optional.ofNullable(exposure), utcOffset),
                passbands,
                LeapSeconds::taiMinusUtcS);
        List<DatedFrame> found = new ArrayList<>();
        List<FrameRefused> refused = new ArrayList<>();
        for (FrameRequest request : requests()) {
            try {
                found.add(source.find(request));
            } catch (FrameRefused e) {
                refused.add(e);
            }
        }
        if (!refused.isEmpty()) {
            throw new FramesRefused(refused);
        }
        return found;
    }

    private Optional<ClockMeaning> meaning() {
        if (clock == null) {
            return Optional.empty();
        }
        for (ClockMeaning meaning : ClockMeaning.values()) {
            if (meaning.name().equalsIgnoreCase(clock)) {
                return Optional.of(meaning);
            }
        }
        throw new ParameterException(spec.commandLine(), "--clock is start, middle or end, not '" + clock + "'.");
    }

    private List<FrameRequest> requests() {
        Map<Path, FrameRequest> requests = new LinkedHashMap<>();
        Optional<Sheet> table = Optional.ofNullable(sheet).map(Sheet::read);
        for (Path file : frames) {
            add(
                    requests,
                    table.flatMap(t -> t.rowFor(file)).map(FrameRequest::of).orElse(FrameRequest.of(file)));
        }
        add(requests, red, "R", table);
        add(requests, green, "G", table);
        add(requests, blue, "B", table);
        add(requests, luminance, "L", table);
        add(requests, colour, "colour", table);
        if (requests.isEmpty()) {
            table.ifPresent(t -> t.rows().forEach(row -> add(requests, FrameRequest.of(row))));
        }
        if (requests.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(), "No frames were given; name the stacked images, or a --sheet that lists them.");
        }
        return List.copyOf(requests.values());
    }

    private void add(Map<Path, FrameRequest> requests, List<Path> files, String band, Optional<Sheet> table) {
        for (Path file : files) {
            add(requests, new FrameRequest(file, Optional.of(band), table.flatMap(t -> t.rowFor(file))));
        }
    }

    private void add(Map<Path, FrameRequest> requests, FrameRequest request) {
        if (requests.put(request.file().toAbsolutePath().normalize(), request) != null) {
            throw new ParameterException(
                    spec.commandLine(), request.file() + " was given twice; name each frame once.");
        }
    }
}
