package org.epochrome.session.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.Details.Seen;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.WorkingFrames;

/**
 * Which details are compared with which: the exposure of each band nearest to the epoch with those of the other bands,
 * three bands together; every other exposure with the one that leads its band. Few details are held at a time.
 */
public final class Comparison {
    private static final List<String> COLOURS = List.of("R", "G", "B");

    /** Bands whose dispersion blur is longer than this many seeing blurs are compared separately, so that they do not blur the others. */
    private static final double DRAWN_BLURS = 5;

    /** Uncertainty of a smear's length, as a fraction of it; found on invented scenes, where stated errors then hold. */
    private static final double SMEAR_KNOWN = 0.01;

    private final Schedule schedule;
    private final Details details;
    private final WorkingFrames frames;

    /** @param details what shows the frames' detail */
    public Comparison(Details details, WorkingFrames frames) {
        this.schedule = frames.schedule();
        this.details = details;
        this.frames = frames;
    }

    /** What the details say about each other, on the common pixels. */
    public List<Link> links(Progress progress) {
        Map<String, Integer> leads = leads(schedule);
        List<Link> links = new ArrayList<>();
        linkLeads(leads, links, progress);
        for (String band : leads.keySet()) {
            int lead = leads.get(band);
            Optional<Seen> against = Optional.empty();
            for (int i = 0; i < schedule.exposures().size(); i++) {
                if (i != lead && band(schedule, i).equals(band)) {
                    against = Optional.of(against.orElseGet(() -> sight(lead, progress)));
                    links.add(link(lead, against.get(), i, sight(i, progress)));
                }
            }
        }
        return links;
    }

    /** The shift of an exposure's detail against the reference's, over its band's lead if need be. */
    public static Shift against(int reference, int index, List<Link> links) {
        for (Link link : links) {
            if (link.to() == index) {
                return link.from() == reference
                        ? link.shift()
                        : against(reference, link.from(), links).then(link.shift());
            }
        }
        return Shift.UNKNOWN;
    }

    private Link link(int from, Seen against, int to, Seen own) {
        List<List<Detail>> alike = details.alike(List.of(against, own));
        Shift shift = DetailWitness.measure(alike.get(0), alike.get(1), 0, 0);
        return link(from, against, to, own, shift);
    }

    /**
     * A link by a measured shift. The smear of a band is known only as well as its passband and its spectrum, so the
     * shift is less certain along it.
     */
    private Link link(int from, Seen against, int to, Seen own, Shift shift) {
        double one = against.shading().smear().lengthPx();
        double other = own.shading().smear().lengthPx();
        double doubt = band(schedule, from).equals(band(schedule, to)) ? other - one : Math.hypot(one, other);
        double direction = (one > other ? against : own).shading().smear().directionDeg();
        return new Link(
                from, to, shift.known() ? shift.withAddedSigma(SMEAR_KNOWN * doubt, direction) : shift, Witness.DETAIL);
    }

    private Seen sight(int index, Progress progress) {
        return details.sight(frames.get(index), true, progress);
    }

    /** The exposure of each band nearest to the epoch; the reference leads its own band. */
    public static Map<String, Integer> leads(Schedule schedule) {
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
     * Three colours are compared together, other bands with the reference alone. A colour that dispersion smears strongly
     * would blur the others; they are compared without it, and it with both of them.
     */
    private void linkLeads(Map<String, Integer> leads, List<Link> links, Progress progress) {
        int reference = schedule.reference();
        Seen base = sight(reference, progress);
        List<Integer> colours = new ArrayList<>();
        List<Integer> others = new ArrayList<>();
        for (int lead : leads.values()) {
            if (lead != reference) {
                (colours.size() < 2 && COLOURS.contains(band(schedule, lead)) ? colours : others).add(lead);
            }
        }
        if (colours.size() < 2) {
            others.addAll(0, colours);
        } else {
            linkColours(base, colours.get(0), colours.get(1), links, progress);
        }
        for (int other : others) {
            links.add(link(reference, base, other, sight(other, progress)));
        }
    }

    private void linkColours(Seen base, int one, int two, List<Link> links, Progress progress) {
        int reference = schedule.reference();
        Seen sightOne = sight(one, progress);
        Seen sightTwo = sight(two, progress);
        if (sightOne.drawnBlurs() < DRAWN_BLURS && sightTwo.drawnBlurs() < DRAWN_BLURS) {
            List<List<Detail>> alike = details.alike(List.of(base, sightOne, sightTwo));
            List<Shift> shifts = DetailWitness.measure(alike.get(0), alike.get(1), alike.get(2));
            links.add(link(reference, base, one, sightOne, shifts.get(0)));
            links.add(link(reference, base, two, sightTwo, shifts.get(1)));
            return;
        }
        boolean sorted = sightOne.drawnBlurs() < sightTwo.drawnBlurs();
        int near = sorted ? one : two;
        int far = sorted ? two : one;
        Seen sightNear = sorted ? sightOne : sightTwo;
        Seen sightFar = sorted ? sightTwo : sightOne;
        links.add(link(reference, base, near, sightNear));
        List<List<Detail>> alike = details.alike(List.of(base, sightNear, sightFar));
        links.add(link(
                reference, base, far, sightFar, DetailWitness.predicted(alike.get(2), alike.get(0), alike.get(1))));
    }
}
