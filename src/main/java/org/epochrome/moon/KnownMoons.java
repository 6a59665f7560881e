package org.epochrome.moon;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.GalileanMoon;
import org.epochrome.ephemeris.GalileanMoons;
import org.epochrome.ephemeris.MoonPlace;
import org.epochrome.ephemeris.ShadowPlace;

/** The moons and shadows that the ephemeris expects in the frames; only Jupiter's are known. */
final class KnownMoons {
    /** Standard deviation of the Sun's disk, in parts of its radius: what a shadow's penumbra is blurred by. */
    private static final double SUN_SOFTNESS = 0.5;

    private KnownMoons() {}

    static List<Companion> of(Body body, List<Instant> instants) {
        List<Companion> result = new ArrayList<>();
        if (body != Body.JUPITER) {
            return result;
        }
        List<GalileanMoons> skies = instants.stream().map(GalileanMoons::at).toList();
        for (GalileanMoon moon : GalileanMoon.values()) {
            List<MoonPlace> places =
                    skies.stream().map(s -> s.moons().get(moon.number() - 1)).toList();
            if (places.stream().noneMatch(p -> p.hidden() || p.eclipsed())) {
                result.add(moon(moon, places));
            }
            List<ShadowPlace> shadows = skies.stream()
                    .flatMap(s -> s.shadows().stream())
                    .filter(s -> s.moon() == moon)
                    .toList();
            if (shadows.size() == instants.size()) {
                result.add(shadow(moon, instants, shadows));
            }
        }
        return result;
    }

    private static Companion moon(GalileanMoon moon, List<MoonPlace> places) {
        return new Companion(
                Optional.of(moon.displayName()),
                false,
                moon.radiusKm() / Body.JUPITER.equatorialRadiusKm(),
                0,
                places.stream().anyMatch(p -> p.depth() < 0),
                utc -> {
                    MoonPlace place = GalileanMoons.at(utc).moons().get(moon.number() - 1);
                    return new SkyPoint(place.side(), place.pole());
                });
    }

    /** A shadow comes and goes at the limb; outside of its transit the course is the straight one between two instants. */
    private static Companion shadow(GalileanMoon moon, List<Instant> instants, List<ShadowPlace> places) {
        int last = instants.size() - 1;
        SkyPoint from = place(places.get(0));
        SkyPoint way = place(places.get(last)).minus(from);
        double seconds = Companion.secondsSince(instants.get(0), instants.get(last));
        Companion.Course straight = Companion.Course.straight(
                instants.get(0), from, seconds > 0 ? way.times(1 / seconds) : new SkyPoint(0, 0));
        ShadowPlace middle = places.get(places.size() / 2);
        return new Companion(
                Optional.of(moon.displayName()),
                true,
                moon.radiusKm() / Body.JUPITER.equatorialRadiusKm(),
                0.5 * SUN_SOFTNESS * (middle.penumbraRadius() - middle.umbraRadius()),
                false,
                utc -> GalileanMoons.at(utc).shadows().stream()
                        .filter(s -> s.moon() == moon)
                        .findFirst()
                        .map(KnownMoons::place)
                        .orElseGet(() -> straight.at(utc)));
    }

    private static SkyPoint place(ShadowPlace shadow) {
        return new SkyPoint(shadow.side(), shadow.pole());
    }
}
