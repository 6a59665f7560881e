package org.epochrome.command.option;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.TimestampMeaning;
import picocli.CommandLine.Option;

/** Options for the clock, the filters and the encoding of all frames. */
final class ClockOptions {
    @Option(names = "--exposure", paramLabel = "LENGTH", converter = Texts.Length.class)
    private Duration exposure;

    @Option(names = "--clock", paramLabel = "start|middle|end", converter = Texts.Moment.class)
    private TimestampMeaning clock;

    @Option(names = "--utc-offset", paramLabel = "HH:MM", converter = Texts.Offset.class)
    private ZoneOffset utcOffset;

    @Option(
            names = "--passband",
            paramLabel = "BAND=FROM-TO",
            converter = {Texts.Capitals.class, Texts.Edges.class})
    private Map<String, Passband> passbands = new LinkedHashMap<>();

    @Option(names = "--encoding", paramLabel = "linear|srgb|gamma=X", converter = Texts.Encoded.class)
    private Encoding encoding;

    @Option(
            names = "--planned-length",
            paramLabel = "BAND=LENGTH",
            converter = {Texts.Capitals.class, Texts.Length.class})
    private Map<String, Duration> plannedLengths = new LinkedHashMap<>();

    /** The conventions of a session, overridden by the options given. */
    Conventions over(Conventions before) {
        Map<String, Passband> all = new HashMap<>(before.passbands());
        all.putAll(passbands);
        Map<String, Duration> planned = new HashMap<>(before.plannedLengths());
        planned.putAll(plannedLengths);
        return new Conventions(
                new NameClock(
                        Optional.ofNullable(clock).or(before.clock()::meaning),
                        Optional.ofNullable(exposure).or(before.clock()::exposure),
                        utcOffset == null ? before.clock().utcOffset() : utcOffset),
                all,
                encoding == null ? before.encoding() : encoding,
                planned);
    }
}
