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
import org.epochrome.time.LeapSeconds;
import org.epochrome.time.UtcText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How a planet stands. */
@Command(
        name = "aspect",
        sortOptions = false,
        description = {
            "Prints the aspect of a planet, as seen from Earth, at one instant or as a table over time.",
            "",
            "P is the position angle of the planet's north pole, from celestial north through east. An image that is"
                    + " not mirrored and has celestial north up has P as its north angle.",
        },
        footer = {
            "",
            "Examples:",
            "  aspect --body mars --at 2031-05-02T21:14Z --site 46.2,8.5,480",
            "  aspect --body jupiter --body saturn --at 2031-05-02T20:00Z --until 2031-05-03T02:00Z --every PT30M",
            "",
            "Columns of the table: CM central meridian in System I, II, III (or the planet's only one), De sub-Earth"
                    + " latitude (planetographic), P, phase angle, diam apparent diameter in arcsec, elong distance from"
                    + " the Sun, alt altitude and az azimuth without refraction, q parallactic angle; all angles in"
                    + " degrees.",
        })
final class AspectCommand implements Callable<Integer> {
    private static final int MOST_ROWS = 100_000;
    private static final String SUNLIGHT =
            "Sunlight in a telescope blinds instantly and can start a fire; use the safeguards required by the"
                    + " telescope's manufacturer and your local rules, or do not observe.";

    @Spec
    private CommandSpec spec;

    @Mixin
    private PlaceOptions place;

    @Option(
            names = {"-b", "--body"},
            paramLabel = "PLANET",
            required = true,
            converter = Texts.Planet.class,
            description = "The planet: " + PlanetLists.ALL + " (repeatable).")
    private List<Body> bodies = new ArrayList<>();

    @Option(
            names = "--at",
            paramLabel = "UTC",
            required = true,
            converter = Texts.Utc.class,
            description = "The instant, or the first instant of a table, such as 2031-05-02T21:14:05Z.")
    private Instant at;

    @Option(
            names = "--until",
            paramLabel = "UTC",
            converter = Texts.Utc.class,
            description = "The last instant of a table. Without it, one aspect is printed in full.")
    private Instant until;

    @Option(
            names = "--every",
            paramLabel = "STEP",
            converter = Texts.Length.class,
            defaultValue = "PT1H",
            description = "Step of the table, such as PT10M for ten minutes. Default: one hour.")
    private Duration every;

    @Option(
            names = "--csv",
            description = "Print the table as comma-separated values; without --until, one row per planet.")
    private boolean csv;

    @Option(
            names = {"-r", "--report"},
            paramLabel = "FILE.json",
            description = "JSON file for the aspect of one planet at one instant.")
    private Path report;

    @Option(names = "--overwrite", description = "Replace the report if it exists.")
    private boolean overwrite;

    @Override
    public Integer call() {
        if (report != null && (bodies.size() > 1 || until != null)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--report needs one planet and one instant; give --body once and leave out --until.");
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
        System.out.printf("%s at %s%n", a.body().displayName(), UtcText.format(a.utc()));
        for (RotationSystem s : a.body().systems().stream().sorted().toList()) {
            line(
                    "central meridian" + (s == RotationSystem.SINGLE ? "" : " " + s.key()),
                    "%.3f\u00b0",
                    a.centralMeridianDeg(s));
        }
        line(
                "sub-Earth latitude",
                "%+.3f\u00b0 planetographic, %+.3f\u00b0 planetocentric",
                a.subEarthLatitudeDeg(),
                a.subEarthLatitudeCentricDeg());
        line(
                "sub-solar latitude",
                "%+.3f\u00b0 planetographic, %+.3f\u00b0 planetocentric",
                a.subSolarLatitudeDeg(),
                a.subSolarLatitudeCentricDeg());
        line("sub-solar longitude", "%.3f\u00b0", a.subSolarLongitudeDeg());
        line("position angle of pole, P", "%+.3f\u00b0", a.poleAngleDeg());
        line(
                "apparent diameter",
                "%.3f\" equatorial, %.3f\" polar",
                a.equatorialDiameterArcsec(),
                a.polarDiameterArcsec());
        line("phase angle", "%.2f\u00b0", a.phaseAngleDeg());
        line("phase defect", "%.2f\" at position angle %.1f\u00b0", a.phaseDefectArcsec(), a.phaseDefectAngleDeg());
        line("distance", "%.5f au (light time %.1f s)", a.distanceAu(), a.lightTimeS());
        line("distance from the Sun", "%.5f au", a.sunDistanceAu());
        line("right ascension", "%.5f\u00b0", a.rightAscensionDeg());
        line("declination", "%+.5f\u00b0", a.declinationDeg());
        line("elongation from the Sun", "%.1f\u00b0", a.elongationDeg());
        a.horizontal().ifPresent(h -> {
            line("altitude, azimuth", "%.2f\u00b0, %.2f\u00b0 (no refraction)", h.altitudeDeg(), h.azimuthDeg());
            line("parallactic angle", "%+.2f\u00b0", h.parallacticAngleDeg());
        });
        warnings(a).forEach(w -> System.out.println("  " + w));
    }

    private static String report(Aspect a) {
        return JsonReport.of(a, warnings(a), Version.NUMBER);
    }

    private static List<String> warnings(Aspect a) {
        List<String> warnings = new ArrayList<>();
        if (a.nearSun()) {
            warnings.add("Caution: " + a.body().displayName() + " is within 30 degrees of the Sun. " + SUNLIGHT);
        }
        if (!LeapSeconds.covers(a.utc())) {
            warnings.add("Note: the instant is outside the leap-second table (to "
                    + LeapSeconds.validUntil().toString().substring(0, 10)
                    + "); each leap second missing from the table would shift the result by one second.");
        }
        return warnings;
    }

    private static void line(String name, String format, Object... values) {
        System.out.printf("  %-26s %s%n", name, String.format(Locale.ROOT, format, values));
    }

    private void table() {
        Instant last = until == null ? at : until;
        if (last.isBefore(at)) {
            throw new ParameterException(spec.commandLine(), "--until is before --at; give a later instant.");
        }
        if (Duration.between(at, last).toNanos() / 1e9 / (every.toNanos() / 1e9) * bodies.size() > MOST_ROWS) {
            throw new ParameterException(
                    spec.commandLine(),
                    "The table would have more than " + MOST_ROWS + " rows; give a longer --every.");
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
            System.err.println("Caution: in some rows the planet is within 30 degrees of the Sun. " + SUNLIGHT);
        }
    }
}
