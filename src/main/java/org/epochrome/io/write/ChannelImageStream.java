package org.epochrome.io.write;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import javax.imageio.stream.ImageOutputStreamImpl;

/** A new file that image libraries write to. Unlike the stream of the JDK it works on every file system, not on disks only. */
final class ChannelImageStream extends ImageOutputStreamImpl {
    private final SeekableByteChannel channel;

    /** @param file does not exist yet */
    ChannelImageStream(Path file) throws IOException {
        channel = Files.newByteChannel(
                file, StandardOpenOption.CREATE_NEW, StandardOpenOption.READ, StandardOpenOption.WRITE);
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
        checkClosed();
        bitOffset = 0;
        int got = channel.read(ByteBuffer.wrap(bytes, from, length));
        streamPos += Math.max(0, got);
        return got;
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        checkClosed();
        flushBits();
        ByteBuffer left = ByteBuffer.wrap(bytes, from, length);
        while (left.hasRemaining()) {
            channel.write(left);
        }
        streamPos += length;
    }

    @Override
    public void seek(long position) throws IOException {
        super.seek(position);
        channel.position(position);
    }

    @Override
    public long length() {
        try {
            return channel.size();
        } catch (IOException e) {
            return -1;
        }
    }

    @Override
    public void close() throws IOException {
        try {
            super.close();
        } finally {
            channel.close();
        }
    }
}
