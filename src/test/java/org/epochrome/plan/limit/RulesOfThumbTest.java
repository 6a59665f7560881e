package org.epochrome.plan.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.image.Band;
import org.junit.jupiter.api.Test;

/** The table of docs/method.md that compares rules of thumb with limits shows what the program computes. */
class RulesOfThumbTest {
    private static final double[] APERTURES_MM = {100, 200, 280, 400};
    private static final double[] SEEINGS_ARCSEC = {0.5, 1, 2};
    private static final double OBSTRUCTION = 0.3;

    /**
     * A planet near an opposition.
     *
     * @param rule what is common practice, in minutes; not a number where that is only "longer"
     */
    private record Case(Body body, Instant utc, String rule, double least, double most) {}

    private static final List<Case> CASES = List.of(
            new Case(Body.JUPITER, Instant.parse("2022-09-26T20:00:00Z"), "3", 3, 3),
            new Case(Body.MARS, Instant.parse("2022-12-08T06:00:00Z"), "4 to 5", 4, 5),
            new Case(Body.SATURN, Instant.parse("2022-08-14T18:00:00Z"), "longer than Jupiter", 3, 3));

    private static BandLimit limit(Case c, double apertureMm, double seeing) {
        Resolution resolution =
                new Resolution(new Telescope(apertureMm, OBSTRUCTION, 20 * apertureMm, 3), new Seeing(seeing));
        double nm = Band.G.passband().effectiveNm();
        return new BandLimit(
                Band.G,
                resolution.diffractionArcsec(nm),
                resolution.arcsec(nm, 1),
                SurfaceMotion.of(c.body, c.utc, "G").fastestArcsecPerMin(),
                0.5);
    }

    private static String row(Case c, double apertureMm) {
        double diameter = Ephemeris.aspect(c.body, c.utc, Optional.empty()).equatorialDiameterArcsec();
        StringBuilder row = new StringBuilder(
                String.format(Locale.ROOT, "| %s, %.1f\u2033 | %.0f mm |", c.body.displayName(), diameter, apertureMm));
        for (double seeing : SEEINGS_ARCSEC) {
            BandLimit limit = limit(c, apertureMm, seeing);
            row.append(String.format(Locale.ROOT, " %.1f to %.1f |", limit.longestS() / 60, limit.fullSmearS() / 60));
        }
        return row.append(' ').append(c.rule).append(" |").toString();
    }

    @Test
    void theTableIsWhatTheProgramComputes() throws IOException {
        String document = Files.readString(Path.of("docs/method.md"));
        List<String> rows = new ArrayList<>();
        for (Case c : CASES) {
            for (double aperture : APERTURES_MM) {
                rows.add(row(c, aperture));
            }
        }
        assertEquals(12, rows.size());
        List<String> missing = rows.stream().filter(r -> !document.contains(r)).toList();
        assertEquals(List.of(), missing);
    }

    /** What the text below the table says of 200 to 280 mm at 0.5 to 1 arcsec. */
    @Test
    void theTextSaysWhereTheRulesFall() {
        Case jupiter = CASES.get(0);
        for (double aperture : new double[] {200, 280}) {
            for (double seeing : new double[] {0.5, 1}) {
                String where = aperture + " mm, " + seeing;
                BandLimit limit = limit(jupiter, aperture, seeing);
                double half = limit.longestS() / 60;
                double full = limit.fullSmearS() / 60;
                assertEquals(seeing == 1, half < 3 && 3 < full, "3 minutes: " + where);
                assertEquals(seeing == 0.5, full < 3, "3 minutes: " + where);
                assertTrue(half < 2.2 && 2 < full, "2 minutes: " + where);
                double loss = Resolution.contrastLoss(3 / full);
                double least = seeing == 1 ? 0.19 : 0.41;
                double most = seeing == 1 ? 0.22 : 0.54;
                assertTrue(loss > least - 0.005 && loss < most + 0.005, where + ": " + loss);
                assertTrue(limit(CASES.get(1), aperture, seeing).longestS() / 60 > 8, "Mars: " + where);
                assertTrue(limit(CASES.get(2), aperture, seeing).longestS() > 2 * limit.longestS(), "Saturn: " + where);
            }
        }
    }
}
