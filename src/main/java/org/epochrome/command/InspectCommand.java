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
import org.epochrome.io.head.HeaderGeometry;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.report.Inspection;
import org.epochrome.session.report.JsonReport;
import org.epochrome.session.report.Outputs;
import org.epochrome.text.Message;
import org.epochrome.time.UtcText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What each file is. */
@Command(name = "inspect", sortOptions = false)
final class InspectCommand implements Callable<Integer> {
    /** A line below the name of a file: what it is about, and what it says. */
    private static final String LINE = "  %-7s %s%n";

    @Mixin
    private FrameOptions frames;

    @Mixin
    private PlaceOptions place;

    @Option(
            names = {"-b", "--body"},
            paramLabel = "PLANET",
            converter = Texts.Planet.class)
    private Body body;

    @Option(
            names = {"-n", "--north"},
            paramLabel = "DEG|auto",
            defaultValue = "auto",
            converter = Texts.North.class)
    private OptionalDouble north = OptionalDouble.empty();

    @Option(
            names = {"-r", "--report"},
            paramLabel = "FILE.json")
    private Path report;

    @Option(names = "--overwrite")
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
        TerminalPage page = TerminalPage.out();
        List<Inspection> inspections = new ArrayList<>();
        for (DatedFrame f : found) {
            Inspection i = Inspection.of(
                    f, Optional.ofNullable(body).or(f::object), new Place(place.site(), Optional.empty()), north);
            print(i, page);
            if (report != null) {
                inspections.add(i);
            } else if (System.out.checkError()) {
                // What nobody reads any more need not be found out.
                return 0;
            }
        }
        if (report != null) {
            Outputs.writeReport(report, JsonReport.of(inspections, Version.NUMBER), overwrite);
        }
        return 0;
    }

    private static void print(Inspection i, TerminalPage page) {
        DatedFrame f = i.frame();
        page.println(f.head().file().toString());
        page.printf(
                LINE,
                Message.of("inspect.image"),
                Message.of(
                        "inspect.imageOf",
                        f.head().width(),
                        f.head().height(),
                        Message.of(f.head().planeCount() == 3 ? "inspect.colour" : "inspect.grey"),
                        f.head().depth()));
        page.printf(
                LINE,
                Message.of("inspect.band"),
                Message.of(
                        "inspect.bandFrom",
                        f.band()
                                .band()
                                .map(InspectCommand::described)
                                .orElseGet(() -> Message.of("inspect.oneShotColour")),
                        f.band().source()));
        page.printf(
                LINE,
                Message.of("inspect.time"),
                Message.of(
                        "inspect.timeFrom",
                        UtcText.format(f.timing().span().start()),
                        UtcText.format(f.timing().span().end()),
                        f.timing().source()));
        HeaderGeometry header = f.head().geometry();
        if (header.isKnown()) {
            page.printf(LINE, Message.of("inspect.header"), described(header));
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
                    LINE,
                    Message.of("inspect.aspect"),
                    Message.of(
                            "inspect.aspectOf",
                            a.body().displayName(),
                            cm,
                            a.poleAngleDeg(),
                            a.equatorialDiameterArcsec()));
        });
        i.disk()
                .ifPresent(d -> page.printf(
                        LINE,
                        Message.of("inspect.disk"),
                        Message.of(
                                "inspect.diskAt",
                                d.disk().x(),
                                d.disk().y(),
                                d.centreSigmaPx(),
                                d.disk().equatorialRadiusPx(),
                                d.disk().northAngleDeg(),
                                d.shading().blurPx())));
        i.notes().forEach(note -> page.printf(LINE, Message.of("inspect.note"), note));
    }

    /** A band with its wavelengths. */
    private static Message described(Band band) {
        return Message.of(
                "inspect.passband",
                band.name(),
                band.passband().fromNm(),
                band.passband().toNm());
    }

    private static String described(HeaderGeometry header) {
        List<String> parts = new ArrayList<>();
        header.scaleArcsecPerPx()
                .ifPresent(scale -> parts.add(Message.text("inspect.scale", scale, header.scaleSource())));
        header.celestialNorthDeg()
                .ifPresent(north -> parts.add(Message.text("inspect.celestialNorth", north, header.northSource())));
        header.mirrored().ifPresent(m -> parts.add(Message.text(m ? "inspect.mirrored" : "inspect.notMirrored")));
        return String.join(", ", parts);
    }
}
