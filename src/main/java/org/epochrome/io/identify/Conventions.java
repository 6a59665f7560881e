package org.epochrome.io.identify;

import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;

/**
 * The user's settings common to all frames.
 *
 * @param clock about bare instants, such as those in file names
 * @param passbands about filters, by name of the band
 * @param encoding of the samples of frames without an encoding of their own
 * @param plannedLengths how long recordings should last at most, by name of the band
 */
public record Conventions(
        @Choice NameClock clock,
        @Choice(key = "passbandsNm", option = "passband") Map<String, Passband> passbands,
        @Choice Encoding encoding,
        @Choice(option = "planned-length") Map<String, Duration> plannedLengths)
        implements Choices<Conventions> {
    /** No settings. */
    public static final Conventions UNKNOWN = new Conventions(NameClock.UNKNOWN, Map.of());

    public Conventions {
        Objects.requireNonNull(clock);
        Objects.requireNonNull(encoding);
        passbands = Map.copyOf(passbands);
        plannedLengths = Map.copyOf(plannedLengths);
    }

    /** Linear samples, no planned lengths, and these words about clock and filters. */
    public Conventions(NameClock clock, Map<String, Passband> passbands) {
        this(clock, passbands, Encoding.LINEAR, Map.of());
    }
}
