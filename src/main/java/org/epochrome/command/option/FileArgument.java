package org.epochrome.command.option;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.util.Collection;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.image.Encoding;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.SheetTimes;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/**
 * A setting for one frame on the command line, FILE=WORD.
 *
 * @param file its path, or its name alone if no other frame has it
 * @param word the setting
 */
record FileArgument(Path file, String word) {
    /** Reads one. */
    static final class Text implements ITypeConverter<FileArgument> {
        @Override
        public FileArgument convert(String text) {
            int sign = text.lastIndexOf('=');
            if (sign < 1 || sign == text.length() - 1) {
                throw new TypeConversionException(Message.text("typed.file", text));
            }
            return new FileArgument(Path.of(text.substring(0, sign)), text.substring(sign + 1));
        }
    }

    /** Reads one whose word may hold a sign of equality, as gamma=2.2 does. */
    static final class EncodedFile implements ITypeConverter<FileArgument> {
        private static final Pattern WORD = Pattern.compile("(?i)(.+?)=((?:gamma=)?[^=]+)");

        @Override
        public FileArgument convert(String text) {
            Matcher m = WORD.matcher(text);
            if (!m.matches()) {
                throw new TypeConversionException(Message.text("typed.encodedFile", text));
            }
            return new FileArgument(Path.of(m.group(1)), m.group(2));
        }
    }

    /** Which of the frames is meant. */
    Path among(Collection<Path> frames, CommandSpec spec) {
        return among(file, frames, spec);
    }

    /** Which of the frames, absolute paths, a path or a name means. */
    static Path among(Path file, Collection<Path> frames, CommandSpec spec) {
        Path whole = file.toAbsolutePath().normalize();
        if (frames.contains(whole)) {
            return whole;
        }
        List<Path> named = frames.stream()
                .filter(f -> file.getNameCount() == 1 && f.getFileName().equals(file.getFileName()))
                .toList();
        if (named.size() == 1) {
            return named.get(0);
        }
        throw new ParameterException(
                spec.commandLine(),
                Message.text(named.isEmpty() ? "option.noSuchFrame" : "option.severalFrames", file));
    }

    /** Whether the word says that the frame is mirrored. */
    boolean mirrored(CommandSpec spec) {
        try {
            return SheetRow.mirrored(word);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(
                    spec.commandLine(), Message.text("option.ofFrame", "--mirrored-frame", file, e.getMessage()), e);
        }
    }

    /** The encoding that the word names. */
    Encoding encoding(CommandSpec spec) {
        try {
            return Encoding.of(word);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(
                    spec.commandLine(), Message.text("option.ofFrame", "--encoding-frame", file, e.getMessage()), e);
        }
    }

    /** The recording that the word gives. */
    RecordingSpan interval(CommandSpec spec) {
        try {
            return SheetTimes.interval(word);
        } catch (DateTimeException e) {
            throw new ParameterException(
                    spec.commandLine(), Message.text("option.ofFrame", "--recorded", file, e.getMessage()), e);
        }
    }
}
