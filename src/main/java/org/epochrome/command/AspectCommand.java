package org.epochrome.command;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.epochrome.command.option.PlaceOptions;
import org.epochrome.command.option.Texts;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.session.report.JsonReport;
import org.epochrome.session.report.Outputs;
import org.epochrome.text.Message;
import org.epochrome.time.LeapSeconds;
import org.epochrome.time.UtcText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How a planet stands. */
@Command(name = "aspect", sortOptions = false)
final class AspectCommand implements Callable<Integer> {
    private static final int MOST_ROWS = 100_000;
    private static final Message SUNLIGHT = Message.of("aspect.sunlight");

    @Spec
    private CommandSpec spec;

    @Mixin
    private PlaceOptions place;

    @Option(
            names = {"-b", "--body"},
            paramLabel = "PLANET",
            required = true,
            converter = Texts.Planet.class)
    private List<Body> bodies = new ArrayList<>();

    @Option(names = "--at", paramLabel = "UTC", required = true, converter = Texts.Utc.class)
    private Instant at;

    @Option(names = "--until", paramLabel = "UTC", converter = Texts.Utc.class)
    private Instant until;

    @Option(names = "--every", paramLabel = "STEP", converter = Texts.Length.class, defaultValue = "PT1H")
    private Duration every;

    @Option(names = "--csv")
    private boolean csv;

    @Option(
            names = {"-r", "--report"},
            paramLabel = "FILE.json")
    private Path report;

    @Option(names = "--overwrite")
    private boolean overwrite;

    @Override
    public Integer call() {
        if (report != null && (bodies.size() > 1 || until != null)) {
            throw new ParameterException(spec.commandLine(), Message.text("aspect.reportOfMany"));
        }
        if (report != null) {
            Outputs.checkReport(report, overwrite);
        }
        if (until == null && !csv) {
            for (Body body : bodies) {
                page(aspect(body, at));
            }
        } else {
            table();
        }
        if (report != null) {
            Outputs.writeReport(report, report(aspect(bodies.get(0), at)), overwrite);
        }
        return 0;
    }

    private Aspect aspect(Body body, Instant when) {
        return Ephemeris.aspect(body, when, place.site());
    }

    private static void page(Aspect a) {
        System.out.println(Message.text("aspect.title", a.body().displayName(), UtcText.format(a.utc())));
        for (RotationSystem s : a.body().systems().stream().sorted().toList()) {
            line(
                    Message.text("aspect.centralMeridian") + (s == RotationSystem.SINGLE ? "" : " " + s.key()),
                    "%.3f\u00b0",
                    a.centralMeridianDeg(s));
        }
        line(
                Message.text("aspect.subEarthLatitude"),
                Message.of("aspect.latitudes", a.subEarthLatitudeDeg(), a.subEarthLatitudeCentricDeg()));
        line(
                Message.text("aspect.subSolarLatitude"),
                Message.of("aspect.latitudes", a.subSolarLatitudeDeg(), a.subSolarLatitudeCentricDeg()));
        line(Message.text("aspect.subSolarLongitude"), "%.3f\u00b0", a.subSolarLongitudeDeg());
        line(Message.text("aspect.poleAngle"), "%+.3f\u00b0", a.poleAngleDeg());
        line(
                Message.text("aspect.diameter"),
                Message.of("aspect.diameters", a.equatorialDiameterArcsec(), a.polarDiameterArcsec()));
        line(Message.text("aspect.phaseAngle"), "%.2f\u00b0", a.phaseAngleDeg());
        line(
                Message.text("aspect.phaseDefect"),
                Message.of("aspect.phaseDefectAt", a.phaseDefectArcsec(), a.phaseDefectAngleDeg()));
        line(Message.text("aspect.distance"), Message.of("aspect.distanceAndTime", a.distanceAu(), a.lightTimeS()));
        line(Message.text("aspect.sunDistance"), "%.5f au", a.sunDistanceAu());
        line(Message.text("aspect.rightAscension"), "%.5f\u00b0", a.rightAscensionDeg());
        line(Message.text("aspect.declination"), "%+.5f\u00b0", a.declinationDeg());
        line(Message.text("aspect.elongation"), "%.1f\u00b0", a.elongationDeg());
        a.horizontal().ifPresent(h -> {
            line(Message.text("aspect.horizontal"), Message.of("aspect.horizontalAt", h.altitudeDeg(), h.azimuthDeg()));
            line(Message.text("aspect.parallacticAngle"), "%+.2f\u00b0", h.parallacticAngleDeg());
        });
        warnings(a).forEach(w -> System.out.println("  " + w));
    }

    private static String report(Aspect a) {
        return JsonReport.of(a, warnings(a), Version.NUMBER);
    }

    private static List<String> warnings(Aspect a) {
        List<String> warnings = new ArrayList<>();
        if (a.nearSun()) {
            warnings.add(Message.text("aspect.nearSun", a.body().displayName(), SUNLIGHT));
        }
        if (!LeapSeconds.covers(a.utc())) {
            warnings.add(Message.text(
                    "aspect.leapSeconds", LeapSeconds.validUntil().toString().substring(0, 10)));
        }
        return warnings;
    }

    private static void line(String name, String format, double value) {
        line(name, String.format(Locale.ROOT, format, value));
    }

    private static void line(String name, Object value) {
        System.out.printf("  %-26s %s%n", name, value);
    }

    private void table() {
        Instant last = until == null ? at : until;
        if (last.isBefore(at)) {
            throw new ParameterException(spec.commandLine(), Message.text("aspect.untilBeforeAt"));
        }
        if (Duration.between(at, last).toNanos() / 1e9 / (every.toNanos() / 1e9) * bodies.size() > MOST_ROWS) {
            throw new ParameterException(spec.commandLine(), Message.text("aspect.tooManyRows", MOST_ROWS));
        }
        AspectTable table = new AspectTable(csv, System.out);
        table.head();
        boolean near = false;
        // A table that nobody reads any more need not be finished.
        for (Instant t = at; !t.isAfter(last) && !System.out.checkError(); t = t.plus(every)) {
            for (Body body : bodies) {
                Aspect a = aspect(body, t);
                near |= a.nearSun();
                table.row(a);
            }
        }
        if (near) {
            System.err.println(Message.text("aspect.rowsNearSun", SUNLIGHT));
        }
    }
}
