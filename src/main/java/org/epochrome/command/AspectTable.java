package org.epochrome.command;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.text.Message;
import org.epochrome.time.UtcText;

/** Aspects in rows, as text or as comma-separated values. */
final class AspectTable {
    private static final List<Integer> WIDTHS = List.of(8, 8, 9, 9, 9, 8, 8, 7, 7, 7, 7);

    private final boolean csv;
    private final PrintStream to;

    AspectTable(boolean csv, PrintStream to) {
        this.csv = csv;
        this.to = to;
    }

    void head() {
        to.println(
                csv
                        ? "body,utc,cm_I_deg,cm_II_deg,cm_III_or_single_deg,sub_earth_latitude_deg,pole_angle_deg,"
                                + "phase_angle_deg,diameter_arcsec,elongation_deg,altitude_deg,azimuth_deg,parallactic_deg"
                        : Message.text("aspect.columns"));
    }

    void row(Aspect a) {
        List<String> cells = List.of(
                cell(a, RotationSystem.I),
                cell(a, RotationSystem.II),
                cell(a, a.body().defaultSystem()),
                number(a.subEarthLatitudeDeg(), 3),
                number(a.poleAngleDeg(), 3),
                number(a.phaseAngleDeg(), 2),
                number(a.equatorialDiameterArcsec(), 2),
                number(a.elongationDeg(), 1),
                a.horizontal().map(h -> number(h.altitudeDeg(), 2)).orElse(""),
                a.horizontal().map(h -> number(h.azimuthDeg(), 2)).orElse(""),
                a.horizontal().map(h -> number(h.parallacticAngleDeg(), 2)).orElse(""));
        String time = UtcText.format(a.utc());
        if (csv) {
            to.println(a.body().displayName() + "," + time + "," + String.join(",", cells));
            return;
        }
        String padded = IntStream.range(0, cells.size())
                .mapToObj(i -> String.format("%" + WIDTHS.get(i) + "s", cells.get(i)))
                .collect(Collectors.joining());
        to.printf("%-8s %-20s %s%n", a.body().displayName(), time, padded);
    }

    private static String cell(Aspect a, RotationSystem system) {
        return a.centralMeridianDeg().containsKey(system) ? number(a.centralMeridianDeg(system), 2) : "";
    }

    private static String number(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
