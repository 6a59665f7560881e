package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Shift;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.turn.Turned;

/**
 * How far colours lie apart in a stack, in pixels: the rms, over all exposures but the reference, of the distance of
 * their detail from the reference's at the middle of the disk. Measured twice, in the plain stack (frames laid on top of
 * each other by the centroid of their light) and in the result.
 */
final class Fringe {
    private final Schedule schedule;
    private final Turning turning;
    private final List<Plane> planes;

    Fringe(Schedule schedule, Turning turning, List<Plane> planes) {
        this.schedule = schedule;
        this.turning = turning;
        this.planes = planes;
    }

    /** In the plain stack; NaN if the detail does not tell. */
    double plain(List<FittedDisk> fits, Progress progress) {
        FittedDisk reference = fits.get(schedule.reference());
        View view = turning.viewAtEpoch(reference);
        PixelOffset centre = lightCentre(schedule.reference(), reference);
        List<Detail> details = new ArrayList<>();
        List<PixelOffset> expected = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            progress.check();
            FittedDisk fit = fits.get(i);
            PixelOffset own = lightCentre(i, fit);
            // Centroids on top of each other: the disk is taken to lie where its light's centre says.
            FittedDisk stacked = fit.at(fit.disk().movedBy(own.x() - centre.x(), own.y() - centre.y()));
            Turned moved = turning.move(
                    planes.get(i), stacked, schedule.exposures().get(i).aspect(), view, width(), height(), progress);
            details.add(Detail.of(moved, view, fit.shading().carried(fit.disk(), view.disk())));
            expected.add(expected(i, view, own, centre));
        }
        return rms(details, expected);
    }

    /** In a stack of the exposures as they were turned for the result; NaN if the detail does not tell. */
    double of(List<Turned> turned, List<FittedDisk> fits, boolean wereTurned) {
        View view = turning.viewAtEpoch(fits.get(schedule.reference()));
        List<Detail> details = new ArrayList<>();
        List<PixelOffset> expected = new ArrayList<>();
        PixelOffset nothing = new PixelOffset(0, 0);
        for (int i = 0; i < turned.size(); i++) {
            details.add(Detail.of(
                    turned.get(i),
                    view,
                    fits.get(i).shading().carried(fits.get(i).disk(), view.disk())));
            expected.add(wereTurned ? nothing : expected(i, view, nothing, nothing));
        }
        return rms(details, expected);
    }

    private double rms(List<Detail> details, List<PixelOffset> expected) {
        int reference = schedule.reference();
        double sum = 0;
        int count = 0;
        for (int i = 0; i < details.size(); i++) {
            if (i == reference) {
                continue;
            }
            Shift shift = DetailWitness.measure(
                    details.get(reference),
                    details.get(i),
                    expected.get(i).x(),
                    expected.get(i).y());
            if (shift.known()) {
                sum += shift.x() * shift.x() + shift.y() * shift.y();
                count++;
            }
        }
        return count == 0 ? Double.NaN : Math.sqrt(sum / count);
    }

    /** Where an exposure's detail will lie against the reference's if nothing is turned: where the search begins. */
    private PixelOffset expected(int index, View view, PixelOffset own, PixelOffset centre) {
        Exposure exposure = schedule.exposures().get(index);
        Exposure reference = schedule.referenceExposure();
        double east = turning.eastwardRad(exposure.aspect()) - turning.eastwardRad(reference.aspect());
        double x = view.column(0, Math.sin(east)) - view.column(0, 0);
        double y = view.row(0, Math.sin(east)) - view.row(0, 0);
        return new PixelOffset(x - (own.x() - centre.x()), y - (own.y() - centre.y()));
    }

    /** Centre of light of an exposure against its fitted centre. */
    private PixelOffset lightCentre(int index, FittedDisk fit) {
        Plane plane = planes.get(index);
        double reach = 1.15 * fit.disk().equatorialRadiusPx() + 8;
        double sum = 0;
        double sx = 0;
        double sy = 0;
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double dx = x - fit.disk().x();
                double dy = y - fit.disk().y();
                double light = plane.at(x, y) - fit.background();
                if (dx * dx + dy * dy < reach * reach && light > 0.1 * fit.brightness()) {
                    sum += light;
                    sx += light * dx;
                    sy += light * dy;
                }
            }
        }
        return sum > 0 ? new PixelOffset(sx / sum, sy / sum) : new PixelOffset(0, 0);
    }

    private int width() {
        return planes.get(schedule.reference()).width();
    }

    private int height() {
        return planes.get(schedule.reference()).height();
    }
}
