package org.epochrome.desktop.state;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.epochrome.time.RecordingSpan;

/**
 * Where instants lie on the time ribbon. Time runs evenly, but long breaks between sets are folded to a narrow strip, so
 * that three frames and a hundred fill the width alike.
 */
public final class TimeAxis {
    /** A break this many times the usual one, and longer than {@link #LEAST_FOLDED}, is folded. */
    private static final int LONG_BREAK = 4;

    private static final Duration LEAST_FOLDED = Duration.ofMinutes(3);
    private static final double FOLD_PX = 30;
    private static final double MARGIN = 0.06;
    private static final long LEAST_MARGIN_S = 20;

    private final List<Piece> pieces;
    private final double widthPx;

    /** A stretch of time without a fold. */
    private record Piece(Instant from, Instant to, double left, double right) {
        double x(Instant at) {
            double part = seconds(from, at) / Math.max(1e-3, seconds(from, to));
            return left + part * (right - left);
        }

        Instant at(double x) {
            double part = (x - left) / Math.max(1e-9, right - left);
            return from.plusMillis(Math.round(1000 * part * seconds(from, to)));
        }
    }

    private TimeAxis(List<Piece> pieces, double widthPx) {
        this.pieces = pieces;
        this.widthPx = widthPx;
    }

    /** The axis for some recordings, at least one. */
    public static TimeAxis of(List<RecordingSpan> spans, double widthPx) {
        List<RecordingSpan> blocks = blocks(spans);
        List<Duration> breaks = new ArrayList<>();
        for (int i = 1; i < blocks.size(); i++) {
            breaks.add(Duration.between(blocks.get(i - 1).end(), blocks.get(i).start()));
        }
        Duration usual = breaks.isEmpty()
                ? Duration.ZERO
                : breaks.stream().sorted().toList().get((breaks.size() - 1) / 2);
        List<RecordingSpan> stretches = new ArrayList<>();
        Instant from = blocks.get(0).start();
        for (int i = 1; i < blocks.size(); i++) {
            if (folded(breaks.get(i - 1), usual)) {
                stretches.add(new RecordingSpan(from, blocks.get(i - 1).end()));
                from = blocks.get(i).start();
            }
        }
        stretches.add(new RecordingSpan(from, blocks.get(blocks.size() - 1).end()));
        return laidOut(stretches, widthPx);
    }

    private static boolean folded(Duration pause, Duration usual) {
        return pause.compareTo(LEAST_FOLDED) > 0 && pause.compareTo(usual.multipliedBy(LONG_BREAK)) > 0;
    }

    /** Recordings that touch or overlap, as one. */
    private static List<RecordingSpan> blocks(List<RecordingSpan> spans) {
        List<RecordingSpan> sorted = spans.stream()
                .sorted(Comparator.comparing(RecordingSpan::start))
                .toList();
        List<RecordingSpan> blocks = new ArrayList<>();
        for (RecordingSpan span : sorted) {
            int last = blocks.size() - 1;
            if (last >= 0 && !span.start().isAfter(blocks.get(last).end())) {
                Instant end = span.end().isAfter(blocks.get(last).end())
                        ? span.end()
                        : blocks.get(last).end();
                blocks.set(last, new RecordingSpan(blocks.get(last).start(), end));
            } else {
                blocks.add(span);
            }
        }
        return blocks;
    }

    private static TimeAxis laidOut(List<RecordingSpan> stretches, double widthPx) {
        double total = 0;
        for (RecordingSpan s : stretches) {
            total += seconds(s.start(), s.end());
        }
        long margin = Math.max(LEAST_MARGIN_S, Math.round(MARGIN * total));
        int last = stretches.size() - 1;
        double perSecond = (widthPx - FOLD_PX * last) / Math.max(1, total + 2 * margin);
        List<Piece> pieces = new ArrayList<>();
        double x = 0;
        for (int i = 0; i <= last; i++) {
            Instant from = stretches.get(i).start().minusSeconds(i == 0 ? margin : 0);
            Instant to = stretches.get(i).end().plusSeconds(i == last ? margin : 0);
            double right = x + perSecond * seconds(from, to);
            pieces.add(new Piece(from, to, x, right));
            x = right + FOLD_PX;
        }
        return new TimeAxis(pieces, widthPx);
    }

    private static double seconds(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }

    public double widthPx() {
        return widthPx;
    }

    /** Distance of an instant from the left edge; inside a fold in proportion, beyond the ends on by the same scale. */
    public double x(Instant at) {
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            if (i > 0 && at.isBefore(piece.from)) {
                Piece before = pieces.get(i - 1);
                double part = seconds(before.to, at) / seconds(before.to, piece.from);
                return before.right + part * (piece.left - before.right);
            }
            if (!at.isAfter(piece.to)) {
                return piece.x(at);
            }
        }
        return pieces.get(pieces.size() - 1).x(at);
    }

    /** The instant at a distance from the left edge, to the second. */
    public Instant at(double x) {
        Instant found = pieces.get(pieces.size() - 1).at(x);
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            if (i > 0 && x < piece.left) {
                Piece before = pieces.get(i - 1);
                double part = (x - before.right) / (piece.left - before.right);
                found = before.to.plusMillis(Math.round(1000 * part * seconds(before.to, piece.from)));
                break;
            }
            if (x <= piece.right) {
                found = piece.at(x);
                break;
            }
        }
        return Instant.ofEpochSecond(Math.round(found.toEpochMilli() / 1000.0));
    }

    /** Middles of the folds, pixels from the left. */
    public List<Double> folds() {
        List<Double> folds = new ArrayList<>();
        for (int i = 1; i < pieces.size(); i++) {
            folds.add(0.5 * (pieces.get(i - 1).right + pieces.get(i).left));
        }
        return folds;
    }

    /**
     * A date and where it begins.
     *
     * @param x distance from the left edge, pixels
     */
    public record Day(LocalDate date, double x) {}

    /** The dates, UTC, each where it begins on the axis. */
    public List<Day> days() {
        List<Day> days = new ArrayList<>();
        for (Piece piece : pieces) {
            LocalDate first = piece.from.atZone(ZoneOffset.UTC).toLocalDate();
            LocalDate last = piece.to.atZone(ZoneOffset.UTC).toLocalDate();
            for (LocalDate date = first; !date.isAfter(last); date = date.plusDays(1)) {
                if (days.isEmpty() || date.isAfter(days.get(days.size() - 1).date)) {
                    Instant midnight = date.atStartOfDay(ZoneOffset.UTC).toInstant();
                    days.add(new Day(date, piece.x(midnight.isBefore(piece.from) ? piece.from : midnight)));
                }
            }
        }
        return days;
    }

    /** Round instants to write on the axis, about so far apart. */
    public List<Instant> ticks(double apartPx) {
        double pxPerSecond =
                (pieces.get(0).right - pieces.get(0).left) / Math.max(1, seconds(pieces.get(0).from, pieces.get(0).to));
        long step = 3600;
        for (long candidate : new long[] {10, 30, 60, 120, 300, 600, 1200, 1800, 3600}) {
            if (candidate * pxPerSecond >= apartPx) {
                step = candidate;
                break;
            }
        }
        List<Instant> ticks = new ArrayList<>();
        for (Piece piece : pieces) {
            long first = -Math.floorDiv(-piece.from.getEpochSecond(), step) * step;
            for (long s = first; s <= piece.to.getEpochSecond(); s += step) {
                ticks.add(Instant.ofEpochSecond(s));
            }
        }
        return ticks;
    }
}
