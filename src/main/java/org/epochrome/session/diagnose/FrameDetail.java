package org.epochrome.session.diagnose;

import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.turn.Rotation;
import org.epochrome.turn.Turned;

/** A frame on few pixels without its shading, of which maps can be made as if it lay in another way. */
final class FrameDetail {
    private static final double RADIUS_PX = 60;
    private static final double RIM = 0.9;
    private static final double LEAST_LIGHT = 0.25;
    private static final float TRUSTED = 0.98f;

    private final Plane ratio;
    private final Plane seen;
    private final Globe globe;
    private final Disk disk;

    private FrameDetail(Plane ratio, Plane seen, Globe globe, Disk disk) {
        this.ratio = ratio;
        this.seen = seen;
        this.globe = globe;
        this.disk = disk;
    }

    static FrameDetail of(WorkingFrame frame, Progress progress) {
        progress.check();
        int factor = Math.max(1, (int) (frame.disk().disk().equatorialRadiusPx() / RADIUS_PX));
        Plane plane = Binning.by(factor, frame.pixels());
        FittedDisk fit = frame.disk().binned(factor);
        Globe globe = frame.exposure().globe();
        View view = new View(globe, fit.disk());
        Turned own = Turning.turner(frame.with(() -> plane).at(fit))
                .turn(view, plane.width(), plane.height(), Rotation.none(), progress);
        float brightest = 0;
        for (float s : own.shade().data()) {
            brightest = Math.max(brightest, s);
        }
        Plane ratio = new Plane(plane.width(), plane.height());
        Plane seen = new Plane(plane.width(), plane.height());
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                float shade = own.shade().at(x, y);
                float value = own.picture().at(x, y);
                if (shade > LEAST_LIGHT * brightest
                        && !Float.isNaN(value)
                        && own.trust().at(x, y) > TRUSTED
                        && view.ellipticRadius(view.pole(x, y), view.side(x, y)) < RIM) {
                    ratio.set(x, y, value / shade);
                    seen.set(x, y, 1);
                }
            }
        }
        return new FrameDetail(ratio, seen, globe, fit.disk());
    }

    /** This frame, assumed to lie in another way. */
    FrameDetail lying(double northDeg, boolean mirrored) {
        return new FrameDetail(
                ratio, seen, globe, new Disk(disk.x(), disk.y(), disk.equatorialRadiusPx(), northDeg, mirrored));
    }

    /** North angle and mirroring that are assumed of it. */
    double northDeg() {
        return disk.northAngleDeg();
    }

    boolean mirrored() {
        return disk.mirrored();
    }

    /** Cosine of the phase angle. */
    double cosPhase() {
        return globe.cosPhase();
    }

    /** The map of the frame if it lies as it is assumed to. */
    DetailMap map() {
        return map(disk.northAngleDeg(), disk.mirrored());
    }

    /** The map of the frame if it lies in another way. */
    DetailMap map(double northDeg, boolean mirrored) {
        Disk other = new Disk(disk.x(), disk.y(), disk.equatorialRadiusPx(), Disk.wrapDeg(northDeg), mirrored);
        return DetailMap.of(ratio, seen, new View(globe, other));
    }
}
