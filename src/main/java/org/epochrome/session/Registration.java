package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.epochrome.align.Fusion;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.Turning.CloseUp;

/** Co-registers the exposures: what the detail says after turning, weighed against the limb. */
final class Registration {
    /** A disk fit is never trusted better than this: blur is not quite Gaussian, limbs are not quite even. */
    private static final double LIMB_FLOOR_PX = 0.02;

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

    private final Schedule schedule;
    private final Turning turning;
    private final List<String> warnings;

    Registration(Schedule schedule, Turning turning, List<String> warnings) {
        this.schedule = schedule;
        this.turning = turning;
        this.warnings = warnings;
    }

    List<Registered> register(List<Plane> planes, List<FittedDisk> found, Progress progress) {
        CloseUp target = turning.closeUp(found.get(schedule.reference()));
        int[] done = {0};
        List<Link> links = new Comparison(schedule).links(i -> {
            progress.check();
            progress.at(done[0]++ / (double) found.size());
            return turning.detail(
                    planes.get(i), found.get(i), schedule.exposures().get(i).aspect(), target, true, progress);
        });
        return fuse(found, links, target.view().disk());
    }

    private List<Registered> fuse(List<FittedDisk> found, List<Link> links, Disk output) {
        List<Double> limb = found.stream()
                .map(f -> Math.hypot(f.centreSigmaPx(), LIMB_FLOOR_PX)
                        * output.equatorialRadiusPx()
                        / f.disk().equatorialRadiusPx())
                .toList();
        for (Link link : links) {
            warnIfApart(link, Math.hypot(limb.get(link.from()), limb.get(link.to())));
        }
        List<Shift> corrections = Fusion.corrections(limb, links);
        List<Registered> result = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            FittedDisk fit = found.get(i);
            PixelOffset moved = onFrame(corrections.get(i), output, fit.disk());
            Disk disk = fit.disk().movedBy(moved.x(), moved.y());
            result.add(new Registered(fit.at(disk), moved, Comparison.against(schedule.reference(), i, links)));
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
