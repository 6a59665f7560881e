package org.epochrome.session.sessionfile;

import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.epochrome.colour.Tone;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Encoding;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Provenance;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.FileMark;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.HeldDisk;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;

/** From a session to the keys of its file. */
public final class SessionWriting {
    private final Path folder;

    /** @param folder of the file: paths are written as seen from there */
    SessionWriting(Path folder) {
        this.folder = folder.toAbsolutePath().normalize();
    }

    SessionSchema.Root root(Session s, String version) {
        Recipe r = s.recipe();
        return new SessionSchema.Root(
                SessionSchema.FORMAT,
                SessionSchema.VERSION,
                Provenance.TOOL + " " + version,
                r.body().displayName(),
                instant(r.epoch()),
                r.place()
                        .site()
                        .map(p -> new SessionSchema.Site(p.latitudeDeg(), p.longitudeDeg(), p.heightM()))
                        .orElse(null),
                r.place()
                        .air()
                        .map(a -> new SessionSchema.Air(a.pressureHpa(), a.temperatureC(), a.relativeHumidity()))
                        .orElse(null),
                setup(r.setup()),
                corrections(r.corrections()),
                alignment(r.alignment()),
                new SessionSchema.Assignment(
                        r.assignment().red(),
                        r.assignment().green(),
                        r.assignment().blue(),
                        r.assignment().luminance().orElse(null)),
                clock(r.frames().conventions().clock()),
                passbands(r.frames()),
                r.frames().conventions().encoding().isLinear()
                        ? null
                        : r.frames().conventions().encoding().word(),
                frames(r.frames()),
                look(s.look()),
                outputs(s.products()));
    }

    private static SessionSchema.Setup setup(Setup c) {
        return new SessionSchema.Setup(
                number(c.northDeg()), word(c.mirroring()), number(c.scaleArcsecPerPx()), word(c.mount()));
    }

    private static SessionSchema.Corrections corrections(Corrections c) {
        List<List<Double>> curve = c.spectrum().curve().stream()
                .map(p -> List.of(p.wavelengthNm(), p.response()))
                .toList();
        String light = CommandLineFormatter.light(c.spectrum());
        return new SessionSchema.Corrections(
                c.system().map(RotationSystem::key).orElse("zonal"),
                number(c.rotationPeriodDays()),
                c.turn(),
                c.dispersion(),
                c.airFlattening(),
                c.unsmear() == Extent.HALF ? null : Boolean.valueOf(c.unsmear() == Extent.ALL),
                c.moons(),
                light,
                curve.isEmpty() ? null : curve);
    }

    private static SessionSchema.Alignment alignment(Alignment a) {
        Map<String, List<Double>> shifts = new TreeMap<>();
        a.nudgesPx().forEach((what, by) -> shifts.put(what, List.of(by.x(), by.y())));
        return new SessionSchema.Alignment(
                a.witnesses().stream().sorted().map(SessionWriting::word).toList(), shifts, a.freeScale());
    }

    private static SessionSchema.Clock clock(NameClock c) {
        return c.equals(NameClock.UNSAID)
                ? null
                : new SessionSchema.Clock(
                        c.meaning().map(SessionWriting::word).orElse(null),
                        c.exposure().map(Object::toString).orElse(null),
                        c.utcOffset().getId());
    }

    private static Map<String, List<Double>> passbands(Frames frames) {
        Map<String, List<Double>> edges = new TreeMap<>();
        frames.conventions().passbands().forEach((band, p) -> edges.put(band, List.of(p.fromNm(), p.toNm())));
        return edges.isEmpty() ? null : new LinkedHashMap<>(edges);
    }

    private List<SessionSchema.Frame> frames(Frames frames) {
        return Stream.concat(
                        frames.all().stream()
                                .map(f -> frame(
                                        f.request(),
                                        f.head().file(),
                                        Optional.of(FileMark.of(f.head().file())),
                                        frames)),
                        frames.absent().stream()
                                .map(a -> frame(a.request(), a.request().file(), a.mark(), frames)))
                .toList();
    }

    private SessionSchema.Frame frame(FrameRequest request, Path file, Optional<FileMark> mark, Frames frames) {
        Optional<SheetRow> row = request.row();
        HeldDisk disk = frames.disks().get(file);
        return new SessionSchema.Frame(
                path(file),
                row.flatMap(SheetRow::band).or(request::band).orElse(null),
                row.flatMap(SheetRow::span).map(s -> s.start().toString()).orElse(null),
                row.flatMap(SheetRow::span).map(s -> s.end().toString()).orElse(null),
                row.map(SheetRow::source).orElse(null),
                row.flatMap(SheetRow::mirrored).orElse(null),
                row.flatMap(SheetRow::encoding).map(Encoding::word).orElse(null),
                frames.leftOut().contains(file) ? true : null,
                disk == null
                        ? null
                        : new SessionSchema.Disk(
                                disk.x(), disk.y(), disk.equatorialRadiusPx(), number(disk.northAngleDeg())),
                mark.map(FileMark::bytes).orElse(null),
                mark.map(FileMark::sha256).orElse(null));
    }

    public static SessionSchema.Look look(Look look) {
        Sharpening d = look.sharpening();
        Tone t = look.tone();
        return new SessionSchema.Look(
                new SessionSchema.White(
                        word(look.white().white()),
                        look.white()
                                .solar()
                                .map(g -> List.of(g.red(), g.green(), g.blue()))
                                .orElse(null)),
                new SessionSchema.Detail(
                        d.deblur(),
                        d.iterations(),
                        d.smoothing(),
                        d.gain(),
                        number(d.peakPx()),
                        number(d.peakArcsec()),
                        d.octaves(),
                        d.threshold(),
                        d.eachBand() ? "bands" : "luminance"),
                new SessionSchema.Tone(t.brightness(), t.black(), t.contrast(), t.saturation()),
                new SessionSchema.Framing(
                        word(look.framing().orientation()),
                        number(look.framing().margin()),
                        number(look.framing().enlarge()),
                        look.framing()
                                .canvas()
                                .map(c -> List.of(c.width(), c.height()))
                                .orElse(null),
                        look.framing().caption()));
    }

    private SessionSchema.Outputs outputs(Products p) {
        return new SessionSchema.Outputs(
                p.pictures().stream().map(this::path).toList(),
                p.floats() ? 32 : 16,
                p.reports().stream().map(this::path).toList(),
                p.map()
                        .map(m -> new SessionSchema.GlobeMap(
                                path(m.file()),
                                m.width().isPresent() ? (Integer) m.width().getAsInt() : null))
                        .orElse(null),
                p.turning()
                        .map(t -> new SessionSchema.Turning(
                                path(t.file()), instant(t.from()), instant(t.until()), t.count()))
                        .orElse(null));
    }

    /** A path as seen from the file's folder, with slashes; absolute if no way leads there. */
    private String path(Path path) {
        Path absolute = path.toAbsolutePath().normalize();
        Path seen = absolute.getRoot().equals(folder.getRoot()) ? folder.relativize(absolute) : absolute;
        return seen.toString().replace(seen.getFileSystem().getSeparator(), "/");
    }

    private static String instant(Optional<Instant> instant) {
        return instant.map(Instant::toString).orElse(null);
    }

    private static Double number(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }

    /** A constant as files name it: north-up for NORTH_UP. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
