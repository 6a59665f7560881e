package org.epochrome.io.identify;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;

/**
 * Finds a timestamp in a file name: a year-first date, then a time of day, compact or with separators, to the minute, a
 * tenth of a minute, the second or finer, with or without a mark of UTC.
 */
public final class NameTimes {
    private static final String DATE = "(?<!\\d)((?:19|20)\\d\\d)([-_. ]?)(\\d\\d)\\2(\\d\\d)";
    private static final String HOUR = "([01]\\d|2[0-3])";
    private static final String SIXTY = "([0-5]\\d)";
    // An hour follows: with something between, or right away in a wholly compact stamp.
    private static final String GAP = "(?:[-_. ]{0,2}[Tt][-_. ]{0,2}|[-_. ]{1,2}|)";
    private static final String ZONE =
            "(?:[-_ ]?(Z|z|UTC?|utc?)(?![A-Za-z0-9])|([+](?:0\\d|1[0-4])(?::?[0-5]\\d)?)(?!\\d))?";

    private static final Pattern LONE_DATE = Pattern.compile(DATE + "(?!\\d)");
    /** Groups: 1 year, 3 month, 4 day, 5 hour, 7 minute, 8 second, 9 fraction, 10 UTC mark, 11 offset. */
    private static final Pattern TO_THE_SECOND = Pattern.compile(
            DATE + GAP + HOUR + "([-_:. ]?)" + SIXTY + "\\6" + "([0-5]\\d|60)(?:[.,](\\d{1,9}))?(?!\\d)" + ZONE);
    /** As above with letters: 19h24m30s. */
    private static final Pattern IN_LETTERS = Pattern.compile(DATE + GAP + HOUR + "([hH])" + SIXTY
            + "[mM](?:([0-5]\\d|60)(?:[.,](\\d{1,9}))?[sS])?(?![A-Za-z0-9])" + ZONE);
    /** Groups: 8 tenths of a minute as in 1924_5; the rest as above. */
    private static final Pattern TO_A_TENTH =
            Pattern.compile(DATE + GAP + HOUR + "()" + SIXTY + "(?:_(\\d)|\\.(\\d{1,4}))(?![A-Za-z0-9])" + ZONE);

    private static final Pattern TO_THE_MINUTE =
            Pattern.compile(DATE + GAP + HOUR + "([-_:. ]?)" + SIXTY + "(?!\\d)()()" + ZONE);
    /** What follows a time to the minute and could be its seconds, a decimal, or a running number. */
    private static final Pattern UNCLEAR = Pattern.compile("[-_:. ]\\d{1,2}(?![A-Za-z0-9])");

    private static final Pattern SUFFIX = Pattern.compile("(?i)(\\.(fits?|fts|tiff?|png|gz|fz|jpe?g))+$");

    private NameTimes() {}

    /** A timestamp in a name: the instant, and a remark if it is coarser than a second. */
    public record Stamp(Instant instant, Optional<Message> remark) {}

    /** The name of a file without its extension. */
    public static String stem(Path file) {
        return SUFFIX.matcher(FrameRefused.nameOf(file)).replaceFirst("");
    }

    /**
     * The timestamp in a file name, if there is one.
     *
     * @param utcOffset how far the clock of the name is ahead of UTC if the name does not give it
     * @throws FrameRefused if the name has two that differ, or one that can be read in two ways
     */
    public static Optional<Stamp> find(Path file, ZoneOffset utcOffset) {
        String name = stem(file);
        Set<Instant> instants = new LinkedHashSet<>();
        Set<LocalDate> dates = new LinkedHashSet<>();
        Optional<Stamp> found = Optional.empty();
        int at = 0;
        while (true) {
            Optional<Match> match = next(name, at);
            int end = match.map(m -> m.matcher().start()).orElse(name.length());
            dates.addAll(loneDates(name.substring(at, end)));
            if (match.isEmpty()) {
                break;
            }
            Match stamp = match.get();
            refuseUnclear(file, name, stamp);
            found = Optional.of(new Stamp(stamp.instant(utcOffset), stamp.remark()));
            instants.add(found.get().instant());
            dates.add(stamp.date());
            at = stamp.matcher().end();
        }
        if (instants.size() > 1 || (found.isPresent() && dates.size() > 1)) {
            throw new FrameRefused(file, Message.of("times.twoInName"));
        }
        return found;
    }

    private static void refuseUnclear(Path file, String name, Match match) {
        boolean marked = match.matcher().group(10) != null || match.matcher().group(11) != null;
        if (match.pattern() == TO_THE_MINUTE && !marked) {
            Matcher rest = UNCLEAR.matcher(name).region(match.matcher().end(), name.length());
            if (rest.lookingAt()) {
                throw new FrameRefused(file, Message.of("times.afterMinutes", rest.group()));
            }
        }
    }

    private static List<LocalDate> loneDates(String text) {
        List<LocalDate> dates = new ArrayList<>();
        Matcher matcher = LONE_DATE.matcher(text);
        while (matcher.find()) {
            date(matcher).ifPresent(dates::add);
        }
        return dates;
    }

    private static Optional<LocalDate> date(Matcher matcher) {
        try {
            return Optional.of(LocalDate.of(number(matcher, 1), number(matcher, 3), number(matcher, 4)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private static int number(Matcher matcher, int group) {
        return Integer.parseInt(matcher.group(group));
    }

    /** The first timestamp from a place on; of several readings at one place the finest. */
    private static Optional<Match> next(String name, int from) {
        Optional<Match> first = Optional.empty();
        for (Pattern pattern : List.of(TO_THE_SECOND, IN_LETTERS, TO_A_TENTH, TO_THE_MINUTE)) {
            Matcher matcher = pattern.matcher(name);
            for (int at = from; at < name.length() && matcher.find(at); at = matcher.start() + 1) {
                if (date(matcher).isPresent()) {
                    if (first.isEmpty()
                            || matcher.start() < first.get().matcher().start()) {
                        first = Optional.of(new Match(pattern, matcher));
                    }
                    break;
                }
            }
        }
        return first;
    }

    /** One reading of a part of a name. */
    private record Match(Pattern pattern, Matcher matcher) {
        LocalDate date() {
            return NameTimes.date(matcher).orElseThrow();
        }

        Instant instant(ZoneOffset utcOffset) {
            LocalDateTime toTheMinute = date().atTime(number(matcher, 5), number(matcher, 7));
            BigDecimal seconds = BigDecimal.ZERO;
            if (pattern == TO_A_TENTH) {
                String digits = matcher.group(8) != null ? matcher.group(8) : matcher.group(9);
                seconds = new BigDecimal("0." + digits).multiply(BigDecimal.valueOf(60));
            } else if (matcher.group(8) != null && !matcher.group(8).isEmpty()) {
                String fraction = matcher.group(9) == null ? "0" : matcher.group(9);
                seconds = new BigDecimal(matcher.group(8) + "." + fraction);
            }
            long nanos =
                    seconds.movePointRight(9).setScale(0, RoundingMode.HALF_UP).longValueExact();
            ZoneOffset offset = utcOffset;
            if (matcher.group(10) != null) {
                offset = ZoneOffset.UTC;
            } else if (matcher.group(11) != null) {
                offset = ZoneOffset.of(matcher.group(11));
            }
            return toTheMinute.toInstant(offset).plusNanos(nanos);
        }

        Optional<Message> remark() {
            if (pattern == TO_A_TENTH) {
                return Optional.of(Message.of("times.decimalMinutes"));
            }
            return pattern == TO_THE_MINUTE ? Optional.of(Message.of("times.toTheMinute")) : Optional.empty();
        }
    }
}
