package org.epochrome.plan.night;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.epochrome.text.Message;

/** All events of a night as one list. */
final class NightEvents {
    private final Night night;
    private final List<SkyEvent> events = new ArrayList<>();

    private NightEvents(Night night) {
        this.night = night;
    }

    static List<SkyEvent> of(Night night, List<Feature> features) {
        NightEvents all = new NightEvents(night);
        all.addSun();
        all.addPasses();
        for (MoonEvent event : night.moonEvents()) {
            all.add(
                    event.utc(),
                    SkyEvent.Kind.SATELLITE,
                    event.message(),
                    event.visible() && night.usableAt(event.utc()));
        }
        for (Feature feature : features) {
            for (Instant utc : feature.passages(night.sky(), night.dark())) {
                Message what = Message.of(
                        "night.event.feature", feature.name(), feature.system().key(), feature.longitudeDeg(utc) % 360);
                all.add(utc, SkyEvent.Kind.FEATURE, what, night.usableAt(utc));
            }
        }
        all.events.sort(Comparator.comparing(SkyEvent::utc));
        return List.copyOf(all.events);
    }

    private void addSun() {
        SunTimes sun = night.sun();
        add(sun.sunset(), SkyEvent.Kind.SUN, Message.of("night.event.sunset"));
        add(sun.civilDusk(), SkyEvent.Kind.SUN, Message.of("night.event.civilDusk"));
        add(sun.nauticalDusk(), SkyEvent.Kind.SUN, Message.of("night.event.nauticalDusk"));
        add(sun.astronomicalDusk(), SkyEvent.Kind.SUN, Message.of("night.event.astronomicalDusk"));
        add(sun.astronomicalDawn(), SkyEvent.Kind.SUN, Message.of("night.event.astronomicalDawn"));
        add(sun.nauticalDawn(), SkyEvent.Kind.SUN, Message.of("night.event.nauticalDawn"));
        add(sun.civilDawn(), SkyEvent.Kind.SUN, Message.of("night.event.civilDawn"));
        add(sun.sunrise(), SkyEvent.Kind.SUN, Message.of("night.event.sunrise"));
    }

    private void addPasses() {
        String name = night.body().displayName();
        RiseAndSet planet = night.planet();
        add(planet.rise(), SkyEvent.Kind.PLANET, Message.of("night.event.rise", name));
        add(
                Optional.of(planet.culmination()),
                SkyEvent.Kind.PLANET,
                Message.of("night.event.culmination", name, planet.culminationAltitudeDeg()));
        add(planet.set(), SkyEvent.Kind.PLANET, Message.of("night.event.set", name));
        add(night.moon().rise(), SkyEvent.Kind.MOON, Message.of("night.event.moonrise"));
        add(night.moon().set(), SkyEvent.Kind.MOON, Message.of("night.event.moonset"));
    }

    /** An event of the sky itself, which is left out if it happens by day. */
    private void add(Optional<Instant> utc, SkyEvent.Kind kind, Message what) {
        utc.filter(night.dark()::contains).ifPresent(t -> add(t, kind, what, true));
    }

    private void add(Instant utc, SkyEvent.Kind kind, Message what, boolean observable) {
        events.add(new SkyEvent(utc, kind, what, observable));
    }
}
