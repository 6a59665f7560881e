package org.epochrome.session.sessionfile;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DatabindContext;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdScalarSerializer;
import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.colour.Gains;
import org.epochrome.colour.finish.ChannelOffsets;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.LevelPoints;
import org.epochrome.colour.finish.ToneCurve;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.time.UtcText;

/** How values of choices are written in session files, where Jackson would do it in another way. */
final class SessionModule extends SimpleModule {
    private static final long serialVersionUID = 1L;

    /** Attribute of a reader or writer: the folder of the file, from which paths are seen. */
    static final String FOLDER = "folder";

    /** Attribute of a reader: the planet, which decides which rotation systems there are. */
    static final String BODY = "body";

    private static final String ZONAL = "zonal";

    SessionModule() {
        word(Body.class, Body::displayName, SessionModule::body);
        word(Instant.class, Instant::toString, UtcText::parse);
        word(Duration.class, Duration::toString, text -> ofClock(Duration::parse, text));
        word(ZoneOffset.class, ZoneOffset::getId, text -> ofClock(ZoneOffset::of, text));
        word(Encoding.class, Encoding::word, Encoding::of);
        addSerializer(
                new Writing<Path>(Path.class, (path, context) -> seen(path, (Path) context.getAttribute(FOLDER))));
        addDeserializer(Path.class, new Reading<>(Path.class, SessionModule::path) {
            private static final long serialVersionUID = 1L;

            @Override
            public Path getNullValue(DeserializationContext context) throws JsonMappingException {
                return context.reportInputMismatch(this, "a file must be named");
            }
        });
        addSerializer(new Writing<Extent>(
                Extent.class, (extent, context) -> extent == Extent.HALF ? null : extent == Extent.ALL));
        addDeserializer(Extent.class, new Reading<>(Extent.class, SessionModule::extent) {
            private static final long serialVersionUID = 1L;

            @Override
            public Extent getNullValue(DeserializationContext context) {
                return Extent.HALF;
            }
        });
    }

    @Override
    public void setupModule(SetupContext context) {
        super.setupModule(context);
        context.insertAnnotationIntrospector(new ChoiceKeys());
        context.configOverride(Extent.class)
                .setInclude(JsonInclude.Value.construct(JsonInclude.Include.NON_EMPTY, null));
        for (Class<?> row : List.of(
                PixelOffset.class,
                Passband.class,
                Spectrum.Point.class,
                Gains.class,
                Framing.Canvas.class,
                Framing.Centre.class,
                ChannelOffsets.class,
                LevelPoints.class,
                ToneCurve.class)) {
            context.configOverride(row).setFormat(JsonFormat.Value.forShape(JsonFormat.Shape.ARRAY));
        }
    }

    private <T> void word(Class<T> type, Function<T, String> write, Function<String, T> read) {
        addSerializer(new Writing<T>(type, (value, context) -> write.apply(value)));
        addDeserializer(type, new Reading<>(type, (in, context) -> read.apply(text(in, context, type))));
    }

    private static String text(JsonParser in, DeserializationContext context, Class<?> type) throws IOException {
        if (!in.hasToken(JsonToken.VALUE_STRING)) {
            context.handleUnexpectedToken(type, in);
        }
        return in.getText();
    }

    private static Body body(String name) {
        return Body.named(name).orElseThrow(() -> new IllegalArgumentException("'" + name + "' is not a planet"));
    }

    private static <T> T ofClock(Function<String, T> parsed, String text) {
        try {
            return parsed.apply(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(
                    "the clock needs an exposure such as PT2M and a utcOffset such as +02:00", e);
        }
    }

    /** A path as seen from a folder, with slashes; absolute if no way leads there. */
    private static String seen(Path path, Path folder) {
        Path absolute = path.toAbsolutePath().normalize();
        Path seen = absolute.getRoot().equals(folder.getRoot()) ? folder.relativize(absolute) : absolute;
        return seen.toString().replace(seen.getFileSystem().getSeparator(), "/");
    }

    private static Path path(JsonParser in, DeserializationContext context) throws IOException {
        Path folder = (Path) context.getAttribute(FOLDER);
        return folder.resolve(text(in, context, Path.class)).normalize();
    }

    /** All of it is true, nothing of it false; half of it is not written. */
    private static Extent extent(JsonParser in, DeserializationContext context) throws IOException {
        return context.readValue(in, Boolean.class) ? Extent.ALL : Extent.NONE;
    }

    /** Writes a rotation system, zonal for none. */
    static Writing<?> systemWriting() {
        return new Writing<Optional<RotationSystem>>(
                Optional.class,
                (system, context) -> system.map(RotationSystem::key).orElse(ZONAL));
    }

    /** Reads one of the planet's rotation systems, or zonal. */
    static Reading<?> systemReading() {
        return new Reading<>(Optional.class, (in, context) -> {
            Body body = (Body) context.getAttribute(BODY);
            String word = text(in, context, RotationSystem.class);
            Optional<RotationSystem> system =
                    body.systems().stream().filter(s -> s.key().equals(word)).findFirst();
            if (system.isEmpty() && !word.equals(ZONAL)) {
                throw new IllegalArgumentException(body.displayName() + " has no rotationSystem '" + word + "'");
            }
            return system;
        });
    }

    /** Writes a value as another that Jackson knows; where that is null, the value counts as empty. */
    static final class Writing<T> extends StdScalarSerializer<T> {
        private static final long serialVersionUID = 1L;

        private final transient BiFunction<T, DatabindContext, Object> written;

        @SuppressWarnings("unchecked")
        Writing(Class<?> type, BiFunction<T, DatabindContext, Object> written) {
            super((Class<T>) type);
            this.written = written;
        }

        @Override
        public boolean isEmpty(SerializerProvider provider, T value) {
            return written.apply(value, provider) == null;
        }

        @Override
        public void serialize(T value, JsonGenerator out, SerializerProvider provider) throws IOException {
            provider.defaultSerializeValue(written.apply(value, provider), out);
        }
    }

    /** What reads a value. */
    interface Parsing<T> {
        T read(JsonParser in, DeserializationContext context) throws IOException;
    }

    /** Reads a value by a function. */
    static class Reading<T> extends StdScalarDeserializer<T> {
        private static final long serialVersionUID = 1L;

        private final transient Parsing<T> parsing;

        Reading(Class<?> type, Parsing<T> parsing) {
            super(type);
            this.parsing = parsing;
        }

        @Override
        public T deserialize(JsonParser in, DeserializationContext context) throws IOException {
            return parsing.read(in, context);
        }
    }
}
