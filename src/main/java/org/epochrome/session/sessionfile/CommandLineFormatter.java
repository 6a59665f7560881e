package org.epochrome.session.sessionfile;

import static org.epochrome.session.sessionfile.SessionWriting.word;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Session;
import org.epochrome.session.product.TurningFile;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.HeldDisk;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;

/** The words of the command line that does what a session asks for; what is as usual is left unsaid. */
public final class CommandLineFormatter {
    private final Session session;
    private final List<String> words = new ArrayList<>(List.of("combine"));

    private CommandLineFormatter(Session session) {
        this.session = session;
    }

    /** The words that follow the program's name. */
    public static List<String> of(Session session) {
        CommandLineFormatter all = new CommandLineFormatter(session);
        all.frames();
        all.circumstances();
        all.corrections();
        all.alignment();
        all.look();
        all.products();
        return List.copyOf(all.words);
    }

    /** Words as a line for a POSIX shell. */
    public static String line(List<String> words) {
        return words.stream()
                .map(w -> w.matches("[A-Za-z0-9_@%+=:,./-]+") ? w : "'" + w.replace("'", "'\\''") + "'")
                .collect(Collectors.joining(" "));
    }

    private void say(String option, Object value) {
        words.add("--" + option + "=" + value);
    }

    private void sayUnless(boolean usual, String option, Object value) {
        if (!usual) {
            say(option, value);
        }
    }

    private void frames() {
        Frames frames = session.recipe().frames();
        NameClock clock = frames.conventions().clock();
        clock.meaning().ifPresent(m -> say("clock", word(m)));
        clock.exposure().ifPresent(e -> say("exposure", e));
        sayUnless(clock.utcOffset().equals(NameClock.UNSAID.utcOffset()), "utc-offset", clock.utcOffset());
        new TreeMap<>(frames.conventions().passbands())
                .forEach((band, p) -> say("passband", band + "=" + p.fromNm() + "-" + p.toNm()));
        sayUnless(
                frames.conventions().encoding().isLinear(),
                "encoding",
                frames.conventions().encoding().word());
        frames.all().forEach(f -> words.add(file(f)));
        for (DatedFrame f : frames.all()) {
            f.request()
                    .row()
                    .flatMap(SheetRow::band)
                    .or(() -> f.request().band())
                    .ifPresent(band -> say("band", file(f) + "=" + band));
            f.request()
                    .row()
                    .flatMap(SheetRow::span)
                    .ifPresent(span -> say("recorded", file(f) + "=" + span.start() + "/" + span.end()));
            f.saidMirrored().ifPresent(m -> say("mirrored-frame", file(f) + "=" + (m ? "yes" : "no")));
            f.saidEncoding().ifPresent(e -> say("encoding-frame", file(f) + "=" + e.word()));
            HeldDisk d = frames.disks().get(f.head().file());
            if (d != null) {
                String north =
                        d.northAngleDeg().isPresent() ? "," + d.northAngleDeg().getAsDouble() : "";
                say("disk", file(f) + "=" + d.x() + "," + d.y() + "," + d.equatorialRadiusPx() + north);
            }
            if (frames.leftOut().contains(f.head().file())) {
                say("leave-out", file(f));
            }
        }
    }

    private static String file(DatedFrame frame) {
        Path file = frame.head().file();
        String text = file.toString();
        return text.startsWith("-") ? Path.of(".", text).toString() : text;
    }

    private void circumstances() {
        Recipe r = session.recipe();
        say("body", r.body().displayName());
        r.place().site().ifPresent(s -> say("site", s.latitudeDeg() + "," + s.longitudeDeg() + "," + s.heightM()));
        r.place().air().ifPresent(a -> {
            say("pressure", a.pressureHpa());
            say("temperature", a.temperatureC());
            say(
                    "humidity",
                    new BigDecimal(Double.toString(a.relativeHumidity()))
                            .movePointRight(2)
                            .toPlainString());
        });
        r.epoch().ifPresent(e -> say("epoch", e));
        Setup c = r.setup();
        number("north", c.northDeg());
        sayUnless(c.mirroring() == Mirroring.AUTO, "mirrored", word(c.mirroring()));
        number("scale", c.scaleArcsecPerPx());
        sayUnless(c.mount() == Mount.EQUATORIAL, "mount", word(c.mount()));
    }

    private void number(String option, OptionalDouble value) {
        value.ifPresent(v -> say(option, v));
    }

    private void flag(boolean value, boolean usual, String option) {
        if (value != usual) {
            words.add(value ? "--" + option : "--no-" + option);
        }
    }

    private void corrections() {
        Corrections c = session.recipe().corrections();
        Corrections usual = Corrections.usual(session.recipe().body());
        sayUnless(
                c.system().equals(usual.system()),
                "rotation-system",
                c.system().map(RotationSystem::key).orElse("zonal"));
        c.rotationPeriodDays().ifPresent(days -> say("rotation-period", Double.toString(days)));
        flag(c.turn(), usual.turn(), "turn");
        flag(c.dispersion(), usual.dispersion(), "dispersion");
        flag(c.airFlattening(), usual.airFlattening(), "air-flattening");
        if (c.unsmear() != usual.unsmear()) {
            words.add(c.unsmear() == Extent.ALL ? "--unsmear" : "--no-unsmear");
        }
        flag(c.moons(), usual.moons(), "moons");
        if (!c.spectrum().curve().isEmpty()) {
            say(
                    "response",
                    c.spectrum().curve().stream()
                            .map(p -> p.wavelengthNm() + "=" + p.response())
                            .collect(Collectors.joining(",")));
        } else {
            sayUnless(c.spectrum().equals(usual.spectrum()), "light", light(c.spectrum()));
        }
    }

    /** The word for a light that was not made from a response curve. */
    static String light(Spectrum spectrum) {
        return spectrum.equals(Spectrum.EVEN) ? "even" : spectrum.equals(Spectrum.SUNLIGHT) ? "sun" : "camera";
    }

    private void alignment() {
        Alignment a = session.recipe().alignment();
        sayUnless(
                a.witnesses().equals(Alignment.USUAL.witnesses()),
                "witness",
                a.witnesses().stream().sorted().map(w -> word(w)).collect(Collectors.joining(",")));
        new TreeMap<>(a.nudgesPx()).forEach((what, by) -> say("shift", what + "=" + by.x() + "," + by.y()));
        flag(a.freeScale(), Alignment.USUAL.freeScale(), "free-scale");
        Assignment bands = session.recipe().assignment();
        Assignment usual = Assignment.usual(session.recipe().frames().used());
        sayUnless(
                bands.colours().equals(usual.colours()),
                "assign",
                "R=" + bands.red() + ",G=" + bands.green() + ",B=" + bands.blue());
        sayUnless(bands.equals(usual), "luminance-from", bands.luminance().orElse("none"));
    }

    private void look() {
        Look look = session.look();
        Look usual = Look.DEFAULT;
        look.white()
                .solar()
                .ifPresentOrElse(
                        g -> say("white-gains", g.red() + "," + g.green() + "," + g.blue()),
                        () -> sayUnless(
                                look.white().white() == White.PHOTOMETRIC,
                                "white",
                                word(look.white().white())));
        Sharpening d = look.sharpening();
        number("detail-scale", d.peakPx());
        d.peakArcsec().ifPresent(arcsec -> say("detail-scale", arcsec + "arcsec"));
        Sharpening plain = usual.sharpening();
        detail("deblur", d.deblur(), plain.deblur());
        detail("iterations", d.iterations(), plain.iterations());
        detail("smoothing", d.smoothing(), plain.smoothing());
        detail("gain", d.gain(), plain.gain());
        detail("octaves", d.octaves(), plain.octaves());
        detail("threshold", d.threshold(), plain.threshold());
        sayUnless(!d.eachBand(), "detail-of", "bands");
        Tone t = look.tone();
        sayUnless(t.brightness() == usual.tone().brightness(), "brightness", t.brightness());
        sayUnless(t.black() == usual.tone().black(), "black", t.black());
        sayUnless(t.contrast() == usual.tone().contrast(), "contrast", t.contrast());
        sayUnless(t.saturation() == usual.tone().saturation(), "saturation", t.saturation());
        Framing f = look.framing();
        sayUnless(f.orientation() == usual.framing().orientation(), "orient", word(f.orientation()));
        number("margin", f.margin());
        number("enlarge", f.enlarge());
        f.canvas().ifPresent(c -> say("canvas", c.width() + "x" + c.height()));
        flag(f.caption(), false, "caption");
    }

    private void detail(String key, double value, double usual) {
        sayUnless(value == usual, "detail-curve", key + "=" + value);
    }

    private void products() {
        Products p = session.products();
        p.pictures().forEach(file -> say("out", file));
        sayUnless(!p.floats(), "depth", 32);
        p.reports().forEach(file -> say("report", file));
        p.map().ifPresent(m -> {
            say("map", m.file());
            m.width().ifPresent(w -> say("map-width", w));
        });
        p.turning().ifPresent(t -> {
            say("turning", t.file());
            t.from().ifPresent(from -> say("turning-from", from));
            t.until().ifPresent(until -> say("turning-until", until));
            sayUnless(t.count() == TurningFile.USUAL_COUNT, "turning-frames", t.count());
        });
    }
}
