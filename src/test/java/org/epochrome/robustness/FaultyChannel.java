package org.epochrome.robustness;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;

/** A channel that asks before it changes something. */
final class FaultyChannel extends FileChannel {
    /** What happens before a change. */
    @FunctionalInterface
    interface Before {
        void change() throws IOException;
    }

    private final FileChannel real;
    private final Before before;

    FaultyChannel(FileChannel real, Before before) {
        this.real = real;
        this.before = before;
    }

    @Override
    public int read(ByteBuffer to) throws IOException {
        return real.read(to);
    }

    @Override
    public long read(ByteBuffer[] to, int from, int length) throws IOException {
        return real.read(to, from, length);
    }

    @Override
    public int read(ByteBuffer to, long position) throws IOException {
        return real.read(to, position);
    }

    @Override
    public int write(ByteBuffer from) throws IOException {
        before.change();
        return real.write(from);
    }

    @Override
    public long write(ByteBuffer[] from, int first, int length) throws IOException {
        before.change();
        return real.write(from, first, length);
    }

    @Override
    public int write(ByteBuffer from, long position) throws IOException {
        before.change();
        return real.write(from, position);
    }

    @Override
    public long position() throws IOException {
        return real.position();
    }

    @Override
    public FileChannel position(long position) throws IOException {
        real.position(position);
        return this;
    }

    @Override
    public long size() throws IOException {
        return real.size();
    }

    @Override
    public FileChannel truncate(long size) throws IOException {
        before.change();
        real.truncate(size);
        return this;
    }

    @Override
    public void force(boolean metaData) throws IOException {
        before.change();
        real.force(metaData);
    }

    @Override
    public long transferTo(long position, long count, WritableByteChannel to) throws IOException {
        return real.transferTo(position, count, to);
    }

    @Override
    public long transferFrom(ReadableByteChannel from, long position, long count) throws IOException {
        before.change();
        return real.transferFrom(from, position, count);
    }

    @Override
    public MappedByteBuffer map(MapMode mode, long position, long size) throws IOException {
        return real.map(mode, position, size);
    }

    @Override
    public FileLock lock(long position, long size, boolean shared) throws IOException {
        return real.lock(position, size, shared);
    }

    @Override
    public FileLock tryLock(long position, long size, boolean shared) throws IOException {
        return real.tryLock(position, size, shared);
    }

    @Override
    protected void implCloseChannel() throws IOException {
        real.close();
        before.change();
    }
}
