package org.epochrome.io.identify;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.io.identify.FitsClock.Length;
import org.epochrome.io.identify.FitsClock.Moment;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/**
 * Finds when a frame was recorded from its FITS header. DATE-BEG, DATE-END and DATE-AVG mean what they say (FITS Standard
 * 4.0, section 9.5). What DATE-OBS means the standard leaves open; by common practice it is the start.
 */
public final class FitsTimes {
    private static final Duration SHORT_FOR_A_RECORDING = Duration.ofMillis(500);

    private final Path file;
    private final NameClock bare;
    private final List<Message> notes = new ArrayList<>();
    private final Optional<Moment> begin;
    private final Optional<Moment> end;
    private final Optional<Moment> average;
    private final Optional<Moment> observed;
    private final Optional<Length> length;

    public FitsTimes(Path file, FitsKeywords header, NameClock bare, ToDoubleFunction<Instant> taiMinusUtcSeconds) {
        this.file = file;
        this.bare = bare;
        FitsClock clock = new FitsClock(file, header, taiMinusUtcSeconds, notes);
        this.begin = clock.moment("BEG");
        this.end = clock.moment("END");
        this.average = clock.moment("AVG");
        this.observed = clock.moment("OBS");
        this.length = clock.length();
    }

    /** Remarks on values that were passed over; also when nothing was found. */
    public List<Message> notes() {
        return List.copyOf(notes);
    }

    /** The recording, if the header gives any instant of it. */
    public Optional<Timing> find() {
        Optional<Moment> start = begin.or(() -> observed);
        if (start.isPresent() && end.isPresent()) {
            return Optional.of(timing(
                    start.get().instant(),
                    end.get().instant(),
                    start.get().keyword(),
                    end.get().keyword()));
        }
        Optional<Timing> found = length.flatMap(this::withLength);
        if (found.isPresent()) {
            return found;
        }
        if (average.isPresent() && (start.isPresent() || end.isPresent())) {
            return Optional.of(aroundAverage(start, average.get()));
        }
        return bare();
    }

    private Optional<Timing> withLength(Length known) {
        Duration whole = known.duration();
        if (begin.isPresent()) {
            return Optional.of(from(begin.get(), begin.get().instant(), known));
        }
        if (end.isPresent()) {
            return Optional.of(from(end.get(), end.get().instant().minus(whole), known));
        }
        if (average.isPresent()) {
            return Optional.of(from(average.get(), average.get().instant().minus(whole.dividedBy(2)), known));
        }
        return observed.map(moment -> from(moment, moment.instant(), known));
    }

    private Timing from(Moment moment, Instant start, Length known) {
        noteIfShort(known);
        return timing(start, start.plus(known.duration()), moment.keyword(), known.keyword());
    }

    /** The other end lies as far from the middle as the one that is known. */
    private Timing aroundAverage(Optional<Moment> start, Moment middle) {
        if (start.isPresent()) {
            Duration half = Duration.between(start.get().instant(), middle.instant());
            return timing(
                    start.get().instant(),
                    middle.instant().plus(half),
                    start.get().keyword(),
                    middle.keyword());
        }
        Moment last = end.orElseThrow();
        Duration half = Duration.between(middle.instant(), last.instant());
        return timing(middle.instant().minus(half), last.instant(), middle.keyword(), last.keyword());
    }

    private Optional<Timing> bare() {
        if (average.isPresent()) {
            return bare(average.get(), TimestampMeaning.MIDDLE);
        }
        if (begin.isPresent()) {
            return bare(begin.get(), TimestampMeaning.START);
        }
        if (end.isPresent()) {
            return bare(end.get(), TimestampMeaning.END);
        }
        return observed.flatMap(moment -> bare.around(
                moment.instant(),
                Message.of("source.header", moment.keyword()),
                Optional.of(TimestampMeaning.START),
                notes));
    }

    /** The meaning of these keywords is fixed, whatever the user's settings for bare instants. */
    private Optional<Timing> bare(Moment moment, TimestampMeaning meaning) {
        NameClock settled = new NameClock(Optional.of(meaning), bare.exposure(), bare.utcOffset());
        return settled.around(moment.instant(), Message.of("source.header", moment.keyword()), Optional.empty(), notes);
    }

    private Timing timing(Instant start, Instant stop, String first, String second) {
        if (stop.isBefore(start)) {
            throw new FrameRefused(file, Message.of("times.endBeforeStart", first, second));
        }
        return new Timing(new RecordingSpan(start, stop), Message.of("times.source.headers", first, second), notes);
    }

    private void noteIfShort(Length known) {
        if (known.duration().compareTo(SHORT_FOR_A_RECORDING) < 0) {
            notes.add(
                    Message.of("times.short", known.keyword(), known.duration().toMillis()));
        }
    }
}
