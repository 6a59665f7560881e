package org.epochrome.session.sessionfile;

import static org.epochrome.session.sessionfile.ChoiceKeys.word;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.choice.RecordChoice;
import org.epochrome.colour.Gains;
import org.epochrome.colour.White;
import org.epochrome.colour.finish.ChannelOffsets;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.LevelPoints;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.colour.finish.ToneCurve;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Session;
import org.epochrome.session.product.TurningFile;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.PixelOffset;
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
        all.assignment();
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
        choices(frames.conventions().clock(), NameClock.UNKNOWN);
        choices(
                frames.conventions(),
                Conventions.UNKNOWN.with(
                        Conventions::clock, frames.conventions().clock()));
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
            f.givenMirrored().ifPresent(m -> say("mirrored-frame", file(f) + "=" + (m ? "yes" : "no")));
            f.givenEncoding().ifPresent(e -> say("encoding-frame", file(f) + "=" + e.word()));
            ManualDisk d = frames.disks().get(f.head().file());
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
        choices(r.setup(), Setup.UNKNOWN);
        choices(r.corrections(), Corrections.usual(r.body()));
        choices(r.alignment(), Alignment.USUAL);
    }

    /** The options of a record of choices whose values differ from the usual ones. */
    private void choices(Record record, Record usual) {
        for (RecordChoice choice : RecordChoice.of(record.getClass())) {
            if (!choice.of(record).equals(choice.of(usual))) {
                say(choice, choice.of(record));
            }
        }
    }

    private void say(RecordChoice choice, Object value) {
        if (choice.name().equals("system") && value.equals(Optional.empty())) {
            say(choice.option(), "zonal");
        } else if (value instanceof Boolean || value instanceof Extent) {
            boolean on = value.equals(true) || value == Extent.ALL;
            words.add((on ? "--" : "--no-") + choice.option());
        } else if (value instanceof Optional<?> optional) {
            optional.ifPresent(v -> say(choice.option(), text(v)));
        } else if (value instanceof OptionalDouble number) {
            number.ifPresent(v -> say(choice.option(), v));
        } else if (value instanceof OptionalInt number) {
            number.ifPresent(v -> say(choice.option(), v));
        } else if (value instanceof Map<?, ?> map) {
            new TreeMap<>(map).forEach((of, v) -> say(choice.option(), of + "=" + text(v)));
        } else {
            say(choice.option(), text(value));
        }
    }

    /** A value as its option takes it. */
    private static String text(Object value) {
        if (value instanceof RotationSystem system) {
            return system.key();
        }
        if (value instanceof Enum<?> constant) {
            return word(constant);
        }
        if (value instanceof Collection<?> all) {
            return all.stream().map(CommandLineFormatter::text).collect(Collectors.joining(","));
        }
        if (value instanceof Spectrum.Point p) {
            return p.wavelengthNm() + "=" + p.response();
        }
        if (value instanceof PixelOffset by) {
            return by.x() + "," + by.y();
        }
        if (value instanceof Passband p) {
            return p.fromNm() + "-" + p.toNm();
        }
        if (value instanceof Encoding encoding) {
            return encoding.word();
        }
        if (value instanceof Framing.Canvas c) {
            return c.width() + "x" + c.height();
        }
        if (value instanceof Gains g) {
            return g.red() + "," + g.green() + "," + g.blue();
        }
        if (value instanceof ChannelOffsets o) {
            return o.red() + "," + o.green() + "," + o.blue();
        }
        if (value instanceof LevelPoints l) {
            return l.black() + "," + l.mid() + "," + l.white();
        }
        if (value instanceof Framing.Centre c) {
            return c.right() + "," + c.down();
        }
        if (value instanceof ToneCurve t) {
            return t.quarter() + "," + t.half() + "," + t.threeQuarters();
        }
        return value.toString();
    }

    private void assignment() {
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
                        g -> say("white-gains", text(g)),
                        () -> sayUnless(
                                look.white().white() == White.PHOTOMETRIC,
                                "white",
                                word(look.white().white())));
        Sharpening d = look.sharpening();
        d.peakPx().ifPresent(px -> say("detail-scale", px));
        d.peakArcsec().ifPresent(arcsec -> say("detail-scale", arcsec + "arcsec"));
        for (RecordChoice choice : RecordChoice.of(Sharpening.class)) {
            Object value = choice.of(d);
            sayUnless(
                    !choice.option().equals("detail-curve") || value.equals(choice.of(usual.sharpening())),
                    choice.option(),
                    choice.key() + "=" + (value instanceof Integer n ? n.doubleValue() : value));
        }
        sayUnless(d.detailOf() == usual.sharpening().detailOf(), "detail-of", word(d.detailOf()));
        choices(look.tone(), usual.tone());
        choices(look.grading(), usual.grading());
        choices(look.framing(), usual.framing());
    }

    private void products() {
        Products p = session.products();
        p.pictures().forEach(file -> say("out", file));
        sayUnless(!p.floats(), "depth", 32);
        p.reports().forEach(file -> say("report", file));
        p.map().ifPresent(m -> {
            say("map", m.file());
            choices(m, MapFile.usual(m.file()));
        });
        p.turning().ifPresent(t -> {
            say("turning", t.file());
            choices(t, TurningFile.usual(t.file()));
        });
    }
}
