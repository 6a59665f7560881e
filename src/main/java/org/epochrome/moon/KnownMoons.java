package org.epochrome.moon;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.GalileanMoon;
import org.epochrome.ephemeris.GalileanMoons;
import org.epochrome.ephemeris.MoonPlace;
import org.epochrome.ephemeris.ShadowPlace;

/** The moons and shadows that the ephemeris expects in the frames; only Jupiter's are known. */
public final class KnownMoons {
    /** Standard deviation of the Sun's disk, in parts of its radius: what a shadow's penumbra is blurred by. */
    private static final double SUN_SOFTNESS = 0.5;

    private static final int NEARBY_S = 60;

    private KnownMoons() {}

    public static List<MoonOrShadow> of(Body body, List<Instant> instants) {
        List<MoonOrShadow> result = new ArrayList<>();
        if (body != GalileanMoons.PLANET) {
            return result;
        }
        for (GalileanMoon moon : GalileanMoon.values()) {
            MoonOrShadow itself = moon(moon, instants);
            if (instants.stream().anyMatch(itself.inSight())) {
                result.add(itself);
            }
            List<Instant> fallen = around(instants).stream()
                    .filter(utc -> shadowAt(moon, utc).isPresent())
                    .toList();
            if (!fallen.isEmpty()) {
                result.add(shadow(moon, fallen));
            }
        }
        return result;
    }

    private static MoonOrShadow moon(GalileanMoon moon, List<Instant> instants) {
        return new MoonOrShadow(
                Optional.of(moon.displayName()),
                false,
                moon.radiusKm() / GalileanMoons.PLANET.equatorialRadiusKm(),
                0,
                instants.stream().anyMatch(utc -> moonAt(moon, utc).depth() < 0),
                utc -> {
                    MoonPlace place = moonAt(moon, utc);
                    return new SkyPoint(place.side(), place.pole());
                },
                utc -> !moonAt(moon, utc).hidden() && !moonAt(moon, utc).eclipsed());
    }

    /** The instants, and some shortly before and after: a course needs two. */
    private static List<Instant> around(List<Instant> instants) {
        return instants.stream()
                .flatMap(utc -> Stream.of(utc.minusSeconds(NEARBY_S), utc, utc.plusSeconds(NEARBY_S)))
                .sorted()
                .toList();
    }

    /**
     * A shadow comes and goes at the limb; outside of its transit the course is the straight one between two instants.
     *
     * @param fallen when it lies on the side that is seen
     */
    private static MoonOrShadow shadow(GalileanMoon moon, List<Instant> fallen) {
        Instant first = fallen.get(0);
        Instant last = fallen.get(fallen.size() - 1);
        SkyPoint from = place(shadowAt(moon, first).orElseThrow());
        SkyPoint way = place(shadowAt(moon, last).orElseThrow()).minus(from);
        double seconds = MoonOrShadow.secondsSince(first, last);
        MoonOrShadow.Course straight =
                MoonOrShadow.Course.straight(first, from, seconds > 0 ? way.times(1 / seconds) : new SkyPoint(0, 0));
        ShadowPlace middle = shadowAt(moon, fallen.get(fallen.size() / 2)).orElseThrow();
        return new MoonOrShadow(
                Optional.of(moon.displayName()),
                true,
                moon.radiusKm() / GalileanMoons.PLANET.equatorialRadiusKm(),
                0.5 * SUN_SOFTNESS * (middle.penumbraRadius() - middle.umbraRadius()),
                false,
                utc -> shadowAt(moon, utc).map(KnownMoons::place).orElseGet(() -> straight.at(utc)),
                utc -> shadowAt(moon, utc).isPresent());
    }

    private static MoonPlace moonAt(GalileanMoon moon, Instant utc) {
        return GalileanMoons.at(utc).moons().get(moon.number() - 1);
    }

    private static Optional<ShadowPlace> shadowAt(GalileanMoon moon, Instant utc) {
        return GalileanMoons.at(utc).shadows().stream()
                .filter(s -> s.moon() == moon)
                .findFirst();
    }

    private static SkyPoint place(ShadowPlace shadow) {
        return new SkyPoint(shadow.side(), shadow.pole());
    }
}
