package org.epochrome.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;

/**
 * Which details are compared with which: the exposure of each band nearest to the epoch with those of the other bands,
 * three bands together; every other exposure with the one that leads its band. Few details are held at a time.
 */
final class Comparison {
    private static final List<String> COLOURS = List.of("R", "G", "B");

    private final Schedule schedule;

    Comparison(Schedule schedule) {
        this.schedule = schedule;
    }

    /**
     * What the details say about each other.
     *
     * @param detail makes the detail of an exposure; asked once for each
     */
    List<Link> links(IntFunction<Detail> detail) {
        Map<String, Integer> leads = leads();
        Map<String, Detail> leading = new LinkedHashMap<>();
        leads.forEach((band, i) -> leading.put(band, detail.apply(i)));
        List<Link> links = new ArrayList<>();
        linkLeads(leads, leading, links);
        for (int i = 0; i < schedule.exposures().size(); i++) {
            int lead = leads.get(band(i));
            if (lead != i) {
                Shift shift = DetailWitness.measure(leading.get(band(i)), detail.apply(i), 0, 0);
                links.add(new Link(lead, i, shift, Witness.DETAIL));
            }
        }
        return links;
    }

    /** The shift of an exposure's detail against the reference's, over its band's lead if need be. */
    static Shift against(int reference, int index, List<Link> links) {
        for (Link link : links) {
            if (link.to() == index) {
                return link.from() == reference
                        ? link.shift()
                        : against(reference, link.from(), links).then(link.shift());
            }
        }
        return Shift.UNKNOWN;
    }

    /** The exposure of each band nearest to the epoch; the reference leads its own band. */
    Map<String, Integer> leads() {
        Map<String, Integer> leads = new LinkedHashMap<>();
        leads.put(band(schedule.reference()), schedule.reference());
        for (int i = 0; i < schedule.exposures().size(); i++) {
            int candidate = i;
            leads.merge(
                    band(i), i, (old, now) -> old != schedule.reference() && away(candidate) < away(old) ? now : old);
        }
        return leads;
    }

    private long away(int index) {
        return Math.abs(schedule.exposures().get(index).mid().toEpochMilli()
                - schedule.epoch().toEpochMilli());
    }

    private String band(int index) {
        return schedule.exposures().get(index).band().name();
    }

    /** Three bands are compared together, any others with the reference alone. */
    private void linkLeads(Map<String, Integer> leads, Map<String, Detail> details, List<Link> links) {
        int reference = schedule.reference();
        Detail against = details.get(band(reference));
        List<String> others = leads.keySet().stream()
                .filter(b -> leads.get(b) != reference)
                .sorted(Comparator.comparing((String b) -> COLOURS.contains(b) ? 0 : 1))
                .toList();
        boolean trio = others.size() >= 2 && COLOURS.containsAll(others.subList(0, 2));
        if (trio) {
            List<Shift> shifts = DetailWitness.measure(against, details.get(others.get(0)), details.get(others.get(1)));
            for (int k = 0; k < 2; k++) {
                links.add(new Link(reference, leads.get(others.get(k)), shifts.get(k), Witness.DETAIL));
            }
        }
        for (String band : others.subList(trio ? 2 : 0, others.size())) {
            Shift shift = DetailWitness.measure(against, details.get(band), 0, 0);
            links.add(new Link(reference, leads.get(band), shift, Witness.DETAIL));
        }
    }
}
