package org.epochrome.session.recipe;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;

/**
 * Size and checksum, by which a changed file is recognised.
 *
 * @param bytes its length
 * @param sha256 its SHA-256 (FIPS 180-4), in hexadecimal digits
 */
public record FileMark(long bytes, String sha256) {
    private static final int BLOCK = 1 << 16;

    /**
     * Reads the mark of a file.
     *
     * @throws FrameRefused if the file cannot be read
     */
    public static FileMark of(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] block = new byte[BLOCK];
            long bytes = 0;
            for (int n = in.read(block); n > 0; n = in.read(block)) {
                digest.update(block, 0, n);
                bytes += n;
            }
            return new FileMark(bytes, HexFormat.of().formatHex(digest.digest()));
        } catch (IOException e) {
            throw new FrameRefused(file, Message.of("file.checkPermission"), e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform knows SHA-256.", e);
        }
    }
}
