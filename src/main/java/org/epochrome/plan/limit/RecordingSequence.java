package org.epochrome.plan.limit;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.epochrome.image.Band;
import org.epochrome.text.Message;

/**
 * Recordings that make one colour picture.
 *
 * @param recordings by time
 * @param sets how often the order is run through
 * @param order bands of one set
 * @param turnDegPerHour of the planet
 * @param reasons why it is so
 */
public record RecordingSequence(
        List<PlannedRecording> recordings, int sets, List<Band> order, double turnDegPerHour, List<Message> reasons) {
    private static final List<Double> DISTANCES = List.of(0.0, 0.5, 0.7, 0.8, 0.9, 0.95, 0.98);

    public RecordingSequence {
        recordings = List.copyOf(recordings);
        order = List.copyOf(order);
        reasons = List.copyOf(reasons);
    }

    public Instant start() {
        return recordings.get(0).start();
    }

    public Instant end() {
        return recordings.get(recordings.size() - 1).end();
    }

    /** The instant for which the picture is made: midway between the first and the last mid-exposure. */
    public Instant epoch() {
        Instant first = recordings.get(0).mid();
        return first.plus(
                Duration.between(first, recordings.get(recordings.size() - 1).mid())
                        .dividedBy(2));
    }

    /** The order as it is written down: R-G-B-G-R. */
    public String orderText() {
        return order.stream().map(Band::name).collect(Collectors.joining("-"));
    }

    /** Largest turn between a recording and the epoch, degrees. */
    public double largestTurnDeg() {
        return recordings.stream().mapToDouble(r -> Math.abs(turnDeg(r))).max().orElse(0);
    }

    private double turnDeg(PlannedRecording r) {
        return turnDegPerHour * Duration.between(epoch(), r.mid()).toMillis() / 3.6e6;
    }

    /** What turning leaves at distances from the disk's centre; the worse side of the disk counts. */
    public List<LossAt> losses() {
        List<LossAt> losses = new ArrayList<>();
        for (double distance : DISTANCES) {
            double worstFrame = 1;
            double worstBand = 1;
            for (int side : new int[] {-1, 1}) {
                for (Band band : order) {
                    double best = Double.POSITIVE_INFINITY;
                    for (PlannedRecording r : recordings) {
                        if (r.band().equals(band)) {
                            double growth = growth(distance, side * turnDeg(r));
                            worstFrame = Math.max(worstFrame, growth);
                            best = Math.min(best, growth);
                        }
                    }
                    worstBand = Math.max(worstBand, best);
                }
            }
            losses.add(new LossAt(distance, worstFrame, worstBand));
        }
        return losses;
    }

    /** A point that stood nearer to the centre when it was recorded was seen finer than needed: it is not lost, nor is detail gained. */
    private static double growth(double distance, double turnDeg) {
        return turnDeg <= 0 ? 1 : new TurningLoss(turnDeg).growth(distance);
    }

    /** Width at the limb that some band has not seen in any frame, a part of the radius; 0 if every band saw all of the disk. */
    public double unseenBySomeBand() {
        double most = 0;
        for (int side : new int[] {-1, 1}) {
            for (Band band : order) {
                double least = recordings.stream()
                        .filter(r -> r.band().equals(band))
                        .mapToDouble(r -> Math.max(0, side * turnDeg(r)))
                        .min()
                        .orElse(0);
                most = Math.max(most, new TurningLoss(least).unseen());
            }
        }
        return most;
    }
}
