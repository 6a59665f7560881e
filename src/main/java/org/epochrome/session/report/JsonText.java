package org.epochrome.session.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdScalarSerializer;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.time.Instant;
import org.epochrome.ephemeris.Body;
import org.epochrome.text.Message;
import org.epochrome.time.UtcText;

/** Writes reports as JSON: the components of their records are the keys, in their order; null where nothing is known. */
public final class JsonText {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModules(
                    new Jdk8Module(),
                    new SimpleModule()
                            .addSerializer(Message.class, ToStringSerializer.instance)
                            .addSerializer(
                                    Body.class, new Form<>(Body.class, (b, out) -> out.writeString(b.displayName())))
                            .addSerializer(
                                    Instant.class,
                                    new Form<>(Instant.class, (t, out) -> out.writeString(UtcText.format(t))))
                            .addSerializer(double.class, new Form<>(double.class, JsonText::number))
                            .addSerializer(Double.class, new Form<>(Double.class, JsonText::number)))
            .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
            .defaultPropertyInclusion(JsonInclude.Value.construct(JsonInclude.Include.ALWAYS, null))
            .build();

    private JsonText() {}

    /** The text of a report, indented, with a line feed at its end. */
    public static String of(Record report) {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(lines);
        printer.indentArraysWith(lines);
        try {
            return MAPPER.writer(printer).writeValueAsString(report) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A report of plain values can always be written.", e);
        }
    }

    /** Numbers to seven decimals, which is finer than anything is known; JSON has no NaN. */
    private static void number(double value, JsonGenerator out) throws IOException {
        if (Double.isFinite(value)) {
            out.writeNumber(Math.round(value * 1e7) / 1e7);
        } else {
            out.writeNull();
        }
    }

    /** How a value is written. */
    private interface Writing<T> {
        void write(T value, JsonGenerator out) throws IOException;
    }

    /** A type whose values are written in our own form. */
    private static final class Form<T> extends StdScalarSerializer<T> {
        private static final long serialVersionUID = 1L;

        private final transient Writing<T> writing;

        Form(Class<T> type, Writing<T> writing) {
            super(type);
            this.writing = writing;
        }

        @Override
        public void serialize(T value, JsonGenerator out, SerializerProvider context) throws IOException {
            writing.write(value, out);
        }
    }
}
