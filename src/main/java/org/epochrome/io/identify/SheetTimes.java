package org.epochrome.io.identify;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/** Understands the times that people write into sheets; UTC unless an offset follows. */
public final class SheetTimes {
    /** Seconds with at most nine digits before and after the point: more than thirty years, and nanoseconds. */
    private static final Pattern SECONDS = Pattern.compile("\\d{1,9}(\\.\\d{0,9})?|\\.\\d{1,9}");

    private SheetTimes() {}

    /** The cells of one row that contain times; blank where empty. */
    record Cells(String start, String mid, String end, String exposure, String interval) {}

    /**
     * The recording that a row gives.
     *
     * @return empty if all cells are blank
     * @throws DateTimeException if they cannot be read or contradict each other; the message says why
     */
    static Optional<RecordingSpan> span(Cells cells) {
        if (!cells.interval().isBlank()) {
            if (!(cells.start() + cells.mid() + cells.end() + cells.exposure()).isBlank()) {
                throw new DateTimeException(Message.text("sheet.intervalAndTimes"));
            }
            return Optional.of(interval(cells.interval().strip()));
        }
        Optional<Instant> start = instant(cells.start());
        Optional<Instant> mid = instant(cells.mid());
        Optional<Instant> end = instant(cells.end());
        Optional<Duration> exposure = duration(cells.exposure());
        long given = start.stream().count()
                + mid.stream().count()
                + end.stream().count()
                + exposure.stream().count();
        if (given == 0) {
            return Optional.empty();
        }
        if (given > 2) {
            throw new DateTimeException(Message.text("sheet.tooManyTimes"));
        }
        if (start.isPresent() && end.isPresent()) {
            return Optional.of(between(start.get(), end.get()));
        }
        if (mid.isPresent() && exposure.isEmpty() && given == 1) {
            return Optional.of(new RecordingSpan(mid.get(), mid.get()));
        }
        Duration length = exposure.orElseThrow(() -> new DateTimeException(Message.text("sheet.tooFewTimes")));
        Instant from = start.or(() -> mid.map(m -> m.minus(length.dividedBy(2))))
                .or(() -> end.map(e -> e.minus(length)))
                .orElseThrow(() -> new DateTimeException(Message.text("sheet.exposureAlone")));
        return Optional.of(between(from, from.plus(length)));
    }

    /**
     * An ISO 8601 interval: start/end, start/duration or duration/end.
     *
     * @throws DateTimeException if it cannot be read; the message says why
     */
    public static RecordingSpan interval(String text) {
        String[] halves = text.split("/", -1);
        if (halves.length != 2) {
            throw new DateTimeException(Message.text("sheet.interval", text));
        }
        boolean firstIsLength = halves[0].strip().toUpperCase(Locale.ROOT).startsWith("P");
        boolean secondIsLength = halves[1].strip().toUpperCase(Locale.ROOT).startsWith("P");
        if (firstIsLength && secondIsLength) {
            throw new DateTimeException(Message.text("sheet.noInstant", text));
        }
        if (firstIsLength) {
            Instant end = required(halves[1]);
            return between(end.minus(duration(halves[0]).orElseThrow()), end);
        }
        Instant start = required(halves[0]);
        return between(start, secondIsLength ? start.plus(duration(halves[1]).orElseThrow()) : required(halves[1]));
    }

    private static RecordingSpan between(Instant start, Instant end) {
        if (end.isBefore(start)) {
            throw new DateTimeException(Message.text("sheet.endBeforeStart", end, start));
        }
        return new RecordingSpan(start, end);
    }

    private static Instant required(String text) {
        return instant(text).orElseThrow(() -> new DateTimeException(Message.text("sheet.halfInterval")));
    }

    private static Optional<Instant> instant(String text) {
        if (text.isBlank()) {
            return Optional.empty();
        }
        String iso = text.strip().toUpperCase(Locale.ROOT).replace(' ', 'T');
        try {
            return Optional.of(
                    iso.matches(".*T.*(Z|[+-]\\d\\d:\\d\\d)")
                            ? OffsetDateTime.parse(iso).toInstant()
                            : LocalDateTime.parse(iso).toInstant(ZoneOffset.UTC));
        } catch (DateTimeException e) {
            throw new DateTimeException(Message.text("sheet.instant", text.strip()), e);
        }
    }

    /** ISO 8601, or plain seconds. */
    private static Optional<Duration> duration(String text) {
        if (text.isBlank()) {
            return Optional.empty();
        }
        String wanted = text.strip();
        try {
            Duration length = SECONDS.matcher(wanted).matches()
                    ? Duration.ofMillis(new BigDecimal(wanted).movePointRight(3).longValue())
                    : Duration.parse(wanted);
            if (length.isNegative()) {
                throw new DateTimeException("negative");
            }
            return Optional.of(length);
        } catch (DateTimeException | ArithmeticException e) {
            throw new DateTimeException(Message.text("sheet.duration", wanted), e);
        }
    }
}
