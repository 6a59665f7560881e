package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.Sheet;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Options for the frames, their bands and their times. */
public final class FrameOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Parameters(paramLabel = "FRAME", arity = "0..*", descriptionKey = "frames")
    private List<Path> frames = new ArrayList<>();

    @Option(
            names = {"-s", "--sheet"},
            paramLabel = "FILE.csv")
    private Path sheet;

    @Option(names = "--red", paramLabel = "FILE")
    private List<Path> red = new ArrayList<>();

    @Option(names = "--green", paramLabel = "FILE")
    private List<Path> green = new ArrayList<>();

    @Option(names = "--blue", paramLabel = "FILE")
    private List<Path> blue = new ArrayList<>();

    @Option(names = "--luminance", paramLabel = "FILE")
    private List<Path> luminance = new ArrayList<>();

    @Option(names = "--colour", paramLabel = "FILE")
    private List<Path> colour = new ArrayList<>();

    @Option(names = "--band", paramLabel = "FILE=BAND", converter = FileArgument.Text.class)
    private List<FileArgument> bands = new ArrayList<>();

    @Option(names = "--recorded", paramLabel = "FILE=START/END", converter = FileArgument.Text.class)
    private List<FileArgument> times = new ArrayList<>();

    @Option(names = "--mirrored-frame", paramLabel = "FILE=yes|no", converter = FileArgument.Text.class)
    private List<FileArgument> mirrors = new ArrayList<>();

    @Option(
            names = "--encoding-frame",
            paramLabel = "FILE=linear|srgb|gamma=X",
            converter = FileArgument.EncodedFile.class)
    private List<FileArgument> encodings = new ArrayList<>();

    @Mixin
    private ClockOptions clock;

    /** The session files among the FRAMEs. */
    List<Path> sessions() {
        return frames.stream().filter(SessionFile::isName).toList();
    }

    /**
     * The frames with their bands and times.
     *
     * @throws org.epochrome.session.recipe.FramesRefused if some are refused; all of them are named
     */
    public List<DatedFrame> find() {
        return over(Frames.of(List.of())).all();
    }

    /** The sheet and the session files: what is read beside the frames. */
    public List<Path> tables() {
        return Stream.concat(Stream.ofNullable(sheet), sessions().stream()).toList();
    }

    /** The frames that were typed, beside those of a session. */
    Frames over(Frames before) {
        Map<Path, FrameRequest> requests = new LinkedHashMap<>();
        before.all().forEach(f -> requests.put(canonical(f.request().file()), f.request()));
        typed(before.all().isEmpty())
                .forEach((key, r) ->
                        requests.merge(key, r, (old, said) -> new FrameRequest(old.file(), said.band(), said.row())));
        times.forEach(word -> say(requests, word, true));
        bands.forEach(word -> say(requests, word, false));
        mirrors.forEach(word -> sayMirrored(requests, word));
        encodings.forEach(word -> sayEncoded(requests, word));
        Conventions conventions = clock.over(before.conventions());
        return before.with(Frames.found(List.copyOf(requests.values()), conventions))
                .with(conventions)
                .forgetting(a -> requests.containsKey(canonical(a.request().file())));
    }

    private Map<Path, FrameRequest> typed(boolean needed) {
        Map<Path, FrameRequest> requests = new LinkedHashMap<>();
        Optional<Sheet> table = Optional.ofNullable(sheet).map(Sheet::read);
        for (Path file : frames) {
            if (!SessionFile.isName(file)) {
                add(
                        requests,
                        table.flatMap(t -> t.rowFor(file)).map(FrameRequest::of).orElse(FrameRequest.of(file)));
            }
        }
        add(requests, red, "R", table);
        add(requests, green, "G", table);
        add(requests, blue, "B", table);
        add(requests, luminance, "L", table);
        add(requests, colour, "colour", table);
        if (requests.isEmpty()) {
            table.ifPresent(t -> t.rows().forEach(row -> add(requests, FrameRequest.of(row))));
        }
        if (requests.isEmpty() && needed) {
            throw new ParameterException(spec.commandLine(), Message.text("option.noFrames"));
        }
        return requests;
    }

    private void add(Map<Path, FrameRequest> requests, List<Path> files, String band, Optional<Sheet> table) {
        for (Path file : files) {
            add(requests, new FrameRequest(file, Optional.of(band), table.flatMap(t -> t.rowFor(file))));
        }
    }

    private void add(Map<Path, FrameRequest> requests, FrameRequest request) {
        if (requests.put(canonical(request.file()), request) != null) {
            throw new ParameterException(spec.commandLine(), Message.text("option.frameTwice", request.file()));
        }
    }

    /** Adds to a request what was typed about its file alone. */
    private void say(Map<Path, FrameRequest> requests, FileArgument word, boolean time) {
        Path key = word.among(requests.keySet(), spec);
        FrameRequest r = requests.get(key);
        Optional<SheetRow> row = r.row();
        String option = time ? "--recorded" : "--band";
        Optional<String> band = time ? row.flatMap(SheetRow::band).or(r::band) : Optional.of(word.word());
        Optional<RecordingSpan> span = time ? Optional.of(word.interval(spec)) : row.flatMap(SheetRow::span);
        boolean plain = !time && row.isEmpty();
        requests.put(
                key,
                plain
                        ? new FrameRequest(r.file(), band, Optional.empty())
                        : new FrameRequest(
                                r.file(),
                                Optional.empty(),
                                Optional.of(new SheetRow(
                                        r.file(),
                                        band,
                                        span,
                                        row.flatMap(SheetRow::mirrored),
                                        row.flatMap(SheetRow::encoding),
                                        option))));
    }

    private void sayMirrored(Map<Path, FrameRequest> requests, FileArgument word) {
        Path key = word.among(requests.keySet(), spec);
        FrameRequest r = requests.get(key);
        Optional<SheetRow> row = r.row();
        requests.put(
                key,
                new FrameRequest(
                        r.file(),
                        r.band(),
                        Optional.of(new SheetRow(
                                r.file(),
                                row.flatMap(SheetRow::band),
                                row.flatMap(SheetRow::span),
                                Optional.of(word.mirrored(spec)),
                                row.flatMap(SheetRow::encoding),
                                row.map(SheetRow::source).orElse("--mirrored-frame")))));
    }

    private void sayEncoded(Map<Path, FrameRequest> requests, FileArgument word) {
        Path key = word.among(requests.keySet(), spec);
        FrameRequest r = requests.get(key);
        SheetRow row =
                r.row().orElseGet(() -> new SheetRow(r.file(), Optional.empty(), Optional.empty(), "--encoding-frame"));
        requests.put(
                key, new FrameRequest(r.file(), r.band(), Optional.of(row.with(Optional.of(word.encoding(spec))))));
    }

    private static Path canonical(Path file) {
        return file.toAbsolutePath().normalize();
    }
}
