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
import org.epochrome.time.UtcText;

/** What a combination found, on a page. */
final class Summary {
    private Summary() {}

    static void print(Combination c, Outputs outputs, TerminalPage to) {
        Aspect a = c.aspect();
        StringBuilder meridians = new StringBuilder();
        c.recipe().body().systems().stream()
                .sorted()
                .forEach(s -> meridians.append(String.format(
                        Locale.ROOT,
                        "  CM%s %.2f",
                        s.key().equals("single") ? "" : " " + s.key(),
                        a.centralMeridianDeg(s))));
        to.printf(
                "%s at %s%s  diameter %.2f\"%s%n",
                c.recipe().body().displayName(),
                UtcText.format(c.epoch()),
                meridians,
                a.equatorialDiameterArcsec(),
                a.horizontal()
                        .map(h -> String.format(Locale.ROOT, "  altitude %.0f", h.altitudeDeg()))
                        .orElse(""));
        to.println("band  mid (UTC)      turned    centre (px)        radius    shifted (px)      frame");
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
        to.printf(
                "north angle %.2f\u00b0%s   colours misaligned by %s in a simple stack, %s in the result%n",
                c.disk().northAngleDeg(),
                c.disk().mirrored() ? ", mirrored" : "",
                c.quality().before().text(),
                c.quality().after().text());
        moons(c, to);
        if (c.recipe().corrections().turn()) {
            to.println(c.rotationLaws().entrySet().stream()
                    .map(e -> String.join(" ", e.getValue()) + " by "
                            + e.getKey().name() + " (" + e.getKey().source() + ")")
                    .collect(Collectors.joining("; ", "turned: ", "")));
        }
        to.println("bands from " + sources(c, f -> f.band().source()) + "; times from "
                + sources(c, f -> f.timing().source().toString()));
        for (Path file : outputs.files()) {
            to.println("wrote " + file);
        }
        outputs.report().ifPresent(file -> to.println("wrote " + file));
    }

    /** The position of each frame from limb, detail and predicted dispersion. */
    private static void witnesses(Combination c, TerminalPage to) {
        to.println("band  limb     detail - limb (px)         differ   position predicted dispersion, blur (px)");
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
                            w.leftOut().isEmpty() ? String.format(Locale.ROOT, "%.1f \u03c3", w.limbToDetail()) : "out")
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
            to.println(c.moons().stream()
                    .map(m -> String.format(
                            Locale.ROOT,
                            "%s %s at %.1f, %.1f",
                            m.title(),
                            m.where().words(),
                            m.x(),
                            m.y()))
                    .collect(Collectors.joining("; ", "moons: ", "")));
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
