package org.epochrome.desktop.control;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.recipe.Frames;
import org.epochrome.time.RecordingSpan;

/**
 * What the user changes in several frames at once; empty leaves it as it is.
 *
 * @param meaning which moment of the recording the time of each frame is
 * @param length of each recording
 * @param clockAhead how far the clock was ahead of the times that are wanted
 * @param date of the first start; all frames are moved by the same number of days
 * @param bands words for bands, dealt out in the order of time again and again
 */
public record FrameChanges(
        Optional<TimestampMeaning> meaning,
        Optional<Duration> length,
        Optional<Duration> clockAhead,
        Optional<LocalDate> date,
        List<String> bands) {
    /** What frames with entries of the user name as their source. */
    public static final String TYPED = "manual entry";

    public FrameChanges {
        bands = List.copyOf(bands);
    }

    private boolean changesTimes() {
        return meaning.isPresent() || length.isPresent() || clockAhead.isPresent() || date.isPresent();
    }

    /**
     * What is to be asked for frames with these changes. Reads headers.
     *
     * @param conventions by which the frames were found
     */
    public List<FrameRequest> of(List<DatedFrame> frames, Conventions conventions) {
        List<DatedFrame> sorted = frames.stream()
                .sorted(Comparator.comparing(f -> f.timing().span().mid()))
                .toList();
        long days = date.isEmpty() || sorted.isEmpty()
                ? 0
                : ChronoUnit.DAYS.between(
                        sorted.get(0)
                                .timing()
                                .span()
                                .start()
                                .atZone(ZoneOffset.UTC)
                                .toLocalDate(),
                        date.get());
        List<FrameRequest> requests = new ArrayList<>();
        for (int i = 0; i < sorted.size(); i++) {
            DatedFrame f = sorted.get(i);
            Optional<String> band = bands.isEmpty()
                    ? f.request().row().flatMap(SheetRow::band)
                    : Optional.of(bands.get(i % bands.size()));
            Optional<RecordingSpan> span = changesTimes()
                    ? Optional.of(changed(f, conventions, days))
                    : f.request().row().flatMap(SheetRow::span);
            SheetRow row = new SheetRow(f.head().file(), band, span, f.givenMirrored(), f.givenEncoding(), TYPED);
            requests.add(new FrameRequest(row.file(), f.request().band(), Optional.of(row)));
        }
        return requests;
    }

    private RecordingSpan changed(DatedFrame f, Conventions conventions, long days) {
        RecordingSpan span = f.timing().span();
        if (meaning.isPresent() || length.isPresent()) {
            RecordingSpan given = given(f, conventions);
            TimestampMeaning moment =
                    meaning.or(() -> conventions.clock().meaning()).orElse(TimestampMeaning.MIDDLE);
            Duration lasting = length.orElse(span.duration());
            span = around(moment(given, moment), moment, lasting);
        }
        Duration later = Duration.ofDays(days).minus(clockAhead.orElse(Duration.ZERO));
        return new RecordingSpan(span.start().plus(later), span.end().plus(later));
    }

    /** The time as the file gives it: a bare instant, or a whole recording. */
    private static RecordingSpan given(DatedFrame f, Conventions conventions) {
        NameClock bare = new NameClock(
                Optional.empty(), Optional.empty(), conventions.clock().utcOffset());
        return Frames.found(List.of(f.request()), conventions.with(Conventions::clock, bare))
                .get(0)
                .timing()
                .span();
    }

    private static Instant moment(RecordingSpan span, TimestampMeaning moment) {
        return switch (moment) {
            case START -> span.start();
            case MIDDLE -> span.mid();
            case END -> span.end();
        };
    }

    private static RecordingSpan around(Instant at, TimestampMeaning moment, Duration length) {
        Instant start =
                switch (moment) {
                    case START -> at;
                    case MIDDLE -> at.minus(length.dividedBy(2));
                    case END -> at.minus(length);
                };
        return new RecordingSpan(start, start.plus(length));
    }
}
