package org.epochrome.io.fits;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;

/** A stream that refuses its file when it gets longer than allowed: some megabytes can unpack to many gigabytes. */
final class LimitedStream extends FilterInputStream {
    private final Path file;
    private long left;

    /** @param limit the most bytes that may be read or skipped */
    LimitedStream(Path file, InputStream in, long limit) {
        super(in);
        this.file = file;
        left = limit;
    }

    /** Allows more bytes. */
    void allow(long more) {
        left = left > Long.MAX_VALUE - more ? Long.MAX_VALUE : left + more;
    }

    @Override
    public int read() throws IOException {
        int value = super.read();
        count(value < 0 ? 0 : 1);
        return value;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
        int got = super.read(bytes, from, length);
        count(Math.max(0, got));
        return got;
    }

    @Override
    public long skip(long wanted) throws IOException {
        // What is packed must be unpacked to be skipped; what lies beyond the limit need not be.
        long got = super.skip(Math.min(wanted, left == Long.MAX_VALUE ? wanted : left + 1));
        count(got);
        return got;
    }

    private void count(long bytes) {
        left -= left == Long.MAX_VALUE ? 0 : bytes;
        if (left < 0) {
            throw new FrameRefused(file, Message.of("fits.packedLength"));
        }
    }
}
