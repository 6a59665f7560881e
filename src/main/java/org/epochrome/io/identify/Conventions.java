package org.epochrome.io.identify;

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
 */
public record Conventions(
        @Choice NameClock clock,
        @Choice(key = "passbandsNm", option = "passband") Map<String, Passband> passbands,
        @Choice Encoding encoding)
        implements Choices<Conventions> {
    /** No settings. */
    public static final Conventions UNKNOWN = new Conventions(NameClock.UNKNOWN, Map.of(), Encoding.LINEAR);

    public Conventions {
        Objects.requireNonNull(clock);
        Objects.requireNonNull(encoding);
        passbands = Map.copyOf(passbands);
    }

    /** Linear samples, and these words about clock and filters. */
    public Conventions(NameClock clock, Map<String, Passband> passbands) {
        this(clock, passbands, Encoding.LINEAR);
    }
}
