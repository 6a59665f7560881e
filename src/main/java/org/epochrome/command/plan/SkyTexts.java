package org.epochrome.command.plan;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.epochrome.io.file.CsvTable;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.plan.night.Horizon;
import org.epochrome.plan.night.SkyEvent;
import org.epochrome.text.Message;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How dates, horizons and kinds of events are written on the command line. */
final class SkyTexts {
    private SkyTexts() {}

    /** A date of the calendar. */
    static final class Date implements ITypeConverter<LocalDate> {
        @Override
        public LocalDate convert(String text) {
            try {
                return LocalDate.parse(text.strip());
            } catch (DateTimeException e) {
                throw new TypeConversionException(Message.text("typed.date", text));
            }
        }
    }

    /** A kind of event. */
    static final class EventKind implements ITypeConverter<SkyEvent.Kind> {
        @Override
        public SkyEvent.Kind convert(String text) {
            return Arrays.stream(SkyEvent.Kind.values())
                    .filter(k -> k.name().equalsIgnoreCase(text.strip()))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException(Message.text(
                            "typed.oneOf",
                            text,
                            Arrays.stream(SkyEvent.Kind.values())
                                    .map(k -> k.name().toLowerCase(Locale.ROOT))
                                    .collect(Collectors.joining(", ")))));
        }
    }

    /** The horizon: an altitude, or a file of altitudes by azimuth. */
    static Horizon horizon(String text) {
        try {
            return Horizon.level(Double.parseDouble(text));
        } catch (NumberFormatException e) {
            return profile(Path.of(text));
        }
    }

    private static Horizon profile(Path file) {
        try {
            return Horizon.parse(CsvTable.lines(file));
        } catch (IllegalArgumentException e) {
            throw new FrameRefused(file, Message.of("horizon.row", e.getMessage()), e);
        }
    }
}
