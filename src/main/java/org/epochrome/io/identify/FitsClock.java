package org.epochrome.io.identify;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.text.Message;

/**
 * Reads single instants and durations from a FITS header in whichever form and time scale they are given (FITS Standard
 * 4.0, sections 9.1 to 9.5).
 */
final class FitsClock {
    private static final double TT_MINUS_TAI_SECONDS = 32.184;
    private static final LocalDate MJD_ZERO = LocalDate.of(1858, 11, 17);
    private static final BigDecimal SECONDS_PER_DAY = BigDecimal.valueOf(86400);
    private static final int FIRST_YEAR = 1800;
    private static final int LAST_YEAR = 2200;
    private static final BigDecimal LAST_MJD = BigDecimal.valueOf(125_000);

    private final Path file;
    private final FitsKeywords header;
    private final ToDoubleFunction<Instant> taiMinusUtcSeconds;
    private final List<Message> notes;

    /**
     * A clock for one header.
     *
     * @param notes where remarks on odd values are added
     */
    FitsClock(Path file, FitsKeywords header, ToDoubleFunction<Instant> taiMinusUtcSeconds, List<Message> notes) {
        this.file = file;
        this.header = header;
        this.taiMinusUtcSeconds = taiMinusUtcSeconds;
        this.notes = notes;
    }

    /** An instant with the keyword that gave it. */
    record Moment(Instant instant, String keyword) {}

    /** A duration with the keyword that gave it. */
    record Length(Duration duration, String keyword) {}

    /**
     * The instant given by DATE-x or MJD-x.
     *
     * @param which BEG, END, AVG or OBS
     */
    Optional<Moment> moment(String which) {
        Optional<Moment> date = dated(which);
        Optional<Moment> mjd = header.number("MJD-" + which)
                .filter(days -> days.signum() > 0 && days.compareTo(LAST_MJD) < 0)
                .map(days -> new Moment(toUtc(fromMjd(days)), "MJD-" + which));
        if (date.isPresent() && mjd.isPresent()) {
            Duration apart =
                    Duration.between(date.get().instant(), mjd.get().instant()).abs();
            if (apart.compareTo(Duration.ofSeconds(2)) > 0) {
                notes.add(Message.of("times.datesDiffer", date.get().keyword(), which, apart.toSeconds()));
            }
        }
        return date.or(() -> mjd);
    }

    /** The length of the recording: from its begin to its end, or else the exposure. */
    Optional<Length> length() {
        for (String keyword : List.of("TELAPSE", "XPOSURE", "EXPTIME", "EXPOSURE")) {
            Optional<BigDecimal> value = header.number(keyword).filter(v -> v.signum() > 0);
            if (value.isPresent()) {
                // TIMEUNIT holds for the keywords of the standard; the two older ones are in seconds by common use.
                BigDecimal unit = keyword.startsWith("EXP") ? BigDecimal.ONE : unitSeconds();
                return Optional.of(new Length(nanos(value.get().multiply(unit)), keyword));
            }
        }
        return Optional.empty();
    }

    private Optional<Moment> dated(String which) {
        String keyword = "DATE-" + which;
        Optional<String> text = header.text(keyword);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String date = text.get().replace(' ', 'T');
        if (date.indexOf('T') >= 0) {
            Optional<Instant> instant = parse(date);
            if (instant.isEmpty()) {
                notes.add(Message.of("times.notADate", keyword, text.get()));
            }
            return instant.map(i -> new Moment(i, keyword));
        }
        List<String> times = which.equals("OBS") ? List.of("TIME-OBS", "UT", "UTC-OBS") : List.of("TIME-" + which);
        for (String time : times) {
            Optional<Instant> instant = header.text(time).flatMap(t -> parse(date + "T" + t));
            if (instant.isPresent()) {
                return instant.map(i -> new Moment(i, keyword + " and " + time));
            }
        }
        notes.add(Message.of("times.noTimeOfDay", keyword, text.get()));
        return Optional.empty();
    }

    private Optional<Instant> parse(String date) {
        try {
            String text = date.toUpperCase(Locale.ROOT);
            // A leap second is the one second that Java's clock lacks; it counts as the next one.
            boolean leap = text.matches(".*T\\d\\d:\\d\\d:60.*");
            String plain = leap ? text.replaceFirst("(T\\d\\d:\\d\\d:)60", "$159") : text;
            // The standard allows no zone, yet Z and offsets occur and are clear.
            boolean zoned = plain.matches(".*(Z|[+-]\\d\\d:\\d\\d)$");
            LocalDateTime local = zoned
                    ? OffsetDateTime.parse(plain)
                            .withOffsetSameInstant(ZoneOffset.UTC)
                            .toLocalDateTime()
                    : LocalDateTime.parse(plain);
            boolean plausible = local.getYear() >= FIRST_YEAR && local.getYear() <= LAST_YEAR;
            return plausible ? Optional.of(toUtc(local.plusSeconds(leap ? 1 : 0))) : Optional.empty();
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private static LocalDateTime fromMjd(BigDecimal days) {
        BigDecimal whole = days.setScale(0, RoundingMode.FLOOR);
        return LocalDateTime.of(MJD_ZERO.plusDays(whole.longValueExact()), LocalTime.MIDNIGHT)
                .plus(nanos(days.subtract(whole).multiply(SECONDS_PER_DAY)));
    }

    private static Duration nanos(BigDecimal seconds) {
        BigDecimal nanos = seconds.movePointRight(9).setScale(0, RoundingMode.HALF_UP);
        return Duration.ofNanos(nanos.min(BigDecimal.valueOf(Long.MAX_VALUE)).longValueExact());
    }

    private BigDecimal unitSeconds() {
        String unit = header.text("TIMEUNIT").orElse("s");
        return switch (unit) {
            case "s" -> BigDecimal.ONE;
            case "min" -> BigDecimal.valueOf(60);
            case "h" -> BigDecimal.valueOf(3600);
            case "d" -> SECONDS_PER_DAY;
            default -> throw new FrameRefused(file, Message.of("times.timeUnit", unit));
        };
    }

    /** From the time scale of the header to UTC. */
    private Instant toUtc(LocalDateTime read) {
        Instant instant = read.toInstant(ZoneOffset.UTC);
        String scale = header.text("TIMESYS").orElse("UTC").toUpperCase(Locale.ROOT);
        // A realisation may follow in brackets: TT(TAI), UTC(...).
        int bracket = scale.indexOf('(');
        return switch (bracket > 0 ? scale.substring(0, bracket) : scale) {
            case "UTC", "UT", "GMT" -> instant;
            case "TT", "TDT", "ET" -> fromTai(instant, TT_MINUS_TAI_SECONDS);
            case "TAI", "IAT" -> fromTai(instant, 0);
            default -> throw new FrameRefused(file, Message.of("times.timeSystem", scale));
        };
    }

    /** TAI - UTC is tabulated by UTC, so the first guess may lie on the wrong side of a leap second. */
    private Instant fromTai(Instant read, double readMinusTaiSeconds) {
        Instant guess = minusSeconds(read, readMinusTaiSeconds + taiMinusUtcSeconds.applyAsDouble(read));
        return minusSeconds(read, readMinusTaiSeconds + taiMinusUtcSeconds.applyAsDouble(guess));
    }

    private static Instant minusSeconds(Instant instant, double seconds) {
        return instant.minusNanos(Math.round(seconds * 1e9));
    }
}
