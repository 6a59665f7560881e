package org.epochrome.session.locate;

import java.util.Comparator;
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
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/**
 * Fits again what was fitted with an uncertain centre, or away from where the light's edge is steepest: from that edge, and
 * with the plate scale of the other frames of the same size. A frame whose centre stays uncertain is refused.
 */
final class DiskRecovery {
    /** Standard error of a centre above which a frame would be misaligned; common practice, no source. */
    private static final double MOST_CENTRE_SIGMA_PX = 0.5;

    private final WorkingFrames frames;
    private final Fits fits;

    /** How the disk of an exposure is fitted. */
    interface Fits {
        DiskFit of(int index, FittedDisk earlier);
    }

    DiskRecovery(WorkingFrames frames, Fits fits) {
        this.frames = frames;
        this.fits = fits;
    }

    /**
     * The frames, the disk of each as it is or fitted again.
     *
     * @throws NoDiskInFrame if a centre stays uncertain
     */
    WorkingFrames recovered(Progress progress) {
        boolean[] trusted = new boolean[frames.size()];
        for (int i = 0; i < trusted.length; i++) {
            trusted[i] = isTrusted(i, frames.get(i).disk());
        }
        return frames.at(IntStream.range(0, frames.size())
                .parallel()
                .mapToObj(i -> trusted[i] ? frames.get(i).disk() : recovered(i, trusted, progress))
                .toList());
    }

    private boolean isTrusted(int index, FittedDisk fit) {
        return isSure(fit) && fits.of(index, fit).edgeAgrees(frames.get(index).pixels(), fit);
    }

    private static boolean isSure(FittedDisk fit) {
        return fit.centreSigmaPx() <= MOST_CENTRE_SIGMA_PX;
    }

    private FittedDisk recovered(int index, boolean[] trusted, Progress progress) {
        FittedDisk earlier = frames.get(index).disk();
        Plane plane = frames.get(index).pixels();
        DiskFit free = fits.of(index, earlier);
        Optional<FittedDisk> alone = attempt(() -> free.refitFromEdge(plane, earlier, progress));
        OptionalDouble radius = radiusByOthers(index, trusted);
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
    private OptionalDouble radiusByOthers(int index, boolean[] trusted) {
        double[] scales = IntStream.range(0, frames.size())
                .filter(i -> trusted[i] && size(i).equals(size(index)))
                .mapToDouble(i -> AtmosphericDispersion.arcsecPerPx(
                        exposure(i).aspect(), frames.get(i).disk().disk()))
                .sorted()
                .toArray();
        return scales.length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        0.5 * exposure(index).aspect().equatorialDiameterArcsec() / scales[scales.length / 2]);
    }

    private Exposure exposure(int index) {
        return frames.get(index).exposure();
    }

    private String size(int index) {
        FrameHead head = exposure(index).frame().head();
        return head.width() + " x " + head.height();
    }

    private NoDiskInFrame refusal(int index, FittedDisk fit) {
        return new NoDiskInFrame(
                exposure(index).frame().head().file(),
                new DiskNotFound(Message.of("disk.uncertain", fit.centreSigmaPx())));
    }
}
