package org.epochrome.evidence;

import static org.epochrome.evidence.Html.number;
import static org.epochrome.evidence.Markup.attribute;
import static org.epochrome.evidence.Markup.element;

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
import org.epochrome.image.Plane;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Provenance;
import org.epochrome.session.product.Session;
import org.epochrome.session.report.Outputs;
import org.epochrome.session.sessionfile.CommandLineFormatter;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.session.verdict.Remarks;
import org.epochrome.time.UtcText;

/**
 * The evidence report: one HTML file without scripts or anything from elsewhere, to read and to print on A4. It shows the
 * picture before and after, each frame with its fitted limb, the times and where they come from, how the planet stood, what
 * was shifted and turned, and what to mind. The same combination gives the same text.
 */
public final class EvidenceReport {
    private static final int PICTURE_PX = 640;
    /** What is shown around a globe, and around rings, equatorial radii. */
    private static final double GLOBE_MARGIN = 0.14;

    private static final double RING_MARGIN = 0.13;

    private final Combination c;
    private final Outputs like;
    private final String version;
    private final double reach;
    private final FrameSections frames;
    private final AspectSections aspects;

    private EvidenceReport(Combination combination, Outputs like, String version) {
        this.c = combination;
        this.like = like;
        this.version = version;
        Body body = combination.recipe().body();
        this.reach = body.reachRadii() + (body.rings().isPresent() ? RING_MARGIN : GLOBE_MARGIN);
        this.frames = new FrameSections(combination, reach);
        this.aspects = new AspectSections(combination, like.look());
    }

    /**
     * Makes the report; reads the frames once more, one at a time.
     *
     * @param like how pictures are finished
     */
    public static String of(Combination combination, Outputs like, String version) {
        return new EvidenceReport(combination, like, version).page();
    }

    private String page() {
        String body = c.recipe().body().displayName();
        String when = UtcText.format(c.epoch());
        Markup head = element(
                "head",
                element("meta", attribute("charset", "utf-8")),
                element("meta", attribute("name", "viewport"), attribute("content", "width=device-width")),
                element("title", body + ", " + when),
                Markup.style(style()));
        Markup header = element(
                "header",
                element("p", attribute("class", "kind"), "Evidence for a colour picture"),
                element("h1", body),
                element(
                        "p",
                        attribute("class", "when"),
                        "at " + when.replace('T', ' ').replace("Z", " UTC")),
                element(
                        "p",
                        attribute("class", "verdict " + c.verdict().level().word()),
                        c.verdict().words()),
                facts());
        Markup footer = element(
                "footer",
                Provenance.TOOL + " " + version
                        + ". Pixels count from the centre of the top-left one, x to the right, y down.");
        return Markup.page(
                head,
                Markup.of(
                        header,
                        "\n",
                        pictures(),
                        notes(),
                        frames.times(),
                        frames.frames(),
                        frames.shifts(),
                        aspects.aspects(),
                        new WeightSection(c, reach).html(),
                        aspects.surface(),
                        options(),
                        footer));
    }

    /** The style sheet of reports. */
    public static String style() {
        try (InputStream in = EvidenceReport.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Markup facts() {
        Aspect a = c.aspect();
        List<List<String>> facts = new ArrayList<>();
        facts.add(List.of("Colours misaligned by", c.quality().after().text()));
        facts.add(List.of("in a simple stack", c.quality().before().text()));
        double most = c.frames().stream()
                .mapToDouble(f -> Math.abs(f.rotationDeg()))
                .max()
                .orElse(0);
        facts.add(List.of("turned by at most", number("%.2f\u00b0", most)));
        facts.add(List.of("frames", Integer.toString(c.frames().size())));
        facts.add(List.of("apparent diameter", number("%.1f\u2033", a.equatorialDiameterArcsec())));
        return element(
                "dl",
                attribute("class", "facts"),
                Markup.all(facts.stream()
                        .map(f -> element("div", element("dt", f.get(0)), element("dd", f.get(1))))
                        .toList()));
    }

    private Markup pictures() {
        ColourCube plain = frames.plain();
        Crop crop = Crop.around(c.disk(), reach, PICTURE_PX);
        View view = new View(Globe.of(c.aspect()), c.disk());
        return Html.section(
                "Before and after",
                Html.row(
                        "pair",
                        List.of(
                                Html.figure(
                                        Html.picture(
                                                cropped(crop, like.pictureAsShot(c.withCube(plain))),
                                                "Simple stack of the frames"),
                                        "Simple stack: frames aligned by the centroid of their light."),
                                Html.figure(
                                        Html.picture(cropped(crop, like.pictureAsShot(c)), "The result"),
                                        "The result: frames turned to the epoch and aligned by limb and detail."),
                                Html.figure(
                                        Html.picture(
                                                cropped(crop, FringePicture.of(plain, view)),
                                                "Colour fringes of the simple stack"),
                                        "Colour fringes of the simple stack at the limb, amplified "
                                                + FringePicture.AMPLIFIED + " times."),
                                Html.figure(
                                        Html.picture(
                                                cropped(crop, FringePicture.of(c.cube(), view)),
                                                "Colour fringes of the result"),
                                        "Colour fringes of the result, equally amplified. Grey means no fringe; soft"
                                                + " tints are the planet\u2019s own colours."))));
    }

    private static List<Plane> cropped(Crop crop, List<Plane> picture) {
        return picture.stream().map(crop::of).toList();
    }

    private Markup notes() {
        Remarks remarks = Remarks.of(c.warnings());
        List<Markup> warnings = new ArrayList<>();
        for (Diagnosis d : c.verdict().diagnoses()) {
            warnings.add(element("li", d.words()));
            d.remedy().ifPresent(r -> warnings.add(element("li", r.words())));
        }
        remarks.warnings().forEach(w -> warnings.add(element("li", w)));
        List<Markup> notes = new ArrayList<>();
        remarks.information().forEach(w -> notes.add(element("li", w)));
        for (FrameResult f : c.frames()) {
            f.warnings().forEach(w -> notes.add(element("li", element("b", Labels.name(f)), ": ", w)));
        }
        return Markup.of(
                element(
                        "section",
                        attribute("class", "notes"),
                        element("h2", "Warnings"),
                        list(warnings),
                        element("h2", "Notes"),
                        list(notes)),
                "\n");
    }

    private static Markup list(List<Markup> items) {
        return items.isEmpty()
                ? element("p", "None.")
                : element("ul", Markup.all(items.stream().distinct().toList()));
    }

    private Markup options() {
        var r = c.recipe();
        List<List<Object>> rows = new ArrayList<>();
        rows.add(List.of("program", Provenance.TOOL + " " + version));
        rows.add(List.of("body", r.body().displayName()));
        rows.add(List.of(
                "site",
                r.place()
                        .site()
                        .map(s -> number("%.4f\u00b0", s.latitudeDeg()) + ", " + number("%.4f\u00b0", s.longitudeDeg())
                                + ", " + number("%.0f m", s.heightM()))
                        .orElse("not given")));
        rows.add(List.of(
                "epoch", r.epoch().isPresent() ? "as given" : "midway between the first and the last mid-exposure"));
        rows.add(List.of(
                "north",
                (r.setup().northDeg().isPresent() ? "given: " : "found: ")
                        + number("%.2f\u00b0", c.disk().northAngleDeg())
                        + (c.disk().mirrored() ? ", mirrored" : ", not mirrored")));
        rows.add(List.of(
                "turned by",
                !r.corrections().turn()
                        ? "not turned"
                        : c.rotationLaws().keySet().stream()
                                .map(law -> law.name().replace('\'', '\u2019') + " (" + law.source() + ")")
                                .collect(Collectors.joining("; "))));
        rows.add(List.of(
                "dispersion",
                r.corrections().dispersion()
                        ? "corrected"
                                + (switch (r.corrections().unsmear()) {
                                    case NONE -> "";
                                    case HALF -> ", half of a long blur within a band removed";
                                    case ALL -> ", blur within each band removed";
                                })
                        : "not corrected"));
        rows.add(List.of("mount", r.setup().mount().name().toLowerCase(Locale.ROOT)));
        Session session = new Session(r, like.look(), Products.NONE);
        return Markup.of(
                element(
                        "section",
                        attribute("class", "options"),
                        element("h2", "Program and options"),
                        Html.table(List.of("", ""), rows),
                        element("p", "All options as a command line:"),
                        element("pre", CommandLineFormatter.line(CommandLineFormatter.of(session)))),
                "\n");
    }
}
