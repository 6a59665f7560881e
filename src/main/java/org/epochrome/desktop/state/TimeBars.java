package org.epochrome.desktop.state;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import org.epochrome.desktop.style.Texts;
import org.epochrome.image.Passband;
import org.epochrome.io.file.VisibleText;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.schedule.Timetable;
import org.epochrome.time.RecordingSpan;

/**
 * The frames as bars of the time ribbon.
 *
 * @param axis where instants lie
 * @param bars one for each frame, in the order of the session
 * @param lanes how many lie above each other, since cameras may run at once
 */
public record TimeBars(TimeAxis axis, List<Bar> bars, int lanes) {
    private static final double LEAST_WIDTH_PX = 5;
    /** From so many times what a frame resolves a recording is marked as too long; usual ones are several times as long. */
    private static final double MUCH = 8;

    private static final Passband WHITE = new Passband(400, 690);

    /**
     * A bar.
     *
     * @param index number of the frame
     * @param frame the frame itself
     * @param left its left edge
     * @param width pixels
     * @param lane 0 at the top
     * @param band its name; Texts.of("panel.frame.image.colour") for three at once
     * @param passband what its colour comes from
     * @param turnedDeg how far it turns to the epoch; empty if left out
     * @param smeared whether the globe turned further during the recording than the frame resolves
     * @param doubtful whether something about it should be looked at
     * @param used whether it is part of the picture
     */
    public record Bar(
            int index,
            DatedFrame frame,
            double left,
            double width,
            int lane,
            String band,
            Passband passband,
            Optional<Double> turnedDeg,
            boolean smeared,
            boolean doubtful,
            boolean used) {

        /** By how much, as it is written on the bar. */
        public String turned() {
            return turnedDeg.map(Bar::signed).orElse(used ? "" : Texts.of("ribbon.leftOut"));
        }

        /** As the library's "%+.2f" has it, which would take half of the time to draw a hundred bars. */
        private static String signed(double deg) {
            long hundredths = Math.round(100 * Math.abs(deg));
            String sign = deg < 0 && hundredths > 0 ? "-" : "+";
            long rest = hundredths % 100;
            return sign + hundredths / 100 + (rest < 10 ? ".0" : ".") + rest + "°";
        }

        /** What it is, in full. */
        public String tip() {
            RecordingSpan span = frame.timing().span();
            boolean instant = span.duration().isZero();
            return VisibleText.of(frame.head().file().getFileName().toString())
                    + "\n" + clock(span.start())
                    + (instant ? Texts.of("ribbon.bar.noLength") : Texts.of("ribbon.bar.until", clock(span.end())))
                    + turnedDeg
                            .map(d -> Texts.of("ribbon.bar.turned", d + 0.0))
                            .orElse(used ? "" : Texts.of("ribbon.bar.leftOut"))
                    + (smeared ? Texts.of("ribbon.bar.smeared") : "")
                    + (frame.notes().isEmpty() ? "" : "\n" + UserMessages.lines(frame.notes()));
        }
    }

    /** Lays out the frames of a draft; empty if there are none. */
    public static Optional<TimeBars> of(
            Draft draft, Optional<Timetable> timetable, Optional<Combination> found, double widthPx) {
        List<DatedFrame> frames = draft.frames();
        if (frames.isEmpty()) {
            return Optional.empty();
        }
        TimeAxis axis = TimeAxis.of(frames.stream().map(f -> f.timing().span()).toList(), widthPx);
        IdentityHashMap<DatedFrame, Timetable.Row> rows = new IdentityHashMap<>();
        timetable.ifPresent(t -> t.rows().forEach(r -> rows.put(r.exposure().frame(), r)));
        IdentityHashMap<DatedFrame, Combination.FrameResult> results = new IdentityHashMap<>();
        found.ifPresent(c -> c.frames().forEach(f -> results.put(f.exposure().frame(), f)));
        int[] lanes = lanes(frames.stream().map(f -> f.timing().span()).toList());
        List<Bar> bars = new ArrayList<>();
        int most = 0;
        for (int i = 0; i < frames.size(); i++) {
            most = Math.max(most, lanes[i] + 1);
            bars.add(bar(i, frames.get(i), axis, lanes[i], rows, results));
        }
        return Optional.of(new TimeBars(axis, List.copyOf(bars), most));
    }

    private static Bar bar(
            int index,
            DatedFrame frame,
            TimeAxis axis,
            int lane,
            IdentityHashMap<DatedFrame, Timetable.Row> rows,
            IdentityHashMap<DatedFrame, Combination.FrameResult> results) {
        RecordingSpan span = frame.timing().span();
        double left = axis.x(span.start());
        double right = axis.x(span.end());
        double wide = Math.max(LEAST_WIDTH_PX, right - left);
        Optional<Timetable.Row> row = Optional.ofNullable(rows.get(frame));
        Combination.FrameResult result = results.get(frame);
        boolean smeared = result != null
                && row.isPresent()
                && row.get()
                        .smeared(
                                result.disk().equatorialRadiusPx(),
                                MUCH * result.limb().shading().blurPx());
        boolean instant = span.duration().isZero();
        return new Bar(
                index,
                frame,
                left - (instant ? LEAST_WIDTH_PX / 2 : 0),
                wide,
                lane,
                frame.band().band().map(b -> b.name()).orElse(Texts.of("panel.frame.image.colour")),
                frame.band().band().map(b -> b.passband()).orElse(WHITE),
                row.map(Timetable.Row::turnedDeg),
                smeared,
                instant || !frame.timing().notes().isEmpty(),
                row.isPresent() || rows.isEmpty());
    }

    /** Time of day to the second. */
    public static String clock(Instant at) {
        return at.toString().substring(11, 19);
    }

    /** The first lane that is free for each span. */
    private static int[] lanes(List<RecordingSpan> spans) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < spans.size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparing((Integer i) -> spans.get(i).start()));
        List<Instant> ends = new ArrayList<>();
        int[] lanes = new int[spans.size()];
        for (int i : order) {
            int lane = 0;
            while (lane < ends.size() && ends.get(lane).isAfter(spans.get(i).start())) {
                lane++;
            }
            if (lane == ends.size()) {
                ends.add(spans.get(i).end());
            } else {
                ends.set(lane, spans.get(i).end());
            }
            lanes[i] = lane;
        }
        return lanes;
    }

    /** The bar at a place. */
    public Optional<Bar> at(double x, int lane) {
        return bars.stream()
                .filter(b -> b.lane == lane && x >= b.left - 1 && x <= b.left + b.width + 1)
                .findFirst();
    }
}
