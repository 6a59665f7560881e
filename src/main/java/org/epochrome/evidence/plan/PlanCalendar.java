package org.epochrome.evidence.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.epochrome.io.write.CalendarEntry;
import org.epochrome.io.write.CalendarWriter;
import org.epochrome.plan.Clock;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.Quantity;
import org.epochrome.plan.night.SkyEvent;
import org.epochrome.plan.night.SunCaution;
import org.epochrome.session.product.Provenance;

/** The recordings and the observable events of a plan as a calendar. */
final class PlanCalendar {
    private PlanCalendar() {}

    static String of(NightPlan plan) {
        String planet = plan.settings().body().displayName();
        Clock clock = new Clock(plan.settings().clock());
        List<CalendarEntry> entries = new ArrayList<>();
        plan.sequence()
                .ifPresent(s -> entries.add(new CalendarEntry(
                        s.start(),
                        s.end(),
                        planet + ": " + s.orderText() + ", sets: " + s.sets(),
                        s.recordings().stream()
                                .map(r -> clock.seconds(r.start()) + " " + clock.name() + " "
                                        + r.band().name() + " " + Quantity.time(r.length()))
                                .collect(Collectors.joining("\n")))));
        if (plan.night().caution() != SunCaution.TOO_NEAR) {
            plan.events().stream()
                    .filter(e -> e.observable())
                    .forEach(e -> entries.add(new CalendarEntry(e.utc(), e.utc(), title(planet, e), "")));
        }
        return CalendarWriter.text(entries, plan.night().dark().start(), Provenance.TOOL);
    }

    /** With the planet in front, unless the event is one of Sun or Moon. */
    private static String title(String planet, SkyEvent event) {
        boolean own = event.kind() != SkyEvent.Kind.SUN && event.kind() != SkyEvent.Kind.MOON;
        return (own ? planet + ": " : "") + event.what();
    }
}
