package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.epochrome.align.Fusion;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.job.Progress;

/** Co-registers the exposures: what the detail says after turning, weighed against the limb. */
final class Registration {
    /** A disk fit is never trusted better than this: blur is not quite Gaussian, limbs are not quite even. */
    private static final double LIMB_FLOOR_PX = 0.02;

    /** The same for detail. */
    private static final double DETAIL_FLOOR_PX = 0.01;
    /** Witnesses further apart than so many standard errors disagree. */
    private static final double DISAGREE = 5;
    /** A detail less sure than the limbs is believed within so many standard errors. */
    private static final double DOUBT = 3;

    /**
     * What was found for one exposure.
     *
     * @param fitted its disk, put where limb and detail together see it
     * @param correction by which the limb's centre was moved, pixels of the exposure
     * @param detail shift of its detail against the reference's on the output's pixels, before the correction
     */
    record Registered(FittedDisk fitted, PixelOffset correction, Shift detail) {}

    private final Schedule schedule;
    private final List<String> warnings;

    Registration(Schedule schedule, List<String> warnings) {
        this.schedule = schedule;
        this.warnings = warnings;
    }

    /**
     * Registers the exposures.
     *
     * @param details their detail
     * @param found their disks
     */
    List<Registered> register(Details details, List<FittedDisk> found, Progress progress) {
        FittedDisk reference = found.get(schedule.reference());
        int[] done = {0};
        List<Link> links = new Comparison(schedule)
                        .links(i -> {
                            progress.at(done[0]++ / (double) found.size());
                            return details.of(i, found.get(i), true, progress);
                        })
                        .stream()
                        .map(link -> onOutput(link, details.factor()))
                        .toList();
        return fuse(found, links, reference.disk());
    }

    /** A link on the output's pixels, trusted no more than detail deserves. */
    private static Link onOutput(Link link, int factor) {
        Shift s = link.shift();
        return new Link(
                link.from(),
                link.to(),
                s.known()
                        ? new Shift(
                                factor * s.x(),
                                factor * s.y(),
                                Math.hypot(factor * s.sigmaX(), DETAIL_FLOOR_PX),
                                Math.hypot(factor * s.sigmaY(), DETAIL_FLOOR_PX))
                        : s);
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
        List<Link> believed = links.stream()
                .map(link -> doubted(link, Math.hypot(limb.get(link.from()), limb.get(link.to()))))
                .toList();
        List<Shift> corrections = Fusion.corrections(limb, believed);
        List<Registered> result = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            FittedDisk fit = found.get(i);
            PixelOffset moved = onFrame(corrections.get(i), output, fit.disk());
            Disk disk = fit.disk().movedBy(moved.x(), moved.y());
            result.add(new Registered(fit.at(disk), moved, Comparison.against(schedule.reference(), i, links)));
        }
        return result;
    }

    /**
     * A link that contradicts limbs which are surer than it: its standard error is raised until the contradiction is within
     * {@link #DOUBT} of it. Markings of one band need not lie where those of another do.
     */
    private static Link doubted(Link link, double limbSigma) {
        Shift s = link.shift();
        return s.known()
                ? new Link(
                        link.from(),
                        link.to(),
                        new Shift(
                                s.x(),
                                s.y(),
                                doubted(s.x(), s.sigmaX(), limbSigma),
                                doubted(s.y(), s.sigmaY(), limbSigma)))
                : link;
    }

    private static double doubted(double off, double sigma, double limbSigma) {
        return sigma > limbSigma ? Math.max(sigma, Math.abs(off) / DOUBT) : sigma;
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
