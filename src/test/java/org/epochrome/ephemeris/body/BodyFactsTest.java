package org.epochrome.ephemeris.body;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Body;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class BodyFactsTest {
    /** A planet that does not exist, with everything that a planet can have. */
    private static final String NEWCOMER = """
            figure.equatorialRadiusKm = 1000
            figure.polarRadiusKm = 900
            argument.a = 10 + 20 T
            argument.b = 30 - 2 d
            pole.rightAscension = 100 - 0.5 T - 0.25 sin a + 0.125 sin b
            pole.declination = -15.5 + 0.5 cos b
            meridian.systems = II I
            meridian.I = 40.5 - 500.25 d
            meridian.I.source = one
            meridian.II = 50.5 - 501.25 d + 0.5 sin a
            meridian.II.source = two
            albedo.nm = 400 600 800
            albedo.geometric = 0.2 0.6 0.4
            surface.belted = yes
            moons.visible = yes
            moons.transits = no
            map.letters = XX
            wind.table = wind-x.txt
            wind.source = three
            clouds.band = UV
            clouds.windMs = 100
            clouds.heightKm = 50
            clouds.source = four
            rings.regionsKm = 1200 1500, 1600 1900
            rings.brightFromKm = 1600
            rings.depthsToKm = 1200 0, 1500 0.5, 1900 2
            rings.depthDoubt = 0.3
            """;

    private static final Pattern YEAR = Pattern.compile("\\b(19|20)\\d\\d\\b");

    private static BodyFacts facts(String text) {
        return BodyFacts.of(FactsFile.of("x.properties", text));
    }

    @Test
    void readsWhateverAPlanetCanHave() {
        BodyFacts facts = facts(NEWCOMER);
        assertEquals(1000, facts.equatorialRadiusKm());
        assertEquals(900, facts.polarRadiusKm());
        Rotation rotation = facts.rotation();
        PeriodicAngle.Argument a = new PeriodicAngle.Argument(10, 20);
        PeriodicAngle.Argument b = new PeriodicAngle.Argument(30, -2 * 36525.0);
        assertEquals(
                new PeriodicAngle(
                        100, -0.5, List.of(new PeriodicAngle.Term(-0.25, a), new PeriodicAngle.Term(0.125, b))),
                rotation.poleRightAscension());
        assertEquals(new PeriodicAngle(-15.5, 0, List.of(new PeriodicAngle.Term(0.5, b))), rotation.poleDeclination());
        assertEquals(List.of("II", "I"), List.copyOf(rotation.meridians().keySet()));
        assertEquals(
                new Rotation.Meridian(new PeriodicAngle(50.5, -501.25, List.of(new PeriodicAngle.Term(0.5, a))), "two"),
                rotation.meridians().get("II"));
        assertFalse(rotation.prograde());
        assertTrue(facts.belted());
        assertEquals(new MoonVisibility(true, false), facts.moons());
        assertEquals("XX", facts.mapLetters());
        assertEquals(Optional.of(new WindTable("wind-x.txt", "three")), facts.wind());
        assertEquals(Optional.of(new CloudRotation("UV", 100, 50, "four")), facts.clouds());
        assertEquals(
                Optional.of(new RingFacts(
                        List.of(new RingFacts.Region(1200, 1500), new RingFacts.Region(1600, 1900)),
                        1600,
                        List.of(
                                new RingFacts.Depth(1200, 0),
                                new RingFacts.Depth(1500, 0.5),
                                new RingFacts.Depth(1900, 2)),
                        0.3)),
                facts.rings());
    }

    @ParameterizedTest
    @CsvSource({"300, 0.2", "400, 0.2", "500, 0.4", "600, 0.6", "700, 0.5", "800, 0.4", "900, 0.4"})
    void albedosAreJoinedByStraightLines(double nm, double albedo) {
        assertEquals(albedo, facts(NEWCOMER).albedo().at(nm), 1e-12);
    }

    /** 2 pi 1050 km at 100 m/s. */
    @Test
    void cloudsGoAroundAtTheirHeight() {
        assertEquals(
                2 * Math.PI * 1_050_000 / 100 / 86400,
                facts(NEWCOMER).clouds().get().periodDays(1000),
                1e-12);
    }

    @Test
    void windsCloudsAndRingsMayBeAbsent() {
        BodyFacts facts = facts(NEWCOMER.replaceAll("(?m)^(wind|clouds|rings)\\..*\n", ""));
        assertEquals(Optional.empty(), facts.wind());
        assertEquals(Optional.empty(), facts.clouds());
        assertEquals(Optional.empty(), facts.rings());
    }

    @Test
    void everyKeyIsNeeded() {
        List<String> keys =
                NEWCOMER.lines().map(line -> line.replaceFirst(" =.*", "")).toList();
        assertEquals(27, keys.size());
        for (String key : keys) {
            String without = NEWCOMER.replaceAll("(?m)^" + Pattern.quote(key) + " .*\n", "");
            IllegalStateException e = assertThrows(IllegalStateException.class, () -> facts(without), key);
            String missing = key.equals("argument.a")
                    ? "x.properties: meridian.II cannot be used: there is no argument.a."
                    : key.equals("argument.b")
                            ? "x.properties: pole.rightAscension cannot be used: there is no argument.b."
                            : "x.properties: " + key + " is missing.";
            assertEquals(missing, e.getMessage());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "figure.polarRadiusKm | wide | 'wide' is not a number",
                "figure.polarRadiusKm | 0 | 0.0 is not above 0",
                "figure.polarRadiusKm | 1001 | it is above the equatorial radius",
                "argument.a | 10 + 20 | the formula is not complete",
                "argument.a | 10 + 20 h | 'h' is neither T nor d",
                "argument.a | 10 + 20 T + 3 T | nothing may follow T",
                "pole.rightAscension | 100 0.5 T | '0.5' stands where + or - is expected",
                "pole.rightAscension | 100 - 0.5 d | 'd' is neither T nor sin",
                "pole.declination | 10 + 0.5 sin a | 'sin' is neither T nor cos",
                "meridian.I | x | 'x' is not a number",
                "albedo.nm | 400 600 500 | the wavelengths do not grow",
                "albedo.geometric | 0.2 0.6 | 2 albedos do not go with 3 wavelengths",
                "surface.belted | true | 'true' is neither yes nor no",
                "map.letters | jup | 'jup' is not two capital letters",
                "rings.regionsKm | 1200 1500 1600 | '1200 1500 1600' is not two numbers",
                "rings.depthsToKm | 1200 0, | '' is not two numbers",
            })
    void saysWhatIsWrong(String key, String value, String problem) {
        String wrong = NEWCOMER.replaceAll("(?m)^" + Pattern.quote(key) + " = .*", key + " = " + value);
        IllegalStateException e = assertThrows(IllegalStateException.class, () -> facts(wrong));
        assertEquals("x.properties: " + key + " cannot be used: " + problem + ".", e.getMessage());
    }

    @Test
    void refusesKeysThatNobodyReads() {
        IllegalStateException e =
                assertThrows(IllegalStateException.class, () -> facts(NEWCOMER + "moons.transit = yes\n"));
        assertEquals("x.properties: no such key is known: moons.transit.", e.getMessage());
    }

    @Test
    void refusesABodyWithoutAResource() {
        IllegalStateException e = assertThrows(IllegalStateException.class, () -> BodyFacts.of("NOBODY"));
        assertEquals("The resource nobody.properties is missing.", e.getMessage());
    }

    @ParameterizedTest
    @EnumSource
    void everyBodyIsComplete(Body body) {
        assertNotNull(BodyFacts.of(body.name()));
        assertTrue(body.systems().contains(body.defaultSystem()));
        assertEquals(
                body.wind().isEmpty() && body.clouds().isEmpty(),
                body.surfaceSystem().isPresent());
        assertTrue(body.reachRadii() >= 1);
        assertEquals(body.rings().isPresent(), body.reachRadii() > 1);
        for (double nm = 350; nm <= 900; nm += 10) {
            double albedo = body.albedo().at(nm);
            assertTrue(albedo > 0 && albedo < 1, body + " at " + nm);
        }
    }

    /** Each paragraph of numbers cites somebody, by the year; no key stands twice, as the last one would win unseen. */
    @ParameterizedTest
    @EnumSource
    void everyBodyCitesItsSources(Body body) throws IOException {
        int cited = 0;
        Set<String> keys = new HashSet<>();
        for (String paragraph : text(body).replace("\\\n", " ").split("\n\n", -1)) {
            List<String> values =
                    paragraph.lines().filter(line -> !line.startsWith("#")).toList();
            values.forEach(line -> assertTrue(keys.add(line.split(" ", 2)[0]), line));
            boolean judged = values.stream().allMatch(l -> l.startsWith("surface.") || l.startsWith("moons."));
            if (!judged) {
                String sources = paragraph
                        .lines()
                        .filter(l -> l.startsWith("#") || l.contains(".source = "))
                        .collect(Collectors.joining("\n"));
                assertTrue(YEAR.matcher(sources).find(), body + " does not say where this comes from:\n" + paragraph);
                cited++;
            }
        }
        assertTrue(cited >= 4, cited + " paragraphs of " + body);
    }

    @Test
    void lettersOfMapsDiffer() {
        Set<String> letters = Arrays.stream(Body.values()).map(Body::mapLetters).collect(Collectors.toSet());
        assertEquals(Body.values().length, letters.size());
    }

    private static String text(Body body) throws IOException {
        String name = body.name().toLowerCase(Locale.ROOT) + ".properties";
        try (InputStream in = BodyFacts.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
