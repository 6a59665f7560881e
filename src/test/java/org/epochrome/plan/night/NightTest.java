package org.epochrome.plan.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.Site;
import org.epochrome.text.Message;
import org.epochrome.truth.TruthTable;
import org.epochrome.truth.TruthTable.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class NightTest {
    /**
     * 21 arcsec: the aspect has its parallactic angle at the direction before aberration, ours is at the apparent one. The angle changes by
     * so much over the tangent of the zenith distance, and over that of the polar distance, here 60 degrees or more.
     */
    private static final double ABERRATION_DEG = 21 / 3600.0;

    private static final Site SITE = new Site(46.2, 8.5, 480);

    private static Night night(Body body, Site site, String date) {
        return Night.of(body, site, LocalDate.parse(date), Night.solarOffset(site), Horizon.level(0));
    }

    /** The aspect of each quarter, without any interpolation. */
    @ParameterizedTest
    @EnumSource(Body.class)
    void quartersAreTheAspect(Body body) {
        Night night = night(body, SITE, "2026-12-01");
        assertTrue(night.hours().size() > 60, night.hours().size() + " quarters");
        for (QuarterHour hour : night.hours()) {
            Aspect aspect = Ephemeris.aspect(body, hour.utc(), Optional.of(SITE));
            Aspect.Horizontal place = aspect.horizontal().orElseThrow();
            double zenithRad = Math.toRadians(90 - Math.abs(place.altitudeDeg()));
            assertEquals(place.altitudeDeg(), hour.altitudeDeg(), 0.0003);
            assertEquals(0, angle(place.azimuthDeg(), hour.azimuthDeg()), 0.001);
            assertEquals(
                    0,
                    angle(place.parallacticAngleDeg(), hour.parallacticAngleDeg()),
                    ABERRATION_DEG * (1 + 1 / Math.tan(zenithRad)));
            for (RotationSystem system : body.systems()) {
                assertEquals(
                        0,
                        angle(
                                aspect.centralMeridianDeg(system),
                                hour.centralMeridianDeg().get(system)),
                        0.001);
            }
            assertEquals(aspect.equatorialDiameterArcsec(), hour.equatorialDiameterArcsec(), 1e-4);
            assertEquals(aspect.phaseAngleDeg(), hour.phaseAngleDeg(), 1e-4);
            assertEquals(aspect.elongationDeg(), hour.elongationDeg(), 1e-3);
            assertEquals(aspect.poleAngleDeg(), hour.poleAngleDeg(), 1e-4);
            assertEquals(aspect.subEarthLatitudeDeg(), hour.subEarthLatitudeDeg(), 1e-4);
        }
    }

    /** DE405 and ERFA; the book claims 10 arcsec of longitude for the series. */
    @Test
    void theMoonStandsWhereDe405HasIt() {
        List<Row> rows = TruthTable.rows("night/moon.csv");
        assertEquals(80, rows.size());
        for (Row row : rows) {
            Instant utc = Instant.parse(row.text("utc"));
            Site site = new Site(row.number("latitudeDeg"), row.number("longitudeDeg"), 0);
            NightSky sky = NightSky.of(Body.MARS, site, Horizon.level(0), utc.minusSeconds(5000));
            QuarterHour now = sky.at(utc);
            assertEquals(row.number("altitudeDeg"), now.moonAltitudeDeg(), 15 / 3600.0, row.toString());
            double across = Math.cos(Math.toRadians(now.moonAltitudeDeg()));
            assertEquals(
                    0, across * angle(row.number("azimuthDeg"), now.moonAzimuthDeg()), 15 / 3600.0, row.toString());
            assertEquals(
                    row.number("distanceKm"),
                    sky.position(NightSky.Target.MOON, utc).getNorm(),
                    40,
                    row.toString());
            assertEquals(row.number("illuminatedFraction"), now.moonIlluminatedFraction(), 0.0002, row.toString());
        }
    }

    private static double angle(double a, double b) {
        return Math.IEEEremainder(a - b, 360);
    }

    /** The midnight is the Sun's own: a clock that is hours off does not cut the night. */
    @ParameterizedTest
    @ValueSource(ints = {-3, 0, 1, 5})
    void theClockDoesNotCutTheNight(int offsetHours) {
        Night night = Night.of(
                Body.JUPITER, SITE, LocalDate.parse("2026-12-01"), ZoneOffset.ofHours(offsetHours), Horizon.level(0));
        Duration off = Duration.between(Instant.parse("2026-12-01T23:15:00Z"), night.midnight());
        assertTrue(off.abs().toMinutes() < 2, () -> "midnight is off by " + off);
        assertTrue(night.dark().contains(night.midnight()));
        assertEquals(Optional.of(night.dark().start()), night.sun().sunset());
        Instant first = night.hours().get(0).utc();
        assertEquals(0, first.getEpochSecond() % 900);
        assertFalse(first.isAfter(night.dark().start()));
    }

    @Test
    void theOffsetFollowsTheSite() {
        assertEquals(ZoneOffset.ofHours(1), Night.solarOffset(SITE));
        assertEquals(ZoneOffset.ofHours(-10), Night.solarOffset(new Site(19.8, -155.5, 0)));
        assertEquals(ZoneOffset.ofHours(-10), Night.solarOffset(new Site(19.8, 204.5, 0)));
    }

    @Test
    void polarDayAndNight() {
        Site north = new Site(78.2, 15.6, 0);
        Night day = night(Body.SATURN, north, "2026-06-20");
        assertTrue(day.dark().duration().isZero());
        assertEquals(List.of(), day.usable());
        assertEquals(97, day.hours().size(), 1);
        assertTrue(keys(day).contains("night.sunDoesNotSet"));
        Night polar = night(Body.JUPITER, north, "2025-12-20");
        assertEquals(Duration.ofHours(24), polar.dark().duration());
        assertEquals(List.of(polar.dark()), polar.usable());
        assertTrue(keys(polar).contains("night.sunDoesNotRise"));
    }

    private static List<String> keys(Night night) {
        return night.warnings().stream().map(Message::key).toList();
    }

    /** Elongations of Venus about its superior conjunction on 2026 January 6 and of Mercury in the inferior one of 2026 November 4. */
    @ParameterizedTest
    @CsvSource({
        "VENUS, 2026-01-06, TOO_NEAR, night.tooNearSun",
        "MERCURY, 2026-11-04, TOO_NEAR, night.tooNearSun",
        "VENUS, 2026-04-01, NEAR, night.nearSun",
        "JUPITER, 2026-01-10, NONE, -"
    })
    void nearnessToTheSun(Body body, String date, SunCaution caution, String warning) {
        Night night = night(body, SITE, date);
        assertEquals(caution, night.caution());
        assertEquals(!warning.equals("-"), keys(night).contains(warning));
    }

    @ParameterizedTest
    @CsvSource({"1940-05-01, night.untested", "2150-05-01, night.untested", "1500-05-01, night.invalid"})
    void datesBeyondTheEphemeris(String date, String warning) {
        assertTrue(keys(night(Body.JUPITER, SITE, date)).contains(warning));
    }

    /** A wall in the east hides the planet until it has climbed over it. */
    @Test
    void theHorizonLimitsTheUse() {
        Horizon wall = Horizon.parse(List.of("azimuth,altitude", "# the house", "0,0", "80,30", "150,30", "160;5"));
        Night free = night(Body.JUPITER, SITE, "2026-12-01");
        Night walled = Night.of(Body.JUPITER, SITE, free.date(), free.offset(), wall);
        Instant start = walled.usable().get(0).start();
        assertEquals(30, walled.at(start).apparentAltitudeDeg(), 0.01);
        assertEquals(0, free.at(free.usable().get(0).start()).apparentAltitudeDeg(), 0.01);
        assertEquals(free.planet().rise(), walled.planet().rise());
        assertFalse(walled.usableAt(start.minusSeconds(60)));
        assertTrue(walled.usableAt(start.plusSeconds(60)));
    }

    @Test
    void horizonsAreLinearBetweenPointsAlsoThroughNorth() {
        Horizon horizon = Horizon.parse(List.of("350, 10", "10, 20"));
        assertEquals(15, horizon.altitudeDeg(0), 1e-9);
        assertEquals(12.5, horizon.altitudeDeg(355), 1e-9);
        assertEquals(15, horizon.altitudeDeg(180), 1e-9);
        assertEquals(12, Horizon.level(12).altitudeDeg(275), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "400,3", "10", "10,x", "10,95", "10,1,2"})
    void badHorizonsAreRefused(String line) {
        assertThrows(IllegalArgumentException.class, () -> Horizon.parse(List.of(line)));
    }

    /** The central meridian is the feature's longitude when it passes, and passages are a rotation apart. */
    @ParameterizedTest
    @CsvSource({"spot=II:45.5, 0", "spot = ii:45+0.5@2026-11-01, 15.4", "red=I:359.9, 0"})
    void featuresPassTheMeridian(String text, double driftedDeg) {
        Night night = night(Body.JUPITER, SITE, "2026-12-01");
        Feature feature = Feature.parse(text, Body.JUPITER);
        List<Instant> passages = feature.passages(night.sky(), night.dark());
        assertEquals(1.5, passages.size(), 0.6);
        for (Instant utc : passages) {
            double meridian =
                    Ephemeris.aspect(Body.JUPITER, utc, Optional.of(SITE)).centralMeridianDeg(feature.system());
            assertEquals(0, angle(meridian, feature.longitudeDeg() + driftedDeg), 0.3);
            assertEquals(0, angle(meridian, feature.longitudeDeg(utc)), 0.01);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"45", "spot=IV:45", "spot=45", "=II:45", "spot=II:400", "spot=II:45+1@2026-13-01", "spot=II:"})
    void badFeaturesAreRefused(String text) {
        assertThrows(IllegalArgumentException.class, () -> Feature.parse(text, Body.JUPITER));
    }

    @Test
    void planetsWithOneSystemNeedNoName() {
        assertEquals(RotationSystem.SINGLE, Feature.parse("dark=290", Body.MARS).system());
    }

    @Test
    void eventsComeInOrder() {
        Night night = night(Body.JUPITER, SITE, "2026-12-01");
        List<SkyEvent> events = night.events(List.of(Feature.parse("spot=II:45", Body.JUPITER)));
        assertEquals(events.stream().sorted(Comparator.comparing(SkyEvent::utc)).toList(), events);
        assertEquals(SkyEvent.Kind.SUN, events.get(0).kind());
        for (SkyEvent.Kind kind : SkyEvent.Kind.values()) {
            assertTrue(events.stream().anyMatch(e -> e.kind() == kind), kind.name());
        }
        assertTrue(events.stream().allMatch(e -> night.dark().contains(e.utc())));
        assertTrue(events.stream().anyMatch(e -> !e.observable()));
    }
}
