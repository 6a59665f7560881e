package org.epochrome.session.sessionfile;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.InvalidNullException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.epochrome.colour.finish.Look;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.file.OutputFolder;
import org.epochrome.io.identify.NameClock;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.Session;
import org.epochrome.session.product.TurningFile;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.text.Message;

/**
 * A session in a file: JSON by the schema of docs/session-file.md, with paths as seen from the file's folder, so that the
 * folder can be moved with its frames.
 */
public final class SessionFile {
    /** How the window ends the names of session files. */
    public static final String SUFFIX = ".epochrome";

    private static final int MOST_BYTES = 64 << 20;

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModules(new Jdk8Module(), new SessionModule())
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
            .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
            .enable(MapperFeature.ACCEPT_CASE_INSENSITIVE_ENUMS)
            .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
            .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .defaultSetterInfo(JsonSetter.Value.forContentNulls(Nulls.FAIL))
            .defaultPropertyInclusion(JsonInclude.Value.construct(JsonInclude.Include.NON_ABSENT, null))
            .build();

    private SessionFile() {}

    /**
     * A session that was read.
     *
     * @param session what the file holds
     * @param notes frames that have changed since it was written, a sentence each
     */
    public record Opened(Session session, List<String> notes) {}

    /** Whether a name is that of a session file: systems open those that end in {@link #SUFFIX} with the program. */
    public static boolean isName(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return name.endsWith(SUFFIX) || name.endsWith(".json");
    }

    /**
     * Writes a session, or leaves an older file of that name as it is.
     *
     * @throws org.epochrome.io.file.OutputRefused if it exists and may not be replaced, or cannot be written
     * @throws FrameRefused if a frame is not there any more
     */
    public static void write(Session session, Path file, String version, boolean overwrite) {
        OutputFolder.make(file);
        String text = text(session, file, version);
        AtomicFile.write(file, overwrite, part -> Files.write(part, text.getBytes(StandardCharsets.UTF_8)));
    }

    /** What the file would hold. */
    static String text(Session session, Path file, String version) {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
        try {
            return MAPPER.writer(printer)
                            .withAttribute(
                                    SessionModule.FOLDER,
                                    file.toAbsolutePath().getParent().normalize())
                            .writeValueAsString(SessionDocument.of(session, version))
                    + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A session of plain values can always be written.", e);
        }
    }

    /** A look by the keys of session files. */
    public static ObjectNode tree(Look look) {
        return MAPPER.valueToTree(look);
    }

    /**
     * Reads a session and finds its frames; those that cannot be used are kept apart.
     *
     * @throws FrameRefused if the file is no session that this version understands
     * @throws FramesRefused if none of its frames can be used
     */
    public static Opened read(Path file) {
        SessionDocument document = document(file);
        try {
            Session session = document.session();
            Set<Path> absent = session.recipe().frames().absent().stream()
                    .map(a -> a.request().file())
                    .collect(Collectors.toSet());
            List<String> notes = document.frames().stream()
                    .filter(f -> !absent.contains(f.file()) && f.isChanged())
                    .map(f -> Message.text("session.frameChanged", f.file().getFileName()))
                    .toList();
            return new Opened(session, notes);
        } catch (IllegalArgumentException e) {
            throw refused(file, Message.of("session.reason", e.getMessage().replaceFirst("\\.$", "")), e);
        }
    }

    private static SessionDocument document(Path file) {
        JsonNode tree = parsed(file);
        if (!SessionDocument.FORMAT.equals(tree.path("format").asText())) {
            throw new FrameRefused(file, Message.of("session.otherFormat", SessionDocument.FORMAT));
        }
        if (tree.path("version").asInt(-1) != SessionDocument.VERSION) {
            throw new FrameRefused(
                    file, Message.of("session.otherVersion", tree.path("version"), SessionDocument.VERSION));
        }
        hole(tree, "").ifPresent(place -> {
            throw refused(file, Message.of("session.noValue", place), null);
        });
        for (String key : List.of("body", "frames")) {
            if (tree.path(key).isMissingNode() || tree.path(key).isNull()) {
                throw refused(file, Message.of("session.noKey", key), null);
            }
        }
        if (!tree.path("body").isTextual()) {
            throw refused(file, Message.of("session.wrongKind", "body"), null);
        }
        String named = tree.path("body").asText();
        Body body = Body.named(named).orElseThrow(() -> refused(file, Message.of("session.noPlanet", named), null));
        Path parent = file.getParent();
        try {
            return MAPPER.readerFor(SessionDocument.class)
                    .withAttribute(SessionModule.FOLDER, parent == null ? Path.of("") : parent)
                    .withAttribute(SessionModule.BODY, body)
                    .readValue(overDefaults((ObjectNode) tree, body));
        } catch (JsonMappingException e) {
            throw refused(file, reason(e, tree), e);
        } catch (IOException e) {
            throw new IllegalStateException("A tree can always be read.", e);
        }
    }

    private static JsonNode parsed(Path file) {
        try {
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                throw new FrameRefused(file, Message.of("session.notRegular"));
            }
            byte[] bytes;
            try (InputStream in = Files.newInputStream(file)) {
                bytes = in.readNBytes(MOST_BYTES + 1);
            }
            if (bytes.length > MOST_BYTES) {
                throw refused(file, Message.of("session.tooLong"), null);
            }
            return MAPPER.readTree(bytes);
        } catch (JsonProcessingException e) {
            throw refused(file, Message.of("session.notJson", line(e)), e);
        } catch (IOException e) {
            throw new FrameRefused(file, Message.of("file.checkPermission"), e);
        }
    }

    /** Where a list has no value in one of its places; a key without one is as good as absent. */
    private static Optional<String> hole(JsonNode node, String place) {
        if (node.isArray()) {
            return IntStream.range(0, node.size())
                    .mapToObj(i -> node.get(i).isNull()
                            ? Optional.of(place + "[" + i + "]")
                            : hole(node.get(i), place + "[" + i + "]"))
                    .flatMap(Optional::stream)
                    .findFirst();
        }
        return node.properties().stream()
                .map(e -> hole(e.getValue(), place.isEmpty() ? e.getKey() : place + "." + e.getKey()))
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** The tree with the usual value for each key that is missing or null. */
    private static JsonNode overDefaults(ObjectNode tree, Body body) {
        Session usual = Session.usual(Recipe.usual(List.of(), body));
        ObjectNode all = MAPPER.valueToTree(SessionDocument.of(usual, ""));
        // What is missing as a whole has other defaults than what is missing in it.
        all.remove("assignment");
        if (tree.path("assignment").isObject()) {
            all.set("assignment", MAPPER.valueToTree(Assignment.NATURAL));
        }
        if (tree.path("clock").isObject()) {
            all.set("clock", MAPPER.valueToTree(NameClock.UNKNOWN));
        }
        if (tree.path("site").isObject()) {
            all.putObject("site").put("heightM", 0.0);
        }
        if (tree.path("outputs").path("turning").isObject()) {
            all.withObject("outputs")
                    .putObject("turning")
                    .put("pictures", TurningFile.usual(Path.of("")).count());
        }
        if (tree.path("outputs").path("map").isObject()) {
            all.withObject("outputs")
                    .putObject("map")
                    .put("graticule", MapFile.usual(Path.of("")).graticule());
        }
        lay(tree, all);
        return all;
    }

    private static void lay(JsonNode given, ObjectNode over) {
        given.properties().forEach(e -> {
            JsonNode value = e.getValue();
            if (value.isObject() && over.get(e.getKey()) instanceof ObjectNode below) {
                lay(value, below);
            } else if (!value.isNull() || !over.has(e.getKey())) {
                over.set(e.getKey(), value);
            }
        });
    }

    /** What is wrong with a value of a tree. */
    private static Message reason(JsonMappingException e, JsonNode tree) {
        String place = place(e);
        for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof InvalidPathException p) {
                return Message.of("session.notAFileName", p.getInput());
            }
            if (cause instanceof IllegalArgumentException) {
                return Message.of("session.reason", cause.getMessage().replaceFirst("\\.$", ""));
            }
        }
        if (e instanceof UnrecognizedPropertyException) {
            return Message.of("session.unknownKey", place);
        }
        if (e instanceof InvalidFormatException f
                && f.getTargetType().isEnum()
                && f.getValue() instanceof String word) {
            return Message.of(
                    "session.unknownWord",
                    word,
                    place,
                    Arrays.stream(f.getTargetType().getEnumConstants())
                            .map(c -> ChoiceKeys.word((Enum<?>) c))
                            .collect(Collectors.joining(", ")));
        }
        if (e instanceof InvalidNullException) {
            return Message.of("session.noValue", place);
        }
        String above = place.replaceFirst("\\.[^.]*$", "");
        if (!above.equals(place) && tree.at(pointer(above)).isArray()) {
            return Message.of("session.shortList", above);
        }
        JsonNode value = tree.at(pointer(place));
        return value.isMissingNode() || value.isNull()
                ? Message.of("session.noKey", place)
                : Message.of("session.wrongKind", place);
    }

    private static String pointer(String place) {
        return "/" + place.replaceAll("\\[(\\d+)]", ".$1").replace('.', '/');
    }

    private static String line(JsonProcessingException e) {
        return e.getLocation() == null ? "1" : Integer.toString(e.getLocation().getLineNr());
    }

    /** Where in the file something is: look.tone.black, frames[2].disk. */
    private static String place(JsonMappingException e) {
        return e.getPath().stream()
                .map(r -> r.getFieldName() == null ? "[" + r.getIndex() + "]" : "." + r.getFieldName())
                .collect(Collectors.joining())
                .replaceFirst("^\\.", "");
    }

    private static FrameRefused refused(Path file, Message reason, Exception cause) {
        return new FrameRefused(file, Message.of("session.notUsable", reason), cause);
    }
}
