package org.epochrome.ephemeris.body;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What is known of a body. It stands in the resource of its name, with the sources, and is read when first asked for.
 *
 * @param equatorialRadiusKm for a giant planet at one bar
 * @param polarRadiusKm the same, at most the equatorial one
 * @param rotation pole and prime meridians
 * @param belted whether it has belts along its parallels
 * @param albedo geometric albedos
 * @param rings its rings, if it has some that show
 * @param wind its winds, if its surface turns with them
 * @param clouds the rotation of its clouds, if a band shows them instead of the globe
 * @param moons what can be seen of its moons
 * @param mapLetters two letters of its coordinates in maps (Marmo et al. 2018)
 */
public record BodyFacts(
        double equatorialRadiusKm,
        double polarRadiusKm,
        Rotation rotation,
        boolean belted,
        Albedo albedo,
        Optional<RingFacts> rings,
        Optional<WindTable> wind,
        Optional<CloudRotation> clouds,
        MoonVisibility moons,
        String mapLetters) {
    private static final Map<String, BodyFacts> READ = new ConcurrentHashMap<>();

    /**
     * What is known of the body of that name.
     *
     * @throws IllegalStateException if its resource is missing or wrong
     */
    public static BodyFacts of(String body) {
        BodyFacts known = READ.get(body);
        return known == null ? READ.computeIfAbsent(body, BodyFacts::read) : known;
    }

    private static BodyFacts read(String body) {
        return of(FactsFile.of(body));
    }

    static BodyFacts of(FactsFile file) {
        BodyFacts facts = new BodyFacts(
                file.positive("figure.equatorialRadiusKm"),
                file.positive("figure.polarRadiusKm"),
                Rotation.of(file),
                file.yes("surface.belted"),
                Albedo.of(file),
                file.has("rings.") ? Optional.of(RingFacts.of(file)) : Optional.empty(),
                file.has("wind.") ? Optional.of(WindTable.of(file)) : Optional.empty(),
                file.has("clouds.") ? Optional.of(CloudRotation.of(file)) : Optional.empty(),
                MoonVisibility.of(file),
                file.text("map.letters"));
        if (facts.polarRadiusKm > facts.equatorialRadiusKm) {
            throw file.malformed("figure.polarRadiusKm", "it is above the equatorial radius");
        }
        if (facts.mapLetters.length() != 2
                || !capital(facts.mapLetters.charAt(0))
                || !capital(facts.mapLetters.charAt(1))) {
            throw file.malformed("map.letters", "'" + facts.mapLetters + "' is not two capital letters");
        }
        file.refuseUnread();
        return facts;
    }

    private static boolean capital(char letter) {
        return letter >= 'A' && letter <= 'Z';
    }
}
