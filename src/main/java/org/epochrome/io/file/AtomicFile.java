package org.epochrome.io.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.UUID;
import org.epochrome.text.Message;

/**
 * Writes a file so that it is either complete or not there: into a temporary file in the same folder, which then takes
 * the name at once. Whatever happens meanwhile, an older file of that name stays whole until then.
 */
public final class AtomicFile {
    private AtomicFile() {}

    /** Fills the temporary file. */
    @FunctionalInterface
    public interface Content {
        /** Writes everything to a path that does not exist yet. */
        void writeTo(Path part) throws IOException;
    }

    /**
     * Writes a file.
     *
     * @param overwrite whether a file of that name may be replaced
     * @throws OutputRefused if the file exists and may not be replaced, or cannot be written; nothing is left behind
     */
    public static void write(Path file, boolean overwrite, Content content) {
        check(file, overwrite);
        Path target = target(file);
        // A file made by createTempFile would be readable by its owner only, and so would the result.
        Path part = target.resolveSibling(".epochrome-" + UUID.randomUUID() + ".part");
        try {
            content.writeTo(part);
            try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            check(file, overwrite);
            keepPermissions(target, part);
            move(part, target);
        } catch (IOException e) {
            throw new OutputRefused(file, Message.of("output.write", reason(e)), e);
        } finally {
            deleteQuietly(part);
        }
    }

    /**
     * Refuses early what could not be written later, so that a long piece of work is not lost.
     *
     * @throws OutputRefused if the file exists and may not be replaced or is no regular file, or its folder cannot take it
     */
    public static void check(Path file, boolean overwrite) {
        checkKind(file);
        if (Files.exists(file) && !overwrite) {
            throw new OutputRefused(file, Message.of("output.exists"));
        }
        Path folder = target(file).getParent();
        if (!Files.isDirectory(folder)) {
            throw new OutputRefused(file, Message.of("output.noFolder"));
        }
        if (!Files.isWritable(folder)) {
            throw new OutputRefused(file, Message.of("output.folderNotWritable"));
        }
    }

    /**
     * Refuses folders, devices, pipes and links that lead nowhere.
     *
     * @throws OutputRefused if the name is taken by anything but a regular file
     */
    static void checkKind(Path file) {
        if (Files.isDirectory(file)) {
            throw new OutputRefused(file, Message.of("output.isFolder"));
        }
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !Files.isRegularFile(file)) {
            throw new OutputRefused(file, Message.of("output.notRegular"));
        }
    }

    /** Where to write: behind a link if the name is one, so that the link stays. */
    private static Path target(Path file) {
        try {
            return Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
        } catch (IOException e) {
            throw new OutputRefused(file, Message.of("output.notReplaceable"), e);
        }
    }

    /** Whoever could read or write the file that is replaced still can, and nobody else. */
    private static void keepPermissions(Path target, Path part) throws IOException {
        PosixFileAttributeView to = Files.getFileAttributeView(part, PosixFileAttributeView.class);
        if (to != null && Files.exists(target)) {
            to.setPermissions(Files.getPosixFilePermissions(target));
        }
    }

    private static void move(Path part, Path target) throws IOException {
        try {
            // Whether an atomic move replaces a file unasked is left to the file system.
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static String reason(IOException e) {
        String message = e.getMessage();
        if (message == null || message.isBlank()) {
            return Message.text("output.diskError");
        }
        // The library names the temporary file before the reason.
        return message.substring(message.lastIndexOf(": ") + 1).strip();
    }

    private static void deleteQuietly(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException ignored) {
            // The reason why writing failed is worth more than a leftover.
        }
    }
}
