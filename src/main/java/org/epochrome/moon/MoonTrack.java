package org.epochrome.moon;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.turn.Rotation;

/**
 * A companion as the frames show it.
 *
 * @param companion on the course that the fits agree on
 * @param frames that may show it
 * @param places its fit in each frame by itself; null where the frame does not hold it
 */
public record MoonTrack(MoonOrShadow companion, List<MoonFrame> frames, List<SpotFit> places) {
    /** No place is trusted better than so many pixels. */
    private static final double LEAST_SIGMA_PX = 0.05;

    /** Fits in which a companion shows less than this part of what is not smooth ground do not show its position. */
    private static final double PLAIN = 0.4;

    /** Least contrast with the ground. */
    public static final double LEAST_CONTRAST = 0.08;
    /** A predicted companion's course must explain its positions this many times better than rotation with the globe. */
    private static final double CLEARLY = 1.5;
    /** The factor for a companion that no ephemeris predicts: a marking's position differs from band to band, and a free course follows that. */
    private static final double MORE_CLEARLY = 3;
    /** Longest that a moon or its shadow takes to cross a globe: Callisto some 4.9 h. Longer courses are none, nor are they straight. */
    private static final double LONGEST_S = 5 * 3600;
    /** Instants that a free straight course must be seen at on the globe: through two there is always one. */
    private static final int LEAST_INSTANTS = 3;
    /** Part of its time that two instants must lie apart. */
    private static final double APART = 0.1;
    /**
     * How far spots drift against the winds of their latitude at most, about 70 m/s on Jupiter's equator. Common practice, no source:
     * winds come from maps of other years, and large spots roll between two of them.
     */
    private static final double DRIFT_DEG_PER_DAY = 5;
    /** Places that scatter about a straight course by more than so many standard errors follow none. */
    private static final double MOST_MISFIT = 2;
    /** Scatter about the course below which nothing could be distinguished. */
    private static final double TOO_LITTLE_PX = 0.25;

    /** The course through what the fits found: the expected one, moved as a whole. */
    public static MoonTrack moved(MoonOrShadow expected, List<MoonFrame> frames, List<SpotFit> places) {
        MoonTrack raw = new MoonTrack(expected, frames, places);
        double weights = raw.sum(i -> 1);
        return weights == 0
                ? raw
                : new MoonTrack(expected.on(expected.course().movedBy(raw.off(i -> 1 / weights))), frames, places);
    }

    /** The straight course that fits the places best. */
    public static MoonTrack straight(MoonOrShadow expected, List<MoonFrame> frames, List<SpotFit> places) {
        MoonTrack raw = new MoonTrack(expected, frames, places);
        IntToDoubleFunction time = i ->
                MoonOrShadow.secondsSince(frames.get(0).mid(), frames.get(i).mid());
        double w = raw.sum(i -> 1);
        double wt = raw.sum(time);
        double wtt = raw.sum(i -> time.applyAsDouble(i) * time.applyAsDouble(i));
        double det = w * wtt - wt * wt;
        if (det <= 1e-9 * w * w) {
            return moved(expected, frames, places);
        }
        SkyPoint at = raw.off(i -> (wtt - wt * time.applyAsDouble(i)) / det);
        SkyPoint rate = raw.off(i -> (w * time.applyAsDouble(i) - wt) / det);
        MoonOrShadow.Course more = MoonOrShadow.Course.straight(frames.get(0).mid(), at, rate);
        return new MoonTrack(expected.on(utc -> expected.at(utc).plus(more.at(utc))), frames, places);
    }

    /** The course against disks that lie elsewhere. */
    public MoonTrack against(List<FittedDisk> disks) {
        List<MoonFrame> other = new ArrayList<>();
        List<SpotFit> there = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            MoonFrame frame = frames.get(i);
            SpotFit found = places.get(i);
            other.add(frame.with(disks.get(i)));
            there.add(
                    found == null
                            ? null
                            : found.at(other.get(i).place(frame.x(found.place()), frame.y(found.place()))));
        }
        return new MoonTrack(companion, other, there).through(there);
    }

    /** The course through other fits: that of a predicted companion is moved as a whole. */
    public MoonTrack through(List<SpotFit> other) {
        return companion.name().isPresent() ? moved(companion, frames, other) : straight(companion, frames, other);
    }

    public MoonTrack on(List<MoonFrame> other) {
        return new MoonTrack(companion, other, places);
    }

    public MoonTrack sized(MoonOrShadow other) {
        return new MoonTrack(other, frames, places);
    }

    /** Frames that hold it. */
    public int[] held() {
        return IntStream.range(0, frames.size())
                .filter(i -> places.get(i) != null)
                .toArray();
    }

    /** Frames that show it plainly, so that its place counts. */
    public int[] plain() {
        return IntStream.of(held()).filter(i -> plain(places.get(i))).toArray();
    }

    public boolean plain(SpotFit found) {
        return found.explained() > PLAIN && Math.abs(found.contrast(companion.shadow())) > LEAST_CONTRAST;
    }

    /** How far a frame's fit lies off the course. */
    SkyPoint off(int frame) {
        return places.get(frame).place().minus(companion.at(frames.get(frame).mid()));
    }

    /** Rms distance of the plain places from the course, pixels. */
    public double offPx() {
        return scatterPx(IntStream.of(plain()).mapToObj(this::off).toList());
    }

    /**
     * Whether the plain places turn with the globe, as far as its winds are known, rather than follow the course; also where that
     * cannot be determined.
     *
     * @param epoch how the globe stands at the epoch
     * @param rotations how far it turns from there to each frame
     */
    public boolean turns(View epoch, List<Rotation> rotations) {
        List<SkyPoint> carried = new ArrayList<>();
        for (int i : plain()) {
            carried.add(carried(
                    frames.get(i).view(), epoch, rotations.get(i), places.get(i).place()));
        }
        if (carried.stream().anyMatch(p -> Double.isNaN(p.side()))) {
            return false;
        }
        if (companion.name().isPresent()) {
            return scatterPx(carried) < CLEARLY * Math.max(TOO_LITTLE_PX, offPx());
        }
        double sure = Math.hypot(Math.max(TOO_LITTLE_PX, offPx()), centreSigmaPx());
        return instants() < LEAST_INSTANTS
                || misfit() > MOST_MISFIT
                || scatterPx(withoutDrift(carried)) < MORE_CLEARLY * sure;
    }

    /** Whether it was seen for longer than a moon's course is straight. */
    public boolean takesTooLong() {
        double[] seconds = seconds();
        return seconds.length > 0 && seconds[seconds.length - 1] - seconds[0] > LONGEST_S;
    }

    /** Times of the plain places in order. */
    private double[] seconds() {
        return IntStream.of(plain()).mapToDouble(this::second).sorted().toArray();
    }

    private double second(int frame) {
        return MoonOrShadow.secondsSince(frames.get(0).mid(), frames.get(frame).mid());
    }

    /** How many instants that are well apart the plain places have. */
    private int instants() {
        double[] seconds = seconds();
        int count = 0;
        double last = Double.NEGATIVE_INFINITY;
        for (double s : seconds) {
            if (s - last > APART * (seconds[seconds.length - 1] - seconds[0])) {
                count++;
                last = s;
            }
        }
        return count;
    }

    /** Rms distance of the plain places from a straight course fitted to them, standard errors. */
    private double misfit() {
        double sum = IntStream.of(plain())
                .mapToDouble(i -> Math.pow(
                        off(i).length()
                                * frames.get(i).radiusPx()
                                / places.get(i).sigmaPx(),
                        2))
                .sum();
        return Math.sqrt(sum / Math.max(1, 2 * plain().length - 4));
    }

    /** Rms standard error of the plain frames' disks, pixels. */
    private double centreSigmaPx() {
        return Math.sqrt(IntStream.of(plain())
                .mapToDouble(i -> Math.pow(frames.get(i).fit().centreSigmaPx(), 2))
                .average()
                .orElse(0));
    }

    /** Places of the surface without the drift along their parallel that explains most of their scatter and that winds allow. */
    private List<SkyPoint> withoutDrift(List<SkyPoint> carried) {
        int[] plain = plain();
        double time = IntStream.of(plain).mapToDouble(this::second).average().orElse(0);
        double side = carried.stream().mapToDouble(SkyPoint::side).average().orElse(0);
        double squares = 0;
        double product = 0;
        for (int k = 0; k < plain.length; k++) {
            double t = second(plain[k]) - time;
            squares += t * t;
            product += t * (carried.get(k).side() - side);
        }
        double most = Math.toRadians(DRIFT_DEG_PER_DAY) / 86400 * Math.sqrt(Math.max(0, 1 - side * side));
        double rate = squares > 0 ? Math.max(-most, Math.min(most, product / squares)) : 0;
        List<SkyPoint> still = new ArrayList<>();
        for (int k = 0; k < plain.length; k++) {
            still.add(carried.get(k).minus(new SkyPoint(rate * (second(plain[k]) - time), 0)));
        }
        return still;
    }

    /** Where a point of the surface that a frame shows lies at the epoch; NaN off the disk. */
    private static SkyPoint carried(View from, View to, Rotation rotation, SkyPoint place) {
        double depth = from.depth(place.pole(), place.side());
        double x = from.bodyX(place.pole(), depth);
        double z = from.bodyZ(place.pole(), depth);
        double forth = -rotation.backRad(from.graphicLatitude(x, place.side(), z));
        double then = x * Math.cos(forth) - place.side() * Math.sin(forth);
        return new SkyPoint(x * Math.sin(forth) + place.side() * Math.cos(forth), to.poleOf(then, z));
    }

    private double weight(int frame) {
        double sigma = Math.hypot(LEAST_SIGMA_PX, places.get(frame).sigmaPx())
                / frames.get(frame).radiusPx();
        return 1 / (sigma * sigma);
    }

    private double sum(IntToDoubleFunction factor) {
        return IntStream.of(plain())
                .mapToDouble(i -> weight(i) * factor.applyAsDouble(i))
                .sum();
    }

    /** Weighted sum of how far the plain places lie off. */
    private SkyPoint off(IntToDoubleFunction factor) {
        return new SkyPoint(
                sum(i -> factor.applyAsDouble(i) * off(i).side()), sum(i -> factor.applyAsDouble(i) * off(i).pole()));
    }

    private double scatterPx(List<SkyPoint> points) {
        SkyPoint mean = new SkyPoint(0, 0);
        for (SkyPoint p : points) {
            mean = mean.plus(p.times(1.0 / points.size()));
        }
        double squares = 0;
        for (SkyPoint p : points) {
            double off = p.minus(mean).length();
            squares += off * off / points.size();
        }
        return frames.get(0).radiusPx() * Math.sqrt(squares);
    }
}
