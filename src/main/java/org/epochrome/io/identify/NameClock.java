package org.epochrome.io.identify;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.epochrome.choice.Choice;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/**
 * The user's settings for bare instants, such as those in file names.
 *
 * @param meaning which moment of the recording the instant is; empty if not given
 * @param exposure length of the recordings where no other source gives it; empty if not given
 * @param utcOffset how far the clock in file names is ahead of UTC, where the name itself does not say UTC
 */
public record NameClock(
        @Choice(option = "clock") Optional<TimestampMeaning> meaning,
        @Choice Optional<Duration> exposure,
        @Choice ZoneOffset utcOffset) {
    /** No settings: names are in UTC, an instant is an instant. */
    public static final NameClock UNKNOWN = new NameClock(Optional.empty(), Optional.empty(), ZoneOffset.UTC);

    public NameClock {
        Objects.requireNonNull(meaning);
        Objects.requireNonNull(utcOffset);
        if (exposure.filter(e -> e.isNegative() || e.isZero()).isPresent()) {
            throw new IllegalArgumentException(Message.text("times.exposure", exposure.get()));
        }
    }

    /**
     * The recording around a bare instant.
     *
     * @param bare the instant
     * @param source where it was found
     * @param usual what such an instant means by default; empty if it is ambiguous
     * @param notes what is already known to be worth a note
     * @return empty if the length of the recording is known but not where in it the instant lies
     */
    public Optional<Timing> around(
            Instant bare, Message source, Optional<TimestampMeaning> usual, List<Message> notes) {
        List<Message> all = new ArrayList<>(notes);
        if (exposure.isEmpty()) {
            all.add(Message.of("times.noLength"));
            return Optional.of(new Timing(new RecordingSpan(bare, bare), source, all));
        }
        Duration length = exposure.get();
        return meaning.or(() -> usual)
                .map(known -> switch (known) {
                    case START -> bare;
                    case MIDDLE -> bare.minus(length.dividedBy(2));
                    case END -> bare.minus(length);
                })
                .map(start -> new Timing(
                        new RecordingSpan(start, start.plus(length)),
                        Message.of("times.source.exposure", source),
                        all));
    }
}
