package org.epochrome.disk.start;

/** No disk could be fitted; the message says why and what to do, without naming the file. */
public final class DiskNotFound extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public DiskNotFound(String reason) {
        super(reason);
    }
}
