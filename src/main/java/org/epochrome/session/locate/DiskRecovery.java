package org.epochrome.session.locate;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.image.Plane;
import org.epochrome.io.head.FrameHead;
import org.epochrome.job.Progress;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.text.Message;

/**
 * Fits again what was fitted with an uncertain centre, or away from where the light's edge is steepest: from that edge, and
 * with the plate scale of the other frames of the same size. A frame whose centre stays uncertain is refused.
 */
final class DiskRecovery {
    /** Standard error of a centre above which a frame would be misaligned; common practice, no source. */
    private static final double MOST_CENTRE_SIGMA_PX = 0.5;

    private final Schedule schedule;
    private final List<Plane> planes;
    private final Fits fits;

    /** How the disk of an exposure is fitted. */
    interface Fits {
        DiskFit of(int index, FittedDisk earlier);
    }

    DiskRecovery(Schedule schedule, List<Plane> planes, Fits fits) {
        this.schedule = schedule;
        this.planes = planes;
        this.fits = fits;
    }

    /**
     * The disks, each as it is or fitted again.
     *
     * @throws NoDiskInFrame if a centre stays uncertain
     */
    List<FittedDisk> recovered(List<FittedDisk> found, Progress progress) {
        boolean[] trusted = new boolean[found.size()];
        for (int i = 0; i < trusted.length; i++) {
            trusted[i] = isTrusted(i, found.get(i));
        }
        return IntStream.range(0, found.size())
                .parallel()
                .mapToObj(i -> trusted[i] ? found.get(i) : recovered(i, found, trusted, progress))
                .toList();
    }

    private boolean isTrusted(int index, FittedDisk fit) {
        return isSure(fit) && fits.of(index, fit).edgeAgrees(planes.get(index), fit);
    }

    private static boolean isSure(FittedDisk fit) {
        return fit.centreSigmaPx() <= MOST_CENTRE_SIGMA_PX;
    }

    private FittedDisk recovered(int index, List<FittedDisk> found, boolean[] trusted, Progress progress) {
        FittedDisk earlier = found.get(index);
        Plane plane = planes.get(index);
        DiskFit free = fits.of(index, earlier);
        Optional<FittedDisk> alone = attempt(() -> free.refitFromEdge(plane, earlier, progress));
        OptionalDouble radius = radiusByOthers(index, found, trusted);
        Optional<FittedDisk> sized = radius.isPresent()
                ? attempt(() -> free.withRadius(radius.getAsDouble()).refitFromEdge(plane, earlier, progress))
                : Optional.empty();
        return Stream.of(alone, sized)
                .flatMap(Optional::stream)
                .filter(fit -> isTrusted(index, fit))
                .min(Comparator.comparingDouble(FittedDisk::residual))
                .or(() -> isSure(earlier) ? Optional.of(earlier) : Optional.empty())
                .orElseThrow(() -> refusal(index, earlier));
    }

    private static Optional<FittedDisk> attempt(Supplier<FittedDisk> fit) {
        try {
            return Optional.of(fit.get());
        } catch (DiskNotFound e) {
            return Optional.empty();
        }
    }

    /** The radius by the plate scale of the trusted frames of the same size; empty if there is none. */
    private OptionalDouble radiusByOthers(int index, List<FittedDisk> found, boolean[] trusted) {
        double[] scales = IntStream.range(0, found.size())
                .filter(i -> trusted[i] && size(i).equals(size(index)))
                .mapToDouble(i -> AtmosphericDispersion.arcsecPerPx(
                        schedule.exposures().get(i).aspect(), found.get(i).disk()))
                .sorted()
                .toArray();
        return scales.length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(0.5
                        * schedule.exposures().get(index).aspect().equatorialDiameterArcsec()
                        / scales[scales.length / 2]);
    }

    private String size(int index) {
        FrameHead head = schedule.exposures().get(index).frame().head();
        return head.width() + " x " + head.height();
    }

    private NoDiskInFrame refusal(int index, FittedDisk fit) {
        return new NoDiskInFrame(
                schedule.exposures().get(index).frame().head().file(),
                new DiskNotFound(Message.of("disk.uncertain", fit.centreSigmaPx())));
    }
}
