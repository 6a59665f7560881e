package org.epochrome.plan.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.truth.TruthTable;
import org.epochrome.truth.TruthTable.Row;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Risings, settings, culminations and twilights against two other libraries; see truth/night/README.md. */
class NightTruthTest {
    private static final Map<String, Function<Night, Optional<Instant>>> TIMES = Map.ofEntries(
            Map.entry("rise", n -> n.planet().rise()),
            Map.entry("culmination", n -> Optional.of(n.planet().culmination())),
            Map.entry("set", n -> n.planet().set()),
            Map.entry("moonrise", n -> n.moon().rise()),
            Map.entry("moonCulmination", n -> Optional.of(n.moon().culmination())),
            Map.entry("moonset", n -> n.moon().set()),
            Map.entry("sunset", n -> n.sun().sunset()),
            Map.entry("civilDusk", n -> n.sun().civilDusk()),
            Map.entry("nauticalDusk", n -> n.sun().nauticalDusk()),
            Map.entry("astronomicalDusk", n -> n.sun().astronomicalDusk()),
            Map.entry("astronomicalDawn", n -> n.sun().astronomicalDawn()),
            Map.entry("nauticalDawn", n -> n.sun().nauticalDawn()),
            Map.entry("civilDawn", n -> n.sun().civilDawn()),
            Map.entry("sunrise", n -> n.sun().sunrise()));

    /** In the libraries' files from here on the Earth has turned by another Delta T, which they extrapolate. */
    private static final int DELTA_T_DIFFERS_FROM = 2030;

    /**
     * libastro, in which the planets follow complete VSOP87 series: half a second of difference is rounding. astronomy-engine cuts its
     * series, so that its outer planets are off by up to 18 arcsec.
     *
     * <p>10 arcsec of the Moon are 0.7 seconds where it rises steeply. By the end of the century the libraries expect a Delta T that
     * is 80 to 100 seconds larger than ours (there is no leap second yet), during which the Moon moves by 50 arcsec.
     */
    @ParameterizedTest
    @CsvSource({"night/nights-libastro.csv, 1.2, 0.001", "night/nights-engine.csv, 4, 0.006"})
    void nightsAgree(String table, double toleranceS, double toleranceDeg) {
        List<Row> rows = TruthTable.rows(table);
        assertEquals(52, rows.size());
        int times = 0;
        int absent = 0;
        for (Row row : rows) {
            Night night = night(row);
            for (Map.Entry<String, Function<Night, Optional<Instant>>> time : TIMES.entrySet()) {
                Optional<Instant> ours = time.getValue().apply(night);
                String what = time.getKey() + " of " + row;
                assertEquals(row.has(time.getKey()), ours.isPresent(), what);
                if (ours.isPresent()) {
                    double late = secondsLate(Instant.parse(row.text(time.getKey())), ours.get());
                    boolean moon = time.getKey().startsWith("moon");
                    double tolerance = !moon ? toleranceS : night.date().getYear() < DELTA_T_DIFFERS_FROM ? 2.5 : 9;
                    assertTrue(Math.abs(late) < tolerance, String.format(Locale.ROOT, "%.1f s: %s", late, what));
                    times++;
                } else {
                    absent++;
                }
            }
            assertEquals(row.number("culminationAltitudeDeg"), night.planet().culminationAltitudeDeg(), toleranceDeg);
        }
        assertEquals(644, times);
        assertEquals(84, absent);
    }

    private static double secondsLate(Instant truth, Instant ours) {
        return Duration.between(truth, ours).toMillis() / 1000.0;
    }

    private static Night night(Row row) {
        return Night.of(
                Body.named(row.text("body")).orElseThrow(),
                new Site(row.number("latitudeDeg"), row.number("longitudeDeg"), 0),
                LocalDate.parse(row.text("date")),
                ZoneOffset.ofHours((int) row.number("offsetHours")),
                Horizon.level(0));
    }
}
