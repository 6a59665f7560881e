package org.epochrome.plan.night;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.epochrome.ephemeris.GalileanMoon;
import org.epochrome.ephemeris.GalileanMoons;
import org.epochrome.ephemeris.MoonPlace;

/**
 * Finds what the planet's moons and their shadows do: their places are interpolated between full hours (Io within 1e-4 radii of the
 * planet), and zeros of their distance from the planet's outline are searched.
 */
final class MoonEvents {
    private static final Duration PLACES_STEP = Duration.ofHours(1);
    /** Shorter than a grazing transit that anybody would call one. */
    private static final Duration STEP = Duration.ofMinutes(6);

    private static final int QUANTITIES = 6;

    private final NightSky sky;
    private final Interval interval;
    private final Track places;

    private MoonEvents(NightSky sky, Interval interval) {
        this.sky = sky;
        this.interval = interval;
        places = Track.of(interval, PLACES_STEP, MoonEvents::quantities);
    }

    /** All events of the moons in an interval, by time; empty for planets of whose moons no theory is known here. */
    static List<MoonEvent> of(NightSky sky, Interval interval) {
        if (sky.body() != GalileanMoons.PLANET) {
            return List.of();
        }
        MoonEvents events = new MoonEvents(sky, interval);
        List<MoonEvent> found = new ArrayList<>();
        for (GalileanMoon moon : GalileanMoon.values()) {
            for (MoonEvent.Kind kind : MoonEvent.Kind.values()) {
                events.add(moon, kind, found);
            }
        }
        found.sort(Comparator.comparing(MoonEvent::utc));
        return found;
    }

    private static double[] quantities(Instant utc) {
        List<MoonPlace> moons = GalileanMoons.at(utc).moons();
        double[] q = new double[QUANTITIES * moons.size()];
        for (int i = 0; i < moons.size(); i++) {
            MoonPlace moon = moons.get(i);
            double[] own = {
                moon.side(), moon.pole(), moon.depth(),
                moon.fromSun().side(), moon.fromSun().pole(), moon.fromSun().depth()
            };
            System.arraycopy(own, 0, q, QUANTITIES * i, QUANTITIES);
        }
        return q;
    }

    private void add(GalileanMoon moon, MoonEvent.Kind kind, List<MoonEvent> found) {
        for (Crossings.Crossing crossing : Crossings.of(degree(moon, kind), interval, STEP)) {
            Instant utc = crossing.utc();
            found.add(new MoonEvent(utc, moon, kind, crossing.upward(), visible(moon, kind, utc)));
        }
    }

    private boolean visible(GalileanMoon moon, MoonEvent.Kind kind, Instant utc) {
        return switch (kind) {
            case TRANSIT, SHADOW_TRANSIT -> true;
            case OCCULTATION -> degree(moon, MoonEvent.Kind.ECLIPSE).applyAsDouble(utc) < 0;
            case ECLIPSE -> degree(moon, MoonEvent.Kind.OCCULTATION).applyAsDouble(utc) < 0;
        };
    }

    /** How far into an event a moon is, in radii of the planet or so; negative outside of it. */
    private ToDoubleFunction<Instant> degree(GalileanMoon moon, MoonEvent.Kind kind) {
        int first = QUANTITIES * (moon.number() - 1);
        return utc -> {
            double[] q = places.at(utc);
            Lighting lighting = sky.lighting(utc);
            double seen = lighting.insideSeen(q[first], q[first + 1]);
            double lit = lighting.insideLit(q[first + 3], q[first + 4]);
            return switch (kind) {
                case TRANSIT -> Math.min(seen, q[first + 2]);
                case OCCULTATION -> Math.min(seen, -q[first + 2]);
                case ECLIPSE -> Math.min(lit, -q[first + 5]);
                case SHADOW_TRANSIT ->
                    lit < 0 || q[first + 5] < 0
                            ? Math.min(lit, q[first + 5])
                            : Math.min(lit, lighting.observerAbove(q[first + 3], q[first + 4]));
            };
        };
    }
}
