package org.epochrome.evidence;

import static org.epochrome.evidence.Html.at;
import static org.epochrome.evidence.Markup.attribute;
import static org.epochrome.evidence.Markup.element;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.time.RecordingSpan;
import org.epochrome.time.UtcText;

/** Drawings of the report, as SVG. */
final class Drawings {
    private static final Map<String, String> INKS =
            Map.of("R", "#c0392b", "G", "#2e8b57", "B", "#2f62b5", "L", "#777777", "IR", "#7b3f61");
    private static final String OTHER_INK = "#8a6d3b";
    private static final List<Integer> STEPS_S = List.of(
            10,
            20,
            30,
            60,
            120,
            300,
            600,
            900,
            1800,
            3600,
            7200,
            21_600,
            43_200,
            86_400,
            604_800,
            2_592_000,
            31_536_000);

    private Drawings() {}

    /** The ink of a band. */
    static String ink(String band) {
        return INKS.getOrDefault(band, OTHER_INK);
    }

    /** A frame with its fitted limb over it and a tick towards north. */
    static Markup limb(Plane plane, FrameResult f, View view, int mostPx, double reach) {
        Crop crop = Crop.around(f.disk(), reach, mostPx);
        Plane small = crop.of(plane);
        double top = 0;
        for (float value : small.data()) {
            top = Math.max(top, value);
        }
        for (int i = 0; i < small.data().length; i++) {
            double light =
                    (small.data()[i] - f.limb().background()) / (top - f.limb().background());
            small.data()[i] = (float) Math.sqrt(Math.max(0, light));
        }
        StringBuilder path = new StringBuilder();
        double ratio = view.globe().apparentAxisRatio();
        for (int i = 0; i < 180; i++) {
            double angle = Math.toRadians(2 * i);
            double pole = ratio * Math.cos(angle);
            double side = Math.sin(angle);
            path.append(i == 0 ? 'M' : 'L')
                    .append(at(crop.x(view.column(pole, side))))
                    .append(' ')
                    .append(at(crop.y(view.row(pole, side))));
        }
        int size = crop.sizePx();
        return svg(
                size,
                size,
                "Frame in " + f.exposure().band().name() + " with its limb",
                element(
                        "image",
                        attribute("href", Html.data(List.of(small))),
                        attribute("width", size),
                        attribute("height", size)),
                element(
                        "path",
                        attribute("d", path + "Z"),
                        attribute("fill", "none"),
                        attribute("stroke", "#ffd24a"),
                        attribute("stroke-width", 1)),
                line(
                        crop.x(view.column(1.01 * ratio, 0)),
                        crop.y(view.row(1.01 * ratio, 0)),
                        crop.x(view.column(1.09 * ratio, 0)),
                        crop.y(view.row(1.09 * ratio, 0)),
                        "#ffd24a"));
    }

    /** Recordings as bars at their times, a line per frame, and the epoch. */
    static Markup timeLine(Combination c) {
        double width = 680;
        double left = 120;
        double right = 70;
        double rowHeight = 20;
        double height = 34 + rowHeight * c.frames().size();
        Instant begin = c.epoch();
        Instant end = c.epoch();
        for (FrameResult f : c.frames()) {
            RecordingSpan span = f.exposure().frame().timing().span();
            begin = span.start().isBefore(begin) ? span.start() : begin;
            end = span.end().isAfter(end) ? span.end() : end;
        }
        double seconds = Math.max(1, Duration.between(begin, end).toMillis() / 1000.0);
        Instant zero = begin;
        java.util.function.ToDoubleFunction<Instant> x = instant ->
                left + (width - left - right) * Duration.between(zero, instant).toMillis() / 1000.0 / seconds;
        List<Markup> out = new ArrayList<>();
        int step = STEPS_S.stream().filter(s -> seconds / s <= 8).findFirst().orElse(31_536_000);
        for (long t = Math.floorDiv(begin.getEpochSecond() + step - 1, step) * step;
                t <= end.getEpochSecond();
                t += step) {
            Instant tick = Instant.ofEpochSecond(t);
            out.add(line(x.applyAsDouble(tick), 4, x.applyAsDouble(tick), height - 24, "#e3e1da"));
            out.add(label(
                    x.applyAsDouble(tick),
                    height - 10,
                    "middle",
                    UtcText.format(tick).substring(11, step < 60 ? 19 : 16)));
        }
        for (int i = 0; i < c.frames().size(); i++) {
            FrameResult f = c.frames().get(i);
            RecordingSpan span = f.exposure().frame().timing().span();
            String band = f.exposure().band().name();
            double y = 6 + rowHeight * i;
            double from = x.applyAsDouble(span.start());
            double to = Math.max(from + 2, x.applyAsDouble(span.end()));
            out.add(element(
                    "rect",
                    attribute("x", at(from)),
                    attribute("y", at(y)),
                    attribute("width", at(to - from)),
                    attribute("height", 13),
                    attribute("rx", 2),
                    attribute("fill", ink(band))));
            out.add(label(
                    left - 10,
                    y + 11,
                    "end",
                    band + "  " + UtcText.format(span.mid()).substring(11, 19)));
            out.add(label(width, y + 11, "end", Html.number("%+.2f", f.rotationDeg()) + "\u00b0"));
        }
        double epoch = x.applyAsDouble(c.epoch());
        out.add(element(
                "path",
                attribute("d", "M" + at(epoch) + " 0V" + at(height - 24)),
                attribute("stroke", "#222"),
                attribute("stroke-width", 1.4),
                attribute("stroke-dasharray", "4 3")));
        out.add(label(epoch, height, "middle", "epoch"));
        return svg(width, height, "When the frames were recorded", Markup.all(out));
    }

    /** Where each disk lay against the reference frame's, and where dispersion alone would have put it. */
    static Markup shifts(Combination c) {
        int reference = PlainStack.reference(c);
        FrameResult zero = c.frames().get(reference);
        double most = 1;
        for (FrameResult f : c.frames()) {
            most = Math.max(
                    most,
                    Math.max(measured(f, zero).lengthPx(), predicted(f, zero).lengthPx()));
        }
        double size = 260;
        double scale = 0.42 * size / most;
        double middle = size / 2;
        List<Markup> out = new ArrayList<>();
        double ring = Math.pow(10, Math.floor(Math.log10(most)));
        ring = 5 * ring <= most ? 5 * ring : 2 * ring <= most ? 2 * ring : ring;
        out.add(circle(middle, middle, ring * scale, attribute("fill", "none"), attribute("stroke", "#d9d6cd")));
        out.add(label(middle + ring * scale - 3, middle - 4, "end", Html.number("%.0f px", ring)));
        out.add(line(0, middle, size, middle, "#e3e1da"));
        out.add(line(middle, 0, middle, size, "#e3e1da"));
        for (FrameResult f : c.frames()) {
            String ink = ink(f.exposure().band().name());
            PixelOffset m = measured(f, zero);
            double x = middle + scale * m.x();
            double y = middle + scale * m.y();
            if (f.dispersion().isPresent()) {
                PixelOffset p = predicted(f, zero);
                double px = middle + scale * p.x();
                double py = middle + scale * p.y();
                out.add(line(px, py, x, y, "#b9b5a8"));
                out.add(circle(
                        px,
                        py,
                        5,
                        attribute("fill", "#fff"),
                        attribute("stroke", ink),
                        attribute("stroke-width", 1.6)));
            }
            out.add(circle(x, y, 3.2, attribute("fill", ink)));
        }
        return svg(size, size, "Shifts measured against predicted", Markup.all(out));
    }

    /** Centre of a disk relative to that of the reference frame, pixels. */
    static PixelOffset measured(FrameResult f, FrameResult reference) {
        return new PixelOffset(
                f.disk().x() - reference.disk().x(),
                f.disk().y() - reference.disk().y());
    }

    /** The centre relative to the reference frame by predicted dispersion alone, pixels; zero where it is not known. */
    static PixelOffset predicted(FrameResult f, FrameResult reference) {
        PixelOffset none = new PixelOffset(0, 0);
        PixelOffset own = f.dispersion().orElse(none);
        PixelOffset zero = reference.dispersion().orElse(none);
        return new PixelOffset(own.x() - zero.x(), own.y() - zero.y());
    }

    private static Markup svg(double width, double height, String title, Object... content) {
        return element(
                "svg",
                attribute("viewBox", "0 0 " + at(width) + " " + at(height)),
                attribute("role", "img"),
                element("title", title),
                Markup.of(content));
    }

    private static Markup line(double x1, double y1, double x2, double y2, String ink) {
        return element(
                "path",
                attribute("d", "M" + at(x1) + " " + at(y1) + "L" + at(x2) + " " + at(y2)),
                attribute("stroke", ink));
    }

    private static Markup circle(double x, double y, double radius, Markup.Attribute... style) {
        Object[] attributes = Stream.concat(
                        Stream.of(attribute("cx", at(x)), attribute("cy", at(y)), attribute("r", at(radius))),
                        Stream.of(style))
                .toArray();
        return element("circle", attributes);
    }

    private static Markup label(double x, double y, String anchor, String text) {
        return element("text", attribute("x", at(x)), attribute("y", at(y)), attribute("text-anchor", anchor), text);
    }
}
