package org.epochrome.io.head;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;

/** The file formats that frames are read from. */
public enum FrameFormat {
    FITS,
    TIFF,
    PNG;

    private static final int LONGEST_MAGIC = 16;

    /**
     * The format of a file by its first bytes; its suffix does not matter.
     *
     * @throws FrameRefused if the file is something else, saying what it is where that helps
     */
    public static FrameFormat of(Path file) throws IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(LONGEST_MAGIC);
        }
        if (head.length == 0) {
            throw new FrameRefused(file, Message.of("frame.empty"));
        }
        if (begins(head, "SIMPLE  =") || begins(head, 0x1f, 0x8b)) {
            return FITS;
        }
        if (begins(head, 'I', 'I', 42, 0)
                || begins(head, 'M', 'M', 0, 42)
                || begins(head, 'I', 'I', 43, 0)
                || begins(head, 'M', 'M', 0, 43)) {
            return TIFF;
        }
        if (begins(head, 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n')) {
            return PNG;
        }
        throw new FrameRefused(file, complaint(head));
    }

    private static Message complaint(byte[] head) {
        if (begins(head, 0xff, 0xd8, 0xff)) {
            return Message.of("frame.jpeg");
        }
        if (begins(head, 0x1f, 0x9d)) {
            return Message.of("frame.compress");
        }
        if (begins(head, "PK") || begins(head, "BZh") || begins(head, "7z")) {
            return Message.of("frame.archive");
        }
        if (begins(head, "RIFF") || begins(head, "LUCAM-RECORDER")) {
            return Message.of("frame.video");
        }
        return Message.of("frame.otherFormat");
    }

    private static boolean begins(byte[] head, String magic) {
        byte[] wanted = magic.getBytes(StandardCharsets.US_ASCII);
        return head.length >= wanted.length && Arrays.equals(head, 0, wanted.length, wanted, 0, wanted.length);
    }

    private static boolean begins(byte[] head, int... magic) {
        if (head.length < magic.length) {
            return false;
        }
        for (int i = 0; i < magic.length; i++) {
            if ((head[i] & 0xff) != magic[i]) {
                return false;
            }
        }
        return true;
    }
}
