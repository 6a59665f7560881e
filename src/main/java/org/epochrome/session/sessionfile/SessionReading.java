package org.epochrome.session.sessionfile;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.epochrome.align.Witness;
import org.epochrome.atmosphere.Air;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Session;
import org.epochrome.session.product.TurningFile;
import org.epochrome.session.recipe.AbsentFrame;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.FileMark;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.recipe.HeldDisk;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;
import org.epochrome.time.UtcText;

/** From the keys of a session file to the session: what is missing is as usual; finds its frames anew. */
final class SessionReading {
    private final Path folder;

    /** @param folder of the file: paths start from there */
    SessionReading(Path folder) {
        this.folder = folder;
    }

    /** @throws IllegalArgumentException if a value has no meaning; one sentence that says which */
    Session session(SessionSchema.Root root) {
        Body body = Body.named(required(root.body(), "body"))
                .orElseThrow(() -> new IllegalArgumentException("'" + root.body() + "' is not a planet"));
        List<SessionSchema.Frame> listed = required(root.frames(), "frames");
        Conventions conventions = conventions(root);
        List<DatedFrame> found = new ArrayList<>();
        List<AbsentFrame> absent = new ArrayList<>();
        for (SessionSchema.Frame frame : listed) {
            FrameRequest request = request(frame);
            try {
                found.addAll(Frames.found(List.of(request), conventions));
            } catch (FramesRefused e) {
                absent.add(absent(frame, request, e));
            }
        }
        if (found.isEmpty() && !absent.isEmpty()) {
            throw FramesRefused.absent(absent);
        }
        Set<Path> leftOut = new HashSet<>();
        Map<Path, HeldDisk> disks = new HashMap<>();
        for (SessionSchema.Frame frame : listed) {
            if (Boolean.TRUE.equals(frame.leftOut())) {
                leftOut.add(path(frame.file()));
            }
            if (frame.disk() != null) {
                disks.put(path(frame.file()), disk(frame.disk()));
            }
        }
        Recipe recipe = Recipe.usual(found, body)
                .with(new Frames(found, conventions, leftOut, disks, absent))
                .with(new Place(Optional.ofNullable(site(root.site())), Optional.ofNullable(air(root.air()))))
                .at(instant(root.epoch()));
        recipe = root.setup() == null ? recipe : recipe.with(setup(root.setup()));
        recipe = root.corrections() == null ? recipe : recipe.with(corrections(root.corrections(), body));
        recipe = root.alignment() == null ? recipe : recipe.with(alignment(root.alignment()));
        recipe = root.assignment() == null ? recipe : recipe.with(assignment(root.assignment()));
        return new Session(recipe, LookReading.look(root.look()), products(root.outputs()));
    }

    private static AbsentFrame absent(SessionSchema.Frame frame, FrameRequest request, FramesRefused why) {
        Optional<FileMark> mark = frame.bytes() == null || frame.sha256() == null
                ? Optional.empty()
                : Optional.of(new FileMark(frame.bytes(), frame.sha256()));
        Message problem = Files.exists(request.file())
                ? why.message()
                : Message.of("session.absent", request.file().getFileName());
        return new AbsentFrame(request, mark, problem);
    }

    private FrameRequest request(SessionSchema.Frame frame) {
        Path file = path(required(frame.file(), "file of a frame"));
        if ((frame.start() == null) != (frame.end() == null)) {
            throw new IllegalArgumentException("start and end of " + frame.file() + " must be given together");
        }
        Optional<RecordingSpan> span = instant(frame.start())
                .map(start -> new RecordingSpan(start, instant(frame.end()).orElseThrow()));
        Optional<String> band = Optional.ofNullable(frame.band());
        if (span.isEmpty() && frame.source() == null && frame.mirrored() == null && frame.encoding() == null) {
            return new FrameRequest(file, band, Optional.empty());
        }
        String source = or(frame.source(), "session");
        return new FrameRequest(
                file,
                Optional.empty(),
                Optional.of(new SheetRow(
                        file,
                        band,
                        span,
                        Optional.ofNullable(frame.mirrored()),
                        Optional.ofNullable(frame.encoding()).map(Encoding::of),
                        source)));
    }

    private static HeldDisk disk(SessionSchema.Disk d) {
        return new HeldDisk(
                required(d.x(), "x of a disk"),
                required(d.y(), "y of a disk"),
                required(d.equatorialRadiusPx(), "equatorialRadiusPx of a disk"),
                number(d.northAngleDeg()));
    }

    private static Conventions conventions(SessionSchema.Root root) {
        Map<String, Passband> passbands = new LinkedHashMap<>();
        or(root.passbandsNm(), Map.<String, List<Double>>of()).forEach((band, edges) -> {
            List<Double> pair = several(edges, 2, "edges of " + band);
            passbands.put(band, new Passband(pair.get(0), pair.get(1)));
        });
        Encoding encoding = root.encoding() == null ? Encoding.LINEAR : Encoding.of(root.encoding());
        SessionSchema.Clock c = root.clock();
        if (c == null) {
            return new Conventions(NameClock.UNSAID, passbands, encoding);
        }
        try {
            return new Conventions(
                    new NameClock(
                            Optional.ofNullable(c.meaning()).map(w -> constant(TimestampMeaning.class, w)),
                            Optional.ofNullable(c.exposure()).map(Duration::parse),
                            c.utcOffset() == null ? ZoneOffset.UTC : ZoneOffset.of(c.utcOffset())),
                    passbands,
                    encoding);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(
                    "the clock needs an exposure such as PT2M and a utcOffset such as +02:00", e);
        }
    }

    private static Site site(SessionSchema.Site s) {
        return s == null
                ? null
                : new Site(
                        required(s.latitudeDeg(), "latitudeDeg"),
                        required(s.longitudeDeg(), "longitudeDeg"),
                        or(s.heightM(), 0.0));
    }

    private static Air air(SessionSchema.Air a) {
        return a == null
                ? null
                : new Air(
                        required(a.pressureHpa(), "pressureHpa"),
                        required(a.temperatureC(), "temperatureC"),
                        required(a.relativeHumidity(), "relativeHumidity"));
    }

    private static Setup setup(SessionSchema.Setup c) {
        Setup usual = Setup.UNKNOWN;
        return new Setup(
                number(c.northDeg()),
                c.mirrored() == null ? usual.mirroring() : constant(Mirroring.class, c.mirrored()),
                number(c.scaleArcsecPerPx()),
                c.mount() == null ? usual.mount() : constant(Mount.class, c.mount()));
    }

    private static Corrections corrections(SessionSchema.Corrections c, Body body) {
        Corrections usual = Corrections.usual(body);
        return new Corrections(
                c.rotationSystem() == null ? usual.system() : system(c.rotationSystem(), body),
                number(c.rotationPeriodDays()),
                or(c.turn(), usual.turn()),
                or(c.dispersion(), usual.dispersion()),
                or(c.airFlattening(), usual.airFlattening()),
                c.unsmear() == null ? usual.unsmear() : c.unsmear() ? Extent.ALL : Extent.NONE,
                or(c.moons(), usual.moons()),
                spectrum(c));
    }

    private static Optional<RotationSystem> system(String word, Body body) {
        if (word.equals("zonal")) {
            return Optional.empty();
        }
        return Optional.of(body.systems().stream()
                .filter(s -> s.key().equals(word))
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException(body.displayName() + " has no rotationSystem '" + word + "'")));
    }

    private static Spectrum spectrum(SessionSchema.Corrections c) {
        if (c.response() != null) {
            return Spectrum.seenBy(c.response().stream()
                    .map(pair -> several(pair, 2, "a point of the response"))
                    .map(pair -> new Spectrum.Point(pair.get(0), pair.get(1)))
                    .toList());
        }
        return switch (or(c.light(), "camera")) {
            case "even" -> Spectrum.EVEN;
            case "sun" -> Spectrum.SUNLIGHT;
            case "camera" -> Spectrum.CAMERA;
            default ->
                throw new IllegalArgumentException("the light must be camera, sun or even, not '" + c.light() + "'");
        };
    }

    private static Alignment alignment(SessionSchema.Alignment a) {
        Set<Witness> witnesses = EnumSet.noneOf(Witness.class);
        or(a.witnesses(), List.of("limb", "detail", "physics"))
                .forEach(word -> witnesses.add(constant(Witness.class, word)));
        Map<String, PixelOffset> shifts = new HashMap<>();
        or(a.shiftsPx(), Map.<String, List<Double>>of()).forEach((what, by) -> {
            List<Double> pair = several(by, 2, "the shift of " + what);
            shifts.put(what, new PixelOffset(pair.get(0), pair.get(1)));
        });
        return new Alignment(witnesses, shifts, or(a.freeScale(), false));
    }

    private static Assignment assignment(SessionSchema.Assignment a) {
        return new Assignment(
                or(a.red(), "R"), or(a.green(), "G"), or(a.blue(), "B"), Optional.ofNullable(a.luminance()));
    }

    private Products products(SessionSchema.Outputs o) {
        if (o == null) {
            return Products.NONE;
        }
        int bits = or(o.tiffBits(), 16);
        if (bits != 16 && bits != 32) {
            throw new IllegalArgumentException("tiffBits must be 16 or 32, not " + bits);
        }
        return new Products(
                or(o.pictures(), List.<String>of()).stream().map(this::path).toList(),
                bits == 32,
                or(o.reports(), List.<String>of()).stream().map(this::path).toList(),
                Optional.ofNullable(o.map())
                        .map(m -> new MapFile(
                                path(required(m.file(), "file of the map")),
                                m.widthPx() == null ? OptionalInt.empty() : OptionalInt.of(m.widthPx()))),
                Optional.ofNullable(o.turning())
                        .map(t -> new TurningFile(
                                path(required(t.file(), "file of the animation")),
                                instant(t.from()),
                                instant(t.until()),
                                or(t.pictures(), TurningFile.USUAL_COUNT))));
    }

    /** The path that a text names. */
    Path path(String text) {
        return folder.resolve(text).normalize();
    }

    private static Optional<Instant> instant(String text) {
        return Optional.ofNullable(text).map(UtcText::parse);
    }

    static OptionalDouble number(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    static <T> T or(T value, T usual) {
        return value == null ? usual : value;
    }

    static <T> List<T> several(List<T> values, int count, String what) {
        if (values == null || values.size() != count || values.contains(null)) {
            throw new IllegalArgumentException(what + " needs " + count + " numbers");
        }
        return values;
    }

    private static <T> T required(T value, String key) {
        if (value == null) {
            throw new IllegalArgumentException("it has no " + key);
        }
        return value;
    }

    static <E extends Enum<E>> E constant(Class<E> type, String word) {
        for (E constant : type.getEnumConstants()) {
            if (SessionWriting.word(constant).equals(word.toLowerCase(Locale.ROOT))) {
                return constant;
            }
        }
        throw new IllegalArgumentException("'" + word + "' is unknown");
    }
}
