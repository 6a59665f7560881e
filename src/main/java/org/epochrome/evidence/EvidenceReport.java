package org.epochrome.evidence;

import static org.epochrome.evidence.Html.number;
import static org.epochrome.evidence.Html.text;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Plane;
import org.epochrome.session.Combination;
import org.epochrome.session.Combination.FrameResult;
import org.epochrome.session.JsonReport;
import org.epochrome.session.MapFile;
import org.epochrome.session.Outputs;
import org.epochrome.session.PixelOffset;
import org.epochrome.time.UtcText;

/**
 * The evidence report: one HTML file without scripts or anything from elsewhere, to read and to print on A4. It shows the
 * picture before and after, each frame with its fitted limb, the times and where they come from, how the planet stood, what
 * was shifted and turned, and what to mind. The same combination gives the same text.
 */
public final class EvidenceReport {
    private static final int PICTURE_PX = 640;
    private static final int FRAME_PX = 240;
    private static final int MAP_PX = 720;

    private final Combination c;
    private final Outputs like;
    private final String version;
    private final double reach;
    private final List<Plane> planes;

    private EvidenceReport(Combination combination, Outputs like, String version) {
        this.c = combination;
        this.like = like;
        this.version = version;
        this.reach = combination.recipe().body() == Body.SATURN ? 2.4 : 1.14;
        this.planes =
                combination.frames().stream().map(f -> f.exposure().load()).toList();
    }

    /**
     * Makes the report; reads the frames once more.
     *
     * @param like how pictures are finished
     */
    public static String of(Combination combination, Outputs like, String version) {
        return new EvidenceReport(combination, like, version).page();
    }

    private String page() {
        String title = c.recipe().body().displayName() + ", " + UtcText.format(c.epoch());
        return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
                + "<meta name=\"viewport\" content=\"width=device-width\"><title>" + text(title) + "</title><style>\n"
                + style() + "</style></head><body>\n<header><p class=\"kind\">Evidence for a colour picture</p><h1>"
                + text(c.recipe().body().displayName()) + "</h1><p class=\"when\">as it stood at "
                + text(UtcText.format(c.epoch()).replace('T', ' ').replace("Z", " UTC")) + "</p>" + facts()
                + "</header>\n" + pictures() + notes() + times() + frames() + shifts() + aspects() + surface()
                + options() + "<footer>" + text(JsonReport.TOOL + " " + version)
                + ". Pixels count from the centre of the top-left one, x to the right, y down.</footer></body></html>\n";
    }

    private static String style() {
        try (InputStream in = EvidenceReport.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String facts() {
        Aspect a = c.aspect();
        List<List<String>> facts = new ArrayList<>();
        facts.add(List.of("Colours apart", number("%.2f px", c.quality().fringeAfterPx())));
        facts.add(List.of("stacked plainly", number("%.2f px", c.quality().fringeBeforePx())));
        double most = c.frames().stream()
                .mapToDouble(f -> Math.abs(f.rotationDeg()))
                .max()
                .orElse(0);
        facts.add(List.of("turned by at most", number("%.2f\u00b0", most)));
        facts.add(List.of("frames", Integer.toString(c.frames().size())));
        facts.add(List.of("apparent diameter", number("%.1f\u2033", a.equatorialDiameterArcsec())));
        return "<dl class=\"facts\">"
                + facts.stream()
                        .map(f -> "<div><dt>" + f.get(0) + "</dt><dd>" + f.get(1) + "</dd></div>")
                        .collect(Collectors.joining())
                + "</dl>";
    }

    private String pictures() {
        ColourCube plain = PlainStack.of(c, planes);
        Crop crop = Crop.around(c.disk(), reach, PICTURE_PX);
        View view = new View(Globe.of(c.aspect()), c.disk());
        return "<section><h2>Before and after</h2><div class=\"pair\">"
                + Html.figure(
                        Html.picture(cropped(crop, like.pictureAsShot(c.withCube(plain))), "Frames stacked plainly"),
                        "Frames laid on top of each other by their light\u2019s centre.")
                + Html.figure(
                        Html.picture(cropped(crop, like.pictureAsShot(c)), "The result"),
                        "The result: turned to the epoch, laid on each other by limb and detail.")
                + Html.figure(
                        Html.picture(cropped(crop, FringePicture.of(plain, view)), "Fringes of the plain stack"),
                        "Where its colours part at the limb, " + FringePicture.AMPLIFIED + " times amplified.")
                + Html.figure(
                        Html.picture(cropped(crop, FringePicture.of(c.cube(), view)), "Fringes of the result"),
                        "The same in the result. Grey is no fringe; soft tints are the planet\u2019s own.")
                + "</div></section>\n";
    }

    private static List<Plane> cropped(Crop crop, List<Plane> picture) {
        return picture.stream().map(crop::of).toList();
    }

    private String notes() {
        List<String> notes =
                new ArrayList<>(c.warnings().stream().map(Html::text).toList());
        for (FrameResult f : c.frames()) {
            f.warnings().forEach(w -> notes.add("<b>" + name(f) + "</b>: " + text(w)));
        }
        List<String> distinct = notes.stream().distinct().toList();
        return "<section class=\"notes\"><h2>What to mind</h2>"
                + (distinct.isEmpty()
                        ? "<p>Nothing: no step had doubts.</p>"
                        : "<ul><li>" + String.join("</li><li>", distinct) + "</li></ul>")
                + "</section>\n";
    }

    private String times() {
        List<List<String>> rows = c.frames().stream()
                .map(f -> List.of(
                        band(f),
                        name(f),
                        clock(f.exposure().frame().timing().span().start()),
                        clock(f.exposure().frame().timing().span().end()),
                        text(f.exposure().frame().timing().source()),
                        number("%+.3f\u00b0", f.rotationDeg()),
                        "<span class=\"bar\" style=\"width:" + Html.at(40 * f.weight()) + "px\"></span>"
                                + number("%.2f", f.weight())))
                .toList();
        return "<section><h2>When the frames were recorded</h2>" + Drawings.timeLine(c)
                + Html.table(List.of("band", "frame", "start (UTC)", "end", "time from", "turned", "weight"), rows)
                + "</section>\n";
    }

    private String frames() {
        StringBuilder figures = new StringBuilder();
        for (int i = 0; i < planes.size(); i++) {
            FrameResult f = c.frames().get(i);
            View view = new View(Globe.of(f.exposure().aspect()), f.disk());
            figures.append(Html.figure(
                    Drawings.limb(planes.get(i), f, view, FRAME_PX, reach),
                    band(f) + " centre " + number("%.2f", f.disk().x()) + ", "
                            + number("%.2f", f.disk().y())
                            + " \u00b1 " + number("%.2f", f.limb().centreSigmaPx()) + " px, radius "
                            + number("%.2f", f.disk().equatorialRadiusPx()) + " px, blur "
                            + number("%.1f", f.limb().shading().blurPx()) + " px"));
        }
        return "<section><h2>Frames and their fitted limbs</h2><div class=\"frames\">" + figures + "</div></section>\n";
    }

    private String shifts() {
        FrameResult zero = c.frames().get(PlainStack.reference(c));
        List<List<String>> rows = c.frames().stream()
                .map(f -> {
                    PixelOffset m = Drawings.measured(f, zero);
                    PixelOffset p = Drawings.predicted(f, zero);
                    return List.of(
                            band(f),
                            pair(m.x(), m.y()),
                            f.dispersion().isPresent() ? pair(p.x(), p.y()) : "\u2013",
                            f.dispersion().isPresent() ? pair(m.x() - p.x(), m.y() - p.y()) : "\u2013",
                            pair(f.correction().x(), f.correction().y()));
                })
                .toList();
        String caption = c.frames().stream().anyMatch(f -> f.dispersion().isPresent())
                ? "Dots: where each disk lay against the reference frame\u2019s. Rings: where the air\u2019s dispersion alone"
                        + " would have put it. What is between them is the mount\u2019s drift."
                : "Dots: where each disk lay against the reference frame\u2019s. Without a site dispersion is not known.";
        return "<section><h2>Shifts, measured and predicted</h2><div class=\"beside\">"
                + Html.figure(Drawings.shifts(c), caption)
                + Html.table(
                        List.of("band", "measured (px)", "by dispersion", "difference", "detail against limb"), rows)
                + "</div></section>\n";
    }

    private static String pair(double x, double y) {
        return number("%+.2f", x) + "&ensp;" + number("%+.2f", y);
    }

    private String aspects() {
        List<RotationSystem> systems =
                c.recipe().body().systems().stream().sorted().toList();
        List<String> heads = new ArrayList<>(List.of("", "UTC"));
        systems.forEach(s -> heads.add("CM" + (s == RotationSystem.SINGLE ? "" : " " + s.key())));
        heads.addAll(List.of("sub-Earth lat.", "sub-solar lat.", "P", "phase", "diameter", "altitude"));
        List<List<String>> rows = new ArrayList<>();
        rows.add(aspect("<b>epoch</b>", c.aspect(), systems));
        c.frames().forEach(f -> rows.add(aspect(band(f), f.exposure().aspect(), systems)));
        return "<section><h2>How the planet stood</h2>" + Html.table(heads, rows) + "</section>\n";
    }

    private static List<String> aspect(String who, Aspect a, List<RotationSystem> systems) {
        List<String> row = new ArrayList<>(List.of(who, clock(a.utc())));
        systems.forEach(s -> row.add(number("%.2f\u00b0", a.centralMeridianDeg(s))));
        row.add(number("%.2f\u00b0", a.subEarthLatitudeDeg()));
        row.add(number("%.2f\u00b0", a.subSolarLatitudeDeg()));
        row.add(number("%.2f\u00b0", a.poleAngleDeg()));
        row.add(number("%.1f\u00b0", a.phaseAngleDeg()));
        row.add(number("%.2f\u2033", a.equatorialDiameterArcsec()));
        row.add(a.horizontal().map(h -> number("%.1f\u00b0", h.altitudeDeg())).orElse("\u2013"));
        return row;
    }

    private String surface() {
        RotationSystem system = MapFile.system(c);
        return "<section><h2>What was seen of the globe</h2>"
                + Html.figure(
                        Html.picture(MapFile.onPaper(c, like, MAP_PX), "Map of the globe"),
                        "Shading taken off. Latitude planetographic, north up; longitude "
                                + (system == RotationSystem.SINGLE ? "" : system.key() + " ")
                                + (c.recipe().body().prograde()
                                        ? "from 360\u00b0 on the left to 0\u00b0"
                                        : "from 0\u00b0 on the left to 360\u00b0")
                                + " on the right. White was out of sight or seen too steeply.")
                + "</section>\n";
    }

    private String options() {
        var r = c.recipe();
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("program", text(JsonReport.TOOL + " " + version)));
        rows.add(List.of("body", text(r.body().displayName())));
        rows.add(List.of(
                "site",
                r.place()
                        .site()
                        .map(s -> number("%.4f\u00b0", s.latitudeDeg()) + ", " + number("%.4f\u00b0", s.longitudeDeg())
                                + ", " + number("%.0f m", s.heightM()))
                        .orElse("not given")));
        rows.add(List.of("epoch", r.epoch().isPresent() ? "as given" : "midway between the first and the last middle"));
        rows.add(List.of(
                "north",
                (r.setup().northDeg().isPresent() ? "given: " : "found: ")
                        + number("%.2f\u00b0", c.disk().northAngleDeg())
                        + (c.disk().mirrored() ? ", mirrored" : ", not mirrored")));
        rows.add(List.of(
                "turned by",
                !r.corrections().turn()
                        ? "not turned"
                        : r.corrections()
                                .system()
                                .map(s ->
                                        s == RotationSystem.SINGLE ? "the planet\u2019s rotation" : "System " + s.key())
                                .orElse("the winds at each latitude")));
        rows.add(List.of(
                "dispersion",
                r.corrections().dispersion()
                        ? "taken into account" + (r.corrections().unsmear() ? ", smear undone" : "")
                        : "left out"));
        rows.add(List.of("mount", text(r.setup().mount().name().toLowerCase(Locale.ROOT))));
        return "<section class=\"options\"><h2>Program and options</h2>" + Html.table(List.of("", ""), rows)
                + "</section>\n";
    }

    private static String band(FrameResult f) {
        String band = f.exposure().band().name();
        return "<b style=\"color:" + Drawings.ink(band) + "\">" + text(band) + "</b>";
    }

    private static String name(FrameResult f) {
        return text(f.exposure().frame().head().file().getFileName().toString());
    }

    private static String clock(java.time.Instant instant) {
        return text(UtcText.format(instant).replace('T', ' ').replace("Z", ""));
    }
}
