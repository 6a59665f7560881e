package org.epochrome.command.option;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.text.Message;
import org.epochrome.time.UtcText;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How values are written on the command line; each refusal says how to write it right. */
public final class Texts {
    private Texts() {}

    /** An instant of UTC. */
    public static final class Utc implements ITypeConverter<Instant> {
        @Override
        public Instant convert(String text) {
            try {
                return UtcText.parse(text);
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
        }
    }

    /** An ISO 8601 duration. */
    public static final class Length implements ITypeConverter<Duration> {
        @Override
        public Duration convert(String text) {
            try {
                Duration length = Duration.parse(text.toUpperCase(Locale.ROOT));
                if (length.isNegative() || length.isZero()) {
                    throw new TypeConversionException(Message.text("typed.lengthNotPositive", text));
                }
                return length;
            } catch (DateTimeParseException e) {
                throw new TypeConversionException(Message.text("typed.length", text));
            }
        }
    }

    /** A moment of a recording. */
    static final class Moment implements ITypeConverter<TimestampMeaning> {
        @Override
        public TimestampMeaning convert(String text) {
            return Arrays.stream(TimestampMeaning.values())
                    .filter(m -> m.name().equalsIgnoreCase(text))
                    .findFirst()
                    .orElseThrow(
                            () -> new TypeConversionException(Message.text("typed.oneOf", text, "start, middle, end")));
        }
    }

    /** Map keys as they are written. */
    static final class Plain implements ITypeConverter<String> {
        @Override
        public String convert(String text) {
            return text.strip();
        }
    }

    /** Map keys in capitals. */
    public static final class Capitals implements ITypeConverter<String> {
        @Override
        public String convert(String text) {
            return text.strip().toUpperCase(Locale.ROOT);
        }
    }

    /** A planet's name. */
    public static final class Planet implements ITypeConverter<Body> {
        @Override
        public Body convert(String text) {
            return Body.named(text)
                    .orElseThrow(() -> new TypeConversionException(Message.text(
                            "typed.oneOf",
                            text,
                            Arrays.stream(Body.values()).map(Body::displayName).collect(Collectors.joining(", ")))));
        }
    }

    /** A north angle in degrees, or "auto". */
    public static final class North implements ITypeConverter<OptionalDouble> {
        @Override
        public OptionalDouble convert(String text) {
            if (text.equalsIgnoreCase("auto")) {
                return OptionalDouble.empty();
            }
            try {
                double angle = Double.parseDouble(text);
                if (Math.abs(angle) <= 360) {
                    return OptionalDouble.of(angle);
                }
            } catch (NumberFormatException e) {
                // refused below
            }
            throw new TypeConversionException(Message.text("typed.north", text));
        }
    }

    /** A clock's distance from UTC. */
    public static final class Offset implements ITypeConverter<ZoneOffset> {
        @Override
        public ZoneOffset convert(String text) {
            try {
                return ZoneOffset.of(text);
            } catch (java.time.DateTimeException e) {
                throw new TypeConversionException(Message.text("typed.utcOffset", text));
            }
        }
    }

    /** The edges of a passband, FROM-TO in nm. */
    public static final class Edges implements ITypeConverter<Passband> {
        @Override
        public Passband convert(String text) {
            String[] parts = text.split("-", -1);
            try {
                if (parts.length == 2) {
                    return new Passband(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]));
                }
            } catch (NumberFormatException e) {
                // refused below
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
            throw new TypeConversionException(Message.text("typed.passband", text));
        }
    }

    /** How samples stand for light. */
    static final class Encoded implements ITypeConverter<Encoding> {
        @Override
        public Encoding convert(String text) {
            try {
                return Encoding.of(text);
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
        }
    }

    /** A displacement X,Y in pixels. */
    static final class Pixels implements ITypeConverter<PixelOffset> {
        private static final double FARTHEST_PX = 100;

        @Override
        public PixelOffset convert(String text) {
            String[] parts = text.split(",", -1);
            try {
                if (parts.length == 2) {
                    PixelOffset offset = new PixelOffset(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]));
                    if (Math.hypot(offset.x(), offset.y()) <= FARTHEST_PX) {
                        return offset;
                    }
                }
            } catch (NumberFormatException e) {
                // refused below
            }
            throw new TypeConversionException(Message.text("typed.shift", text));
        }
    }
}
