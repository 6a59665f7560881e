package org.epochrome.command;

import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.epochrome.align.Shift;
import org.epochrome.command.terminal.TerminalPage;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.report.Outputs;
import org.epochrome.text.Message;
import org.epochrome.time.UtcText;

/** What a combination found, on a page. */
final class Summary {
    private Summary() {}

    static void print(Combination c, Outputs outputs, TerminalPage to) {
        Aspect a = c.aspect();
        StringBuilder meridians = new StringBuilder();
        c.recipe().body().systems().stream()
                .sorted()
                .forEach(s -> meridians.append(Message.of(
                        "summary.meridian", s.key().equals("single") ? "" : " " + s.key(), a.centralMeridianDeg(s))));
        to.println(Message.of(
                "summary.title",
                c.recipe().body().displayName(),
                UtcText.format(c.epoch()),
                meridians,
                a.equatorialDiameterArcsec(),
                a.horizontal()
                        .map(h -> Message.text("summary.altitude", h.altitudeDeg()))
                        .orElse("")));
        to.println(Message.text("summary.columns"));
        for (FrameResult f : c.frames()) {
            String mid = UtcText.format(f.exposure().mid());
            to.printf(
                    "%-4s  %s  %+7.3f\u00b0  %8.2f %8.2f  %8.2f   %+6.3f %+6.3f    %s%n",
                    f.exposure().band().name(),
                    String.format("%-12.12s", mid.substring(11).replace("Z", "")),
                    rounded(f.rotationDeg()),
                    f.disk().x(),
                    f.disk().y(),
                    f.disk().equatorialRadiusPx(),
                    rounded(f.correction().x()),
                    rounded(f.correction().y()),
                    f.exposure().frame().head().file().getFileName());
        }
        witnesses(c, to);
        to.println(Message.of(
                "summary.misaligned",
                c.disk().northAngleDeg(),
                c.disk().mirrored() ? Message.of("summary.mirrored") : "",
                c.quality().before().text(),
                c.quality().after().text()));
        moons(c, to);
        if (c.recipe().corrections().turn()) {
            to.println(Message.text(
                    "summary.turned",
                    c.rotationLaws().entrySet().stream()
                            .map(e -> Message.text(
                                    "summary.law",
                                    String.join(" ", e.getValue()),
                                    e.getKey().name(),
                                    e.getKey().source()))
                            .collect(Collectors.joining("; "))));
        }
        to.println(Message.text("summary.sources", sources(c, f -> f.band().source()), sources(c, f -> f.timing()
                .source()
                .toString())));
        for (Path file : outputs.files()) {
            to.println(Message.text("run.wrote", file));
        }
        outputs.report().ifPresent(file -> to.println(Message.text("run.wrote", file)));
    }

    /** Whether the result can be trusted, and what to do if not: the last lines. */
    static void verdict(Combination c, TerminalPage to) {
        to.println(c.verdict().words());
        c.verdict().diagnoses().stream().skip(1).forEach(d -> to.println(d.words()));
        c.verdict().diagnoses().stream().flatMap(d -> d.remedy().stream()).forEach(r -> to.println(r.words()));
    }

    /** The position of each frame from limb, detail and predicted dispersion. */
    private static void witnesses(Combination c, TerminalPage to) {
        to.println(Message.text("summary.witnessColumns"));
        for (FrameResult f : c.frames()) {
            Combination.Witnesses w = f.witnesses();
            Shift detail = w.detail();
            String beyond = detail.known()
                    ? String.format(
                            Locale.ROOT,
                            "%+6.3f %+6.3f \u00b1 %-5.3f      %5s  ",
                            rounded(detail.x()),
                            rounded(detail.y()),
                            larger(detail),
                            w.leftOut().isEmpty()
                                    ? String.format(Locale.ROOT, "%.1f \u03c3", w.limbToDetail())
                                    : Message.text("summary.leftOut"))
                    : String.format("%-34s", "-");
            String dispersion = f.dispersion()
                    .map(d -> String.format(
                            Locale.ROOT,
                            "%+6.2f %+6.2f, %.2f",
                            d.x(),
                            d.y(),
                            f.smear().lengthPx()))
                    .orElse("-");
            to.printf(
                    "%-4s  \u00b1 %.3f  %s%-9s%s%n",
                    f.exposure().band().name(),
                    larger(w.limbError()),
                    beyond,
                    w.placeSigmaPx() == 0 ? "-" : String.format(Locale.ROOT, "\u00b1 %.3f", w.placeSigmaPx()),
                    dispersion);
        }
    }

    private static double larger(Shift s) {
        return Math.max(s.sigmaX(), s.sigmaY());
    }

    private static void moons(Combination c, TerminalPage to) {
        if (!c.moons().isEmpty()) {
            to.println(Message.text(
                    "summary.moons",
                    c.moons().stream()
                            .map(m -> Message.text(
                                    "summary.moon", m.title(), m.where().words(), m.x(), m.y()))
                            .collect(Collectors.joining("; "))));
        }
    }

    /** Where something was found, each place once. */
    private static String sources(Combination c, Function<DatedFrame, String> source) {
        return c.frames().stream()
                .map(f -> source.apply(f.exposure().frame()).replaceFirst(" line \\d+$", ""))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    /** To a thousandth, and never the zero with a minus sign. */
    private static double rounded(double value) {
        return Math.round(1000 * value) / 1000.0;
    }
}
