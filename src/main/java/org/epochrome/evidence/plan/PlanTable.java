package org.epochrome.evidence.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Band;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.PlannedHour;
import org.epochrome.plan.limit.BandDispersion;
import org.epochrome.plan.night.QuarterHour;
import org.epochrome.time.UtcText;

/** The quarters of an hour of a plan as comma-separated values. */
public final class PlanTable {
    private PlanTable() {}

    /** A header and a line for each quarter of an hour; units in the header, cells empty where there is nothing. */
    public static String csv(NightPlan plan) {
        List<RotationSystem> systems =
                plan.settings().body().systems().stream().sorted().toList();
        List<String> heads = new ArrayList<>(List.of(
                "utc",
                "usable",
                "altitude_deg",
                "azimuth_deg",
                "air_mass",
                "diameter_arcsec",
                "diameter_px",
                "phase_angle_deg",
                "lit_part",
                "elongation_deg"));
        systems.forEach(s -> heads.add("cm_" + s.key() + "_deg"));
        heads.addAll(List.of(
                "sun_altitude_deg", "moon_altitude_deg", "moon_lit_part", "moon_distance_deg", "parallactic_deg"));
        for (Band b : plan.settings().bands()) {
            heads.addAll(
                    List.of(b.name() + "_shift_arcsec", b.name() + "_smear_arcsec", b.name() + "_resolution_arcsec"));
        }
        heads.add("spread_arcsec");
        StringBuilder text = new StringBuilder(String.join(",", heads)).append('\n');
        plan.hours().forEach(h -> text.append(String.join(",", cells(plan, h, systems)))
                .append('\n'));
        return text.toString();
    }

    private static List<String> cells(NightPlan plan, PlannedHour h, List<RotationSystem> systems) {
        QuarterHour sky = h.sky();
        List<String> cells = new ArrayList<>(List.of(
                UtcText.format(sky.utc()),
                h.usable() ? "yes" : "no",
                number(sky.altitudeDeg(), 2),
                number(sky.azimuthDeg(), 2),
                sky.airMass().isPresent() ? number(sky.airMass().getAsDouble(), 3) : "",
                number(sky.equatorialDiameterArcsec(), 2),
                number(
                        sky.equatorialDiameterArcsec()
                                / plan.settings().telescope().arcsecPerPx(),
                        1),
                number(sky.phaseAngleDeg(), 2),
                number(sky.illuminatedFraction(), 3),
                number(sky.elongationDeg(), 1)));
        systems.forEach(s -> cells.add(number(sky.centralMeridianDeg().get(s), 2)));
        cells.addAll(List.of(
                number(sky.sunAltitudeDeg(), 2),
                number(sky.moonAltitudeDeg(), 2),
                number(sky.moonIlluminatedFraction(), 3),
                number(sky.moonDistanceDeg(), 1),
                number(sky.parallacticAngleDeg(), 1)));
        for (int i = 0; i < plan.settings().bands().size(); i++) {
            if (h.bands().isEmpty()) {
                cells.addAll(List.of("", "", ""));
            } else {
                BandDispersion d = h.bands().get(i);
                cells.addAll(List.of(
                        number(d.shiftArcsec(), 3), number(d.smearArcsec(), 3), number(d.resolutionArcsec(), 3)));
            }
        }
        cells.add(h.spreadArcsec().isPresent() ? number(h.spreadArcsec().getAsDouble(), 3) : "");
        return cells;
    }

    private static String number(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value + 0.0);
    }
}
