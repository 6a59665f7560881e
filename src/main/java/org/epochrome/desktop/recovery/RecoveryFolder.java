package org.epochrome.desktop.recovery;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * Sessions that are not saved, written down for the case of a crash: each in a file of its own, in one folder that all
 * windows share. Beside each lies a note that tells what it holds. A window locks the note of the session it works on; the
 * system takes the lock away when the program ends, however it ends, and then the session can be restored.
 */
public final class RecoveryFolder {
    private static final String SESSION = ".json";
    private static final String NOTE = ".note";
    /**
     * Notes that windows of this program hold. They must not be opened a second time: on some systems closing them would
     * take the lock away.
     */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path folder;

    /** @param folder need not exist yet */
    public RecoveryFolder(Path folder) {
        this.folder = folder.toAbsolutePath().normalize();
    }

    /** A file for a session that nobody has written down yet; it belongs to the caller until it is released. */
    public RecoveryFile begin() throws IOException {
        Files.createDirectories(folder);
        String id = UUID.randomUUID().toString();
        return hold(id).orElseThrow(() -> new IOException("a new file is locked already"));
    }

    /** Sessions that no window works on, the newest first. */
    public List<UnsavedSession> abandoned() {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        List<UnsavedSession> found = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> sessions = files.filter(f -> f.toString().endsWith(SESSION))
                    .sorted(Comparator.comparing(RecoveryFolder::written).reversed())
                    .toList();
            for (Path session : sessions) {
                String name = session.getFileName().toString();
                String id = name.substring(0, name.length() - SESSION.length());
                Optional<RecoveryFile> free = hold(id);
                if (free.isPresent()) {
                    found.add(free.get().about(written(session)));
                    free.get().release();
                }
            }
        } catch (IOException e) {
            // What cannot be looked at cannot be restored either.
        }
        return found;
    }

    private static Instant written(Path file) {
        try {
            return Files.getLastModifiedTime(file).toInstant();
        } catch (IOException e) {
            return Instant.EPOCH;
        }
    }

    /** Makes a session the caller's; empty if another window has it or it is gone. */
    public Optional<RecoveryFile> claim(UnsavedSession session) {
        try {
            return Files.exists(session(session.id())) ? hold(session.id()) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private Path session(String id) {
        return folder.resolve(id + SESSION);
    }

    private Path note(String id) {
        return folder.resolve(id + NOTE);
    }

    private Optional<RecoveryFile> hold(String id) throws IOException {
        Path note = note(id);
        if (!HELD.add(note)) {
            return Optional.empty();
        }
        boolean held = false;
        FileChannel channel = null;
        try {
            channel = FileChannel.open(
                    note, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            held = locked(channel);
        } finally {
            if (!held) {
                HELD.remove(note);
                if (channel != null) {
                    channel.close();
                }
            }
        }
        return held ? Optional.of(new RecoveryFile(id, session(id), note, channel)) : Optional.empty();
    }

    /** Whether nobody else has the lock; where a file system knows no locks, nobody has. */
    private static boolean locked(FileChannel channel) {
        try {
            return channel.tryLock() != null;
        } catch (IOException e) {
            return true;
        }
    }

    /** A note that this program has locked was closed. */
    static void released(Path note) {
        HELD.remove(note);
    }
}
