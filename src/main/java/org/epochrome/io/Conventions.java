package org.epochrome.io;

import java.util.Map;
import java.util.Objects;
import org.epochrome.image.Passband;

/**
 * What the user says about all frames alike.
 *
 * @param clock about bare instants, such as those in file names
 * @param passbands about filters, by name of the band
 */
public record Conventions(NameClock clock, Map<String, Passband> passbands) {
    /** Nothing said. */
    public static final Conventions UNSAID = new Conventions(NameClock.UNSAID, Map.of());

    public Conventions {
        Objects.requireNonNull(clock);
        passbands = Map.copyOf(passbands);
    }
}
