package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;

/**
 * How far colours lie apart in a stack, in pixels: the rms, over all exposures but the reference, of the distance of
 * their detail from the reference's at the middle of the disk. Measured twice, in the plain stack (frames laid on top of
 * each other by the centroid of their light) and in the result.
 */
final class Fringe {
    private final Schedule schedule;
    private final Turning turning;
    private final List<Plane> planes;
    private final List<FittedDisk> fits;
    private final Details details;
    private final Details rough;

    /**
     * @param fits where the disks lie by limb and detail
     * @param details the exposures' detail
     * @param rough the same on coarser pixels, for what lies apart by whole pixels
     */
    Fringe(
            Schedule schedule,
            Turning turning,
            List<Plane> planes,
            List<FittedDisk> fits,
            Details details,
            Details rough) {
        this.schedule = schedule;
        this.turning = turning;
        this.planes = planes;
        this.fits = fits;
        this.details = details;
        this.rough = rough;
    }

    /** In the plain stack; NaN if the detail does not tell. */
    double plain(Progress progress) {
        PixelOffset centre = LightCentre.of(planes.get(schedule.reference()), fits.get(schedule.reference()));
        List<FittedDisk> stacked = new ArrayList<>();
        List<PixelOffset> expected = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            PixelOffset own = LightCentre.of(planes.get(i), fits.get(i));
            // Centroids on top of each other: the disk is taken to lie where its light's centre says.
            PixelOffset off = new PixelOffset(own.x() - centre.x(), own.y() - centre.y());
            stacked.add(fits.get(i).at(fits.get(i).disk().movedBy(off.x(), off.y())));
            expected.add(unturned(i, off));
        }
        return stacked(stacked, expected, progress);
    }

    /** In the result; NaN if the detail does not tell. */
    double result(boolean turned, Progress progress) {
        if (!turned) {
            List<PixelOffset> expected = new ArrayList<>();
            for (int i = 0; i < fits.size(); i++) {
                expected.add(unturned(i, new PixelOffset(0, 0)));
            }
            return stacked(fits, expected, progress);
        }
        List<Link> links = new Comparison(schedule, details, fits).links(progress);
        List<Shift> shifts = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            shifts.add(Comparison.against(schedule.reference(), i, links));
        }
        return rms(shifts, details);
    }

    private double stacked(List<FittedDisk> places, List<PixelOffset> expected, Progress progress) {
        int reference = schedule.reference();
        Details.Seen against = rough.sight(reference, places.get(reference), false, progress);
        List<Shift> shifts = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            if (i != reference) {
                List<List<Detail>> alike =
                        rough.alike(List.of(against, rough.sight(i, places.get(i), false, progress)));
                shifts.add(DetailWitness.measure(
                        alike.get(0),
                        alike.get(1),
                        expected.get(i).x() / rough.factor(),
                        expected.get(i).y() / rough.factor()));
            }
        }
        return rms(shifts, rough);
    }

    private static double rms(List<Shift> shifts, Details on) {
        double sum = 0;
        int count = 0;
        for (Shift shift : shifts) {
            if (shift.known()) {
                sum += shift.x() * shift.x() + shift.y() * shift.y();
                count++;
            }
        }
        return count == 0 ? Double.NaN : on.factor() * Math.sqrt(sum / count);
    }

    /** Where an exposure's detail will lie against the reference's if nothing is turned: where the search begins. */
    private PixelOffset unturned(int index, PixelOffset misplaced) {
        View view = turning.viewAtEpoch(fits.get(schedule.reference()));
        double east = turning.eastwardRad(schedule.exposures().get(index))
                - turning.eastwardRad(schedule.referenceExposure());
        double x = view.column(0, Math.sin(east)) - view.column(0, 0);
        double y = view.row(0, Math.sin(east)) - view.row(0, 0);
        return new PixelOffset(x - misplaced.x(), y - misplaced.y());
    }
}
