package org.epochrome.session.sessionfile;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.file.OutputFolder;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.FileMark;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.text.Message;

/**
 * A session in a file: JSON by the schema of docs/session-file.md, with paths as seen from the file's folder, so that the
 * folder can be moved with its frames.
 */
public final class SessionFile {
    private static final long MOST_BYTES = 64L << 20;

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
            .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
            .build();

    private SessionFile() {}

    /**
     * A session that was read.
     *
     * @param session what the file holds
     * @param notes frames that have changed since it was written, a sentence each
     */
    public record Opened(Session session, List<String> notes) {}

    /** Whether a name is that of a session file. */
    public static boolean isName(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(".json");
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
            Object root = new SessionWriting(file.toAbsolutePath().getParent()).root(session, version);
            return MAPPER.writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A session of plain values can always be written.", e);
        }
    }

    /**
     * Reads a session and finds its frames; those that cannot be used are kept apart.
     *
     * @throws FrameRefused if the file is no session that this version understands
     * @throws FramesRefused if none of its frames can be used
     */
    public static Opened read(Path file) {
        SessionSchema.Root root = parsed(file);
        Path parent = file.getParent();
        SessionReading reading = new SessionReading(parent == null ? Path.of("") : parent);
        try {
            Session session = reading.session(root);
            Set<Path> absent = session.recipe().frames().absent().stream()
                    .map(a -> a.request().file())
                    .collect(Collectors.toSet());
            return new Opened(session, changed(root.frames(), absent, reading));
        } catch (IllegalArgumentException e) {
            throw refused(file, Message.of("session.reason", e.getMessage().replaceFirst("\\.$", "")), e);
        }
    }

    private static SessionSchema.Root parsed(Path file) {
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw refused(file, Message.of("session.tooLong"), null);
            }
            JsonNode tree = MAPPER.readTree(Files.readAllBytes(file));
            if (!SessionSchema.FORMAT.equals(tree.path("format").asText())) {
                throw new FrameRefused(file, Message.of("session.otherFormat", SessionSchema.FORMAT));
            }
            if (tree.path("version").asInt(-1) != SessionSchema.VERSION) {
                throw new FrameRefused(
                        file, Message.of("session.otherVersion", tree.path("version"), SessionSchema.VERSION));
            }
            SessionSchema.Root root = MAPPER.treeToValue(tree, SessionSchema.Root.class);
            hole(tree, "").ifPresent(place -> {
                throw refused(file, Message.of("session.noValue", place), null);
            });
            return root;
        } catch (UnrecognizedPropertyException e) {
            throw refused(file, Message.of("session.unknownKey", place(e)), e);
        } catch (JsonMappingException e) {
            throw refused(file, Message.of("session.wrongKind", place(e)), e);
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

    private static List<String> changed(List<SessionSchema.Frame> frames, Set<Path> absent, SessionReading reading) {
        List<String> notes = new ArrayList<>();
        for (SessionSchema.Frame frame : frames) {
            Path file = reading.path(frame.file());
            if (!absent.contains(file)
                    && frame.sha256() != null
                    && !frame.sha256().equalsIgnoreCase(FileMark.of(file).sha256())) {
                notes.add(Message.text("session.frameChanged", file.getFileName()));
            }
        }
        return notes;
    }
}
