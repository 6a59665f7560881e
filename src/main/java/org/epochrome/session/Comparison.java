package org.epochrome.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;
import org.epochrome.disk.FittedDisk;
import org.epochrome.job.Progress;

/**
 * Which details are compared with which: the exposure of each band nearest to the epoch with those of the other bands,
 * three bands together; every other exposure with the one that leads its band. Few details are held at a time.
 */
final class Comparison {
    private static final List<String> COLOURS = List.of("R", "G", "B");

    /** Bands that must be softened beyond so many blurs are compared apart, so that they do not blur the others. */
    private static final double COARSE = 1.5;

    private final Schedule schedule;
    private final Details details;
    private final List<FittedDisk> places;

    /**
     * @param details the exposures' detail
     * @param places where the disks lie
     */
    Comparison(Schedule schedule, Details details, List<FittedDisk> places) {
        this.schedule = schedule;
        this.details = details;
        this.places = places;
    }

    /** What the details say about each other, on the common pixels. */
    List<Link> links(Progress progress) {
        Map<String, Integer> leads = leads(schedule);
        List<Link> links = new ArrayList<>();
        linkLeads(leads, links, progress);
        for (String band : leads.keySet()) {
            int lead = leads.get(band);
            List<Integer> others = IntStream.range(0, schedule.exposures().size())
                    .filter(i -> i != lead && band(schedule, i).equals(band))
                    .boxed()
                    .toList();
            double grain =
                    others.stream().mapToDouble(details::leastGrainPx).max().orElse(0);
            Detail against =
                    others.isEmpty() ? null : detail(lead, Math.max(grain, details.leastGrainPx(lead)), progress);
            for (int i : others) {
                links.add(link(lead, against, i, Math.max(grain, details.leastGrainPx(lead)), progress));
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

    private Link link(int from, Detail against, int to, double grainPx, Progress progress) {
        Detail own = detail(to, grainPx, progress);
        return new Link(from, to, DetailWitness.measure(against, own, 0, 0), Witness.DETAIL);
    }

    private Detail detail(int index, double grainPx, Progress progress) {
        return details.of(index, places.get(index), true, grainPx, progress);
    }

    /** The exposure of each band nearest to the epoch; the reference leads its own band. */
    static Map<String, Integer> leads(Schedule schedule) {
        Map<String, Integer> leads = new LinkedHashMap<>();
        leads.put(band(schedule, schedule.reference()), schedule.reference());
        for (int i = 0; i < schedule.exposures().size(); i++) {
            int candidate = i;
            leads.merge(
                    band(schedule, i),
                    i,
                    (old, now) ->
                            old != schedule.reference() && away(schedule, candidate) < away(schedule, old) ? now : old);
        }
        return leads;
    }

    private static long away(Schedule schedule, int index) {
        return Math.abs(schedule.exposures().get(index).mid().toEpochMilli()
                - schedule.epoch().toEpochMilli());
    }

    private static String band(Schedule schedule, int index) {
        return schedule.exposures().get(index).band().name();
    }

    /**
     * Three bands are compared together, others with the reference alone; so is a band that dispersion draws out so far that
     * only coarse detail of it is to be trusted.
     */
    private void linkLeads(Map<String, Integer> leads, List<Link> links, Progress progress) {
        int reference = schedule.reference();
        List<Integer> others = leads.entrySet().stream()
                .filter(e -> e.getValue() != reference)
                .sorted(Comparator.comparing((Map.Entry<String, Integer> e) -> COLOURS.contains(e.getKey()) ? 0 : 1))
                .map(Map.Entry::getValue)
                .toList();
        boolean trio = others.size() >= 2
                && others.subList(0, 2).stream()
                        .allMatch(i -> COLOURS.contains(band(schedule, i)) && !details.isCoarse(i, COARSE));
        if (trio) {
            int first = others.get(0);
            int second = others.get(1);
            double grain = Math.max(
                    details.leastGrainPx(reference),
                    Math.max(details.leastGrainPx(first), details.leastGrainPx(second)));
            List<Shift> shifts = DetailWitness.measure(
                    detail(reference, grain, progress),
                    detail(first, grain, progress),
                    detail(second, grain, progress));
            links.add(new Link(reference, first, shifts.get(0), Witness.DETAIL));
            links.add(new Link(reference, second, shifts.get(1), Witness.DETAIL));
        }
        for (int other : others.subList(trio ? 2 : 0, others.size())) {
            double grain = Math.max(details.leastGrainPx(reference), details.leastGrainPx(other));
            links.add(link(reference, detail(reference, grain, progress), other, grain, progress));
        }
    }
}
