package org.epochrome.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Fusion;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.turn.Turned;

/** Co-registers the exposures: what the detail says after turning, weighed against the limb. */
final class Registration {
    /** A disk fit is never trusted better than this: blur is not quite Gaussian, limbs are not quite even. */
    private static final double LIMB_FLOOR_PX = 0.02;

    private static final double DETAIL_FLOOR_PX = 0.01;
    /** Witnesses further apart than so many standard errors disagree. */
    private static final double DISAGREE = 5;

    /**
     * What was found for one exposure.
     *
     * @param fitted its disk, put where limb and detail together see it
     * @param correction by which the limb's centre was moved, pixels of the exposure
     * @param detail shift of its detail against the reference's on the output's pixels, before the correction
     */
    record Registered(FittedDisk fitted, PixelOffset correction, Shift detail) {}

    private static final List<String> COLOURS = List.of("R", "G", "B");

    private final Schedule schedule;
    private final Turning turning;
    private final List<String> warnings;

    Registration(Schedule schedule, Turning turning, List<String> warnings) {
        this.schedule = schedule;
        this.turning = turning;
        this.warnings = warnings;
    }

    List<Registered> register(List<Plane> planes, List<FittedDisk> found, Progress progress) {
        Plane target = planes.get(schedule.reference());
        View view = turning.viewAtEpoch(found.get(schedule.reference()));
        Map<String, Integer> leads = leads();
        Map<String, Detail> leadDetails = new LinkedHashMap<>();
        List<Link> links = new ArrayList<>();
        int done = 0;
        for (Map.Entry<String, Integer> lead : leads.entrySet()) {
            int i = lead.getValue();
            leadDetails.put(lead.getKey(), detail(planes.get(i), found.get(i), i, view, target, progress));
            progress.at(++done / (double) found.size());
        }
        linkLeads(leads, leadDetails, links);
        for (int i = 0; i < found.size(); i++) {
            progress.check();
            String band = band(i);
            if (leads.get(band) != i) {
                Detail detail = detail(planes.get(i), found.get(i), i, view, target, progress);
                links.add(new Link(
                        leads.get(band), i, floored(DetailWitness.measure(leadDetails.get(band), detail, 0, 0))));
                progress.at(++done / (double) found.size());
            }
        }
        return fuse(found, links, view.disk());
    }

    /** The exposure of each band nearest to the epoch; the reference leads its own band. */
    private Map<String, Integer> leads() {
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
                links.add(new Link(reference, leads.get(others.get(k)), floored(shifts.get(k))));
            }
        }
        for (String band : others.subList(trio ? 2 : 0, others.size())) {
            links.add(new Link(
                    reference, leads.get(band), floored(DetailWitness.measure(against, details.get(band), 0, 0))));
        }
    }

    private Detail detail(Plane plane, FittedDisk fit, int index, View view, Plane target, Progress progress) {
        Turned turned = turning.turn(
                plane, fit, schedule.exposures().get(index).aspect(), view, target.width(), target.height(), progress);
        return Detail.of(turned, view, fit.shading().carried(fit.disk(), view.disk()));
    }

    private static Shift floored(Shift shift) {
        return shift.known()
                ? new Shift(
                        shift.x(),
                        shift.y(),
                        Math.hypot(shift.sigmaX(), DETAIL_FLOOR_PX),
                        Math.hypot(shift.sigmaY(), DETAIL_FLOOR_PX))
                : shift;
    }

    private List<Registered> fuse(List<FittedDisk> found, List<Link> links, Disk output) {
        List<Double> limb = found.stream()
                .map(f -> Math.hypot(f.centreSigmaPx(), LIMB_FLOOR_PX)
                        * output.equatorialRadiusPx()
                        / f.disk().equatorialRadiusPx())
                .toList();
        Map<Integer, Link> towards = new HashMap<>();
        for (Link link : links) {
            towards.put(link.to(), link);
            warnIfApart(link, Math.hypot(limb.get(link.from()), limb.get(link.to())));
        }
        List<Shift> corrections = Fusion.corrections(limb, links);
        List<Registered> result = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            FittedDisk fit = found.get(i);
            PixelOffset moved = onFrame(corrections.get(i), output, fit.disk());
            Disk disk = fit.disk().movedBy(moved.x(), moved.y());
            result.add(new Registered(fit.at(disk), moved, againstReference(i, towards)));
        }
        return result;
    }

    private void warnIfApart(Link link, double limbSigma) {
        Shift s = link.shift();
        double off = Math.max(
                Math.abs(s.x()) / Math.hypot(limbSigma, s.sigmaX()),
                Math.abs(s.y()) / Math.hypot(limbSigma, s.sigmaY()));
        if (s.known() && off > DISAGREE) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "%s: limb and detail disagree about its place by %.2f px.",
                    schedule.exposures().get(link.to()).frame().head().file().getFileName(),
                    s.lengthPx()));
        }
    }

    /** The shift of an exposure's detail against the reference's, over its band's lead if need be. */
    private Shift againstReference(int index, Map<Integer, Link> towards) {
        Link link = towards.get(index);
        if (link == null) {
            return Shift.UNKNOWN;
        }
        return link.from() == schedule.reference()
                ? link.shift()
                : againstReference(link.from(), towards).then(link.shift());
    }

    /** A displacement on the output's pixels as one on a frame's: through the body's own axes. */
    private static PixelOffset onFrame(Shift shift, Disk output, Disk frame) {
        double out = Math.toRadians(output.northAngleDeg());
        double pole = -shift.x() * Math.sin(out) - shift.y() * Math.cos(out);
        double side = (output.mirrored() ? -1 : 1) * (shift.x() * Math.cos(out) - shift.y() * Math.sin(out));
        double scale = frame.equatorialRadiusPx() / output.equatorialRadiusPx();
        double in = Math.toRadians(frame.northAngleDeg());
        double across = frame.mirrored() ? -side : side;
        return new PixelOffset(
                scale * (-pole * Math.sin(in) + across * Math.cos(in)),
                scale * (-pole * Math.cos(in) - across * Math.sin(in)));
    }
}
