package org.epochrome.session.combine;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.epochrome.align.Link;
import org.epochrome.align.NetworkAdjustment;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;
import org.epochrome.disk.Disk;
import org.epochrome.disk.View;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.Comparison;
import org.epochrome.session.compare.Details;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.register.LightCentre;
import org.epochrome.session.register.Misalignment;
import org.epochrome.session.register.Registration;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/**
 * Measures how far the bands of the result lie off the reference frame's band, and how far they would in a simple stack.
 * The frames are compared once more where they are merged: by their detail, turned to the epoch, and by their limbs as
 * they are, without the disk model. Both measurements of all frames are adjusted together; what follows for a band is the
 * mean over its frames by their weights.
 */
final class Fringe {
    /** Standard error that limbs have at least: bands differ in limb darkening and blur; found on invented scenes. */
    private static final double LIMB_FLOOR_PX = 0.03;
    /** Standard error that detail has at least. */
    private static final double DETAIL_FLOOR_PX = 0.01;

    /** Chi-square over degrees of freedom from which limb and detail contradict each other. */
    private static final double CONTRADICTS = 4;

    private final Recipe recipe;
    private final WorkingFrames frames;
    private final Turning turning;
    private final Details details;
    private final IntToDoubleFunction share;

    /**
     * @param frames with their disks as they are merged
     * @param details what shows their detail, turned to the epoch
     * @param share a frame's part in its band, 0 to 1
     */
    Fringe(Recipe recipe, WorkingFrames frames, Turning turning, Details details, IntToDoubleFunction share) {
        this.recipe = recipe;
        this.frames = frames;
        this.turning = turning;
        this.details = details;
        this.share = share;
    }

    /**
     * How well the colours are aligned.
     *
     * @param quality the figures
     * @param warnings a sentence for each that is not as it should be
     */
    record Measured(Combination.Quality quality, List<Message> warnings) {}

    Measured measure(Progress progress) {
        List<Link> links = new ArrayList<>();
        for (Link link : new Comparison(details, frames).links(progress)) {
            links.add(onOutput(link, DETAIL_FLOOR_PX));
        }
        links.addAll(limbs(progress));
        NetworkAdjustment measured =
                new NetworkAdjustment(frames.size(), frames.schedule().reference(), links);
        List<PixelOffset> none =
                frames.all().stream().map(f -> new PixelOffset(0, 0)).toList();
        Misalignment before = misalignment(measured, inSimpleStack());
        Misalignment after = misalignment(measured, recipe.corrections().turn() ? none : unturned());
        return new Measured(new Combination.Quality(before, after), warnings(before, after, measured));
    }

    private Link onOutput(Link link, double floorPx) {
        Shift s = link.shift();
        return new Link(
                link.from(),
                link.to(),
                s.known() ? s.times(details.factor()).withAddedSigma(floorPx) : s,
                link.witness());
    }

    /** How the limbs lie against the reference's. */
    private List<Link> limbs(Progress progress) {
        int reference = frames.schedule().reference();
        List<Shift> limbs = IntStream.range(0, frames.size())
                .parallel()
                .mapToObj(i -> details.limbShift(details.sight(frames.get(i), false, progress)))
                .toList();
        Shift base = limbs.get(reference);
        List<Link> links = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            if (i != reference) {
                Shift off = new Shift(-base.x(), -base.y(), base.sigmaX(), base.sigmaY(), base.covariance())
                        .then(limbs.get(i));
                links.add(onOutput(new Link(reference, i, off, Witness.LIMB), LIMB_FLOOR_PX));
            }
        }
        return links;
    }

    /**
     * The rms over the bands of the picture but the reference's.
     *
     * @param measured how frames lie where they are merged
     * @param offsets by how much farther each lies off in the picture that is judged
     */
    private Misalignment misalignment(NetworkAdjustment measured, List<PixelOffset> offsets) {
        Map<String, double[]> bands = weights();
        double[] reference = bands.remove(frames.reference().band());
        bands.keySet().retainAll(recipe.assignment().bands());
        List<double[]> places = new ArrayList<>();
        List<double[]> weights = new ArrayList<>();
        String worst = "";
        double farthest = -1;
        for (Map.Entry<String, double[]> band : bands.entrySet()) {
            double[] weight = band.getValue().clone();
            for (int i = 0; i < weight.length; i++) {
                weight[i] -= reference[i];
            }
            double[] place = measured.sum(weight);
            for (int i = 0; i < weight.length; i++) {
                place[0] += weight[i] * offsets.get(i).x();
                place[1] += weight[i] * offsets.get(i).y();
            }
            if (Math.hypot(place[0], place[1]) > farthest) {
                farthest = Math.hypot(place[0], place[1]);
                worst = band.getKey();
            }
            places.add(place);
            weights.add(weight);
        }
        return rms(measured, places, weights, worst);
    }

    /**
     * The rms length of vectors whose errors are known. Errors lengthen them, in the mean of the squares by their
     * variances, which are taken off. The variance of a quadratic form: Seber 1977, Linear Regression Analysis, section 1.5.
     */
    private static Misalignment rms(
            NetworkAdjustment measured, List<double[]> places, List<double[]> weights, String worst) {
        int n = places.size();
        if (n == 0) {
            return Misalignment.UNKNOWN;
        }
        double square = 0;
        double variance = 0;
        for (int a = 0; a < n; a++) {
            double[] one = places.get(a);
            double[][] own = measured.covariance(weights.get(a), weights.get(a));
            square += one[0] * one[0] + one[1] * one[1] - own[0][0] - own[1][1];
            for (int b = 0; b < n; b++) {
                double[] other = places.get(b);
                double[][] common = measured.covariance(weights.get(a), weights.get(b));
                for (int p = 0; p < 2; p++) {
                    for (int q = 0; q < 2; q++) {
                        variance += 4 * one[p] * common[p][q] * other[q] + 2 * common[p][q] * common[p][q];
                    }
                }
            }
        }
        double px = Math.sqrt(Math.max(0, square / n));
        return Misalignment.of(px, Math.sqrt(px * px + Math.sqrt(variance) / n) - px, worst);
    }

    /** The weights of the exposures in the mean of each band. */
    private Map<String, double[]> weights() {
        Map<String, double[]> weights = new LinkedHashMap<>();
        for (int i = 0; i < frames.size(); i++) {
            weights.computeIfAbsent(frames.get(i).band(), k -> new double[frames.size()])[i] = share.applyAsDouble(i);
        }
        return weights;
    }

    /** By how much farther detail lies off in a stack that is aligned by the centroids of light, and not turned. */
    private List<PixelOffset> inSimpleStack() {
        WorkingFrame reference = frames.reference();
        Disk output = reference.disk().disk();
        List<PixelOffset> turns = unturned();
        PixelOffset base = LightCentre.of(reference.pixels(), reference.disk());
        List<PixelOffset> result = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            WorkingFrame frame = frames.get(i);
            PixelOffset own = Registration.carried(
                    LightCentre.of(frame.pixels(), frame.disk()), frame.disk().disk(), output);
            result.add(new PixelOffset(
                    turns.get(i).x() - own.x() + base.x(), turns.get(i).y() - own.y() + base.y()));
        }
        return result;
    }

    /** How far detail lies off the reference's if nothing is turned, in the mean over the disk. */
    private List<PixelOffset> unturned() {
        View view = turning.viewAtEpoch(frames.reference().disk());
        double here = turning.eastwardRad(frames.reference().exposure());
        List<PixelOffset> result = new ArrayList<>();
        for (WorkingFrame frame : frames.all()) {
            double side = Registration.MEAN_PATH * Math.sin(turning.eastwardRad(frame.exposure()) - here);
            result.add(new PixelOffset(view.column(0, side) - view.column(0, 0), view.row(0, side) - view.row(0, 0)));
        }
        return result;
    }

    private List<Message> warnings(Misalignment before, Misalignment after, NetworkAdjustment measured) {
        List<Message> warnings = new ArrayList<>();
        if (after.shows()) {
            warnings.add(
                    Message.of("align.misaligned", after.px(), after.sigmaPx(), after.worstBand(), reason(measured)));
        }
        if (after.exceeds(before)) {
            warnings.add(Message.of("align.worse", after.px(), before.px()));
        }
        return warnings;
    }

    private Message reason(NetworkAdjustment measured) {
        if (!recipe.corrections().turn()) {
            return Message.of("align.notTurned");
        }
        if (!recipe.alignment().nudgesPx().isEmpty()) {
            return Message.of("align.movedByHand");
        }
        return Message.of(measured.contradiction() > CONTRADICTS ? "align.contradiction" : "align.diskContradicts");
    }
}
