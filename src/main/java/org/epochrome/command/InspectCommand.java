package org.epochrome.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.epochrome.command.option.FrameOptions;
import org.epochrome.command.option.PlaceOptions;
import org.epochrome.command.option.Texts;
import org.epochrome.command.terminal.TerminalPage;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Band;
import org.epochrome.io.file.OverwriteGuard;
import org.epochrome.io.file.VisibleText;
import org.epochrome.io.head.HeaderGeometry;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.report.Inspection;
import org.epochrome.session.report.JsonReport;
import org.epochrome.session.report.Outputs;
import org.epochrome.time.UtcText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What each file is. */
@Command(
        name = "inspect",
        sortOptions = false,
        description = {
            "Describes each frame: its size, depth, band, times and their source, the planet's aspect and the fitted"
                    + " disk.",
            "",
            "Run it before combine to check that bands and times are right.",
        },
        footer = {
            "",
            "Examples:",
            "  inspect jup_R.fits jup_G.fits jup_B.fits",
            "  inspect --body mars --north 31 --sheet session.csv",
        })
final class InspectCommand implements Callable<Integer> {
    @Mixin
    private FrameOptions frames;

    @Mixin
    private PlaceOptions place;

    @Option(
            names = {"-b", "--body"},
            paramLabel = "PLANET",
            converter = Texts.Planet.class,
            description = "The planet, if the FITS header (OBJECT) does not name it. Without it, only the file is"
                    + " described.")
    private Body body;

    @Option(
            names = {"-n", "--north"},
            paramLabel = "DEG|auto",
            defaultValue = "auto",
            converter = Texts.North.class,
            description = "North angle of the frames: from image up to the planet's north pole, counter-clockwise"
                    + " positive. " + PlanetLists.WITHOUT_AXIS + " need it for a reliable disk fit.")
    private OptionalDouble north = OptionalDouble.empty();

    @Option(
            names = {"-r", "--report"},
            paramLabel = "FILE.json",
            description = "JSON file for the same information.")
    private Path report;

    @Option(names = "--overwrite", description = "Replace the report if it exists.")
    private boolean overwrite;

    @Override
    public Integer call() {
        List<DatedFrame> found = frames.find();
        if (report != null) {
            List<Path> inputs = new ArrayList<>(frames.tables());
            found.forEach(f -> inputs.add(f.head().file()));
            OverwriteGuard.check(List.of(report), inputs);
            Outputs.checkReport(report, overwrite);
        }
        List<Inspection> inspections = found.stream()
                .map(f -> Inspection.of(
                        f, Optional.ofNullable(body).or(f::object), new Place(place.site(), Optional.empty()), north))
                .toList();
        TerminalPage page = TerminalPage.out();
        inspections.forEach(i -> print(i, page));
        if (report != null) {
            Outputs.writeReport(report, JsonReport.of(inspections, Version.NUMBER), overwrite);
        }
        return 0;
    }

    private static void print(Inspection i, TerminalPage page) {
        DatedFrame f = i.frame();
        page.println(f.head().file().toString());
        page.printf(
                "  image   %d x %d, %s, %s%n",
                f.head().width(),
                f.head().height(),
                f.head().planeCount() == 3 ? "colour" : "grey",
                f.head().depth());
        page.printf(
                "  band    %s (%s)%n",
                f.band().band().map(InspectCommand::described).orElse("one-shot colour"),
                f.band().source());
        page.printf(
                "  time    %s to %s (%s)%n",
                UtcText.format(f.timing().span().start()),
                UtcText.format(f.timing().span().end()),
                f.timing().source());
        HeaderGeometry header = f.head().geometry();
        if (header.isKnown()) {
            page.println("  header  " + described(header));
        }
        i.aspect().ifPresent(a -> {
            StringBuilder cm = new StringBuilder();
            for (RotationSystem s : a.body().systems().stream().sorted().toList()) {
                cm.append(String.format(
                        Locale.ROOT,
                        " %s%.2f\u00b0",
                        s == RotationSystem.SINGLE ? "" : s.key() + " ",
                        a.centralMeridianDeg(s)));
            }
            page.printf(
                    "  aspect  %s, central meridian%s, P %.2f\u00b0, diameter %.2f\"%n",
                    a.body().displayName(), cm, a.poleAngleDeg(), a.equatorialDiameterArcsec());
        });
        i.disk()
                .ifPresent(d -> page.printf(
                        "  disk    centre %.2f, %.2f (\u00b1 %.2f px), equatorial radius %.2f px, north %.1f\u00b0, blur %.1f px%n",
                        d.disk().x(),
                        d.disk().y(),
                        d.centreSigmaPx(),
                        d.disk().equatorialRadiusPx(),
                        d.disk().northAngleDeg(),
                        d.shading().blurPx()));
        i.notes().forEach(note -> page.println(VisibleText.message("  note    " + note)));
    }

    /** A band with its wavelengths. */
    private static String described(Band band) {
        return String.format(
                Locale.ROOT,
                "%s, %.0f to %.0f nm",
                band.name(),
                band.passband().fromNm(),
                band.passband().toNm());
    }

    private static String described(HeaderGeometry header) {
        List<String> parts = new ArrayList<>();
        header.scaleArcsecPerPx()
                .ifPresent(scale ->
                        parts.add(String.format(Locale.ROOT, "scale %.5f\"/px (%s)", scale, header.scaleSource())));
        header.celestialNorthDeg()
                .ifPresent(north -> parts.add(
                        String.format(Locale.ROOT, "celestial north %.2f\u00b0 (%s)", north, header.northSource())));
        header.mirrored().ifPresent(m -> parts.add(m ? "mirrored" : "not mirrored"));
        return String.join(", ", parts);
    }
}
