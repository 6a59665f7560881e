package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Fusion;
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

    private final Schedule schedule;
    private final Turning turning;
    private final List<String> warnings;

    Registration(Schedule schedule, Turning turning, List<String> warnings) {
        this.schedule = schedule;
        this.turning = turning;
        this.warnings = warnings;
    }

    List<Registered> register(List<Plane> planes, List<FittedDisk> found, Progress progress) {
        int reference = schedule.reference();
        Plane target = planes.get(reference);
        View view = turning.viewAtEpoch(found.get(reference));
        Detail against = null;
        List<Shift> shifts = new ArrayList<>();
        for (int step = -1; step < found.size(); step++) {
            progress.check();
            progress.at((step + 1.0) / (found.size() + 1));
            int i = step < 0 ? reference : step;
            if (step == reference) {
                shifts.add(Shift.UNKNOWN);
                continue;
            }
            Detail detail = detail(planes.get(i), found.get(i), i, view, target, progress);
            if (step < 0) {
                against = detail;
            } else {
                shifts.add(floored(DetailWitness.measure(against, detail, 0, 0)));
            }
        }
        return fuse(found, shifts, view.disk());
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

    private List<Registered> fuse(List<FittedDisk> found, List<Shift> shifts, Disk output) {
        List<Double> limb = found.stream()
                .map(f -> Math.hypot(f.centreSigmaPx(), LIMB_FLOOR_PX)
                        * output.equatorialRadiusPx()
                        / f.disk().equatorialRadiusPx())
                .toList();
        for (int i = 0; i < shifts.size(); i++) {
            Shift s = shifts.get(i);
            double off = Math.max(
                    Math.abs(s.x()) / Math.hypot(Math.hypot(limb.get(i), limb.get(schedule.reference())), s.sigmaX()),
                    Math.abs(s.y()) / Math.hypot(Math.hypot(limb.get(i), limb.get(schedule.reference())), s.sigmaY()));
            if (s.known() && off > DISAGREE) {
                warnings.add(String.format(
                        Locale.ROOT,
                        "%s: limb and detail disagree about its place by %.2f px.",
                        schedule.exposures().get(i).frame().head().file().getFileName(),
                        s.lengthPx()));
            }
        }
        List<Shift> corrections = Fusion.corrections(limb, shifts, schedule.reference());
        List<Registered> result = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            FittedDisk fit = found.get(i);
            PixelOffset moved = onFrame(corrections.get(i), output, fit.disk());
            result.add(new Registered(fit.at(fit.disk().movedBy(moved.x(), moved.y())), moved, shifts.get(i)));
        }
        return result;
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
