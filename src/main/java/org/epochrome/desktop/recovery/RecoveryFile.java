package org.epochrome.desktop.recovery;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.epochrome.session.product.Session;
import org.epochrome.session.sessionfile.SessionFile;

/** Where one session is written down for the case of a crash; see {@link RecoveryFolder}. Thread safe. */
public final class RecoveryFile {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final int MOST_BYTES = 4096;

    private final String id;
    private final Path session;
    private final Path note;
    private final FileChannel lock;
    private long newest = Long.MIN_VALUE;
    private boolean ended;

    /** @param lock open on the note, and locked */
    RecoveryFile(String id, Path session, Path note, FileChannel lock) {
        this.id = id;
        this.session = session;
        this.note = note;
        this.lock = lock;
    }

    /** The session's file. */
    public Path path() {
        return session;
    }

    /**
     * What the note says. It is read through the lock, for some systems let nobody else read a locked file.
     *
     * @param written when the session was written, in case the note says nothing
     */
    synchronized UnsavedSession about(Instant written) {
        try {
            ByteBuffer text = ByteBuffer.allocate(MOST_BYTES);
            lock.read(text, 0);
            UnsavedSession said = MAPPER.readValue(text.array(), 0, text.position(), UnsavedSession.class);
            return new UnsavedSession(id, said.planet(), said.date(), said.frames());
        } catch (IOException e) {
            return UnsavedSession.unknown(id, written);
        }
    }

    /**
     * Writes a session down, unless a newer one was written or the file was let go meanwhile.
     *
     * @param order grows from change to change
     * @param version of the program, which files name
     */
    public synchronized void write(Session now, long order, String version) throws IOException {
        if (ended || order < newest) {
            return;
        }
        newest = order;
        SessionFile.write(now, session, version, true);
        ByteBuffer text = ByteBuffer.wrap(MAPPER.writeValueAsBytes(UnsavedSession.of(id, now)));
        lock.truncate(0);
        while (text.hasRemaining()) {
            lock.write(text, text.position());
        }
    }

    /** Lets the session go: it stays and can be restored by any window. */
    public synchronized void release() {
        if (ended) {
            return;
        }
        ended = true;
        try {
            lock.close();
        } catch (IOException e) {
            // The lock ends with the program.
        }
        RecoveryFolder.released(note);
    }

    /** The session was saved, or is not wanted any more. */
    public synchronized void delete() {
        try {
            Files.deleteIfExists(session);
            release();
            Files.deleteIfExists(note);
        } catch (IOException e) {
            release();
        }
    }
}
