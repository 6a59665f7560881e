package org.epochrome.io.write;

import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.AnimationWriter.Still;

/** Animated PNG, chunk by chunk (PNG Specification, third edition, W3C 2025): red, green, blue, 8 bits each, sRGB. */
final class AnimatedPng {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final int SAMPLES = 3;
    private static final byte TRUECOLOUR = 2;
    private static final byte PAETH = 4;

    private AnimatedPng() {}

    static void write(Path part, List<Still> stills, PictureWriter.Caption caption) throws IOException {
        Plane size = stills.get(0).planes().get(0);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part), 1 << 16)) {
            out.write(SIGNATURE);
            ByteBuffer header = ByteBuffer.allocate(13);
            header.putInt(size.width()).putInt(size.height()).put((byte) 8).put(TRUECOLOUR);
            chunk(out, "IHDR", header.array());
            chunk(out, "sRGB", new byte[] {0});
            chunk(
                    out,
                    "tEXt",
                    ("Description\0" + FitsWriter.ascii(caption.description())).getBytes(StandardCharsets.ISO_8859_1));
            // The number of plays 0 stands for ever.
            chunk(
                    out,
                    "acTL",
                    ByteBuffer.allocate(8).putInt(stills.size()).putInt(0).array());
            int sequence = 0;
            for (int i = 0; i < stills.size(); i++) {
                chunk(out, "fcTL", control(sequence++, size, stills.get(i).hundredths()));
                byte[] packed = packed(stills.get(i).planes());
                if (i == 0) {
                    chunk(out, "IDAT", packed);
                } else {
                    ByteBuffer numbered = ByteBuffer.allocate(4 + packed.length);
                    chunk(out, "fdAT", numbered.putInt(sequence++).put(packed).array());
                }
            }
            chunk(out, "IEND", new byte[0]);
        }
    }

    /** The whole picture at its place for a time; the next one replaces it. */
    private static byte[] control(int sequence, Plane size, int hundredths) {
        ByteBuffer control = ByteBuffer.allocate(26);
        control.putInt(sequence)
                .putInt(size.width())
                .putInt(size.height())
                .putInt(0)
                .putInt(0);
        control.putShort((short) hundredths).putShort((short) 100);
        return control.array();
    }

    private static byte[] packed(List<Plane> planes) throws IOException {
        int width = planes.get(0).width();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater)) {
            byte[] above = new byte[SAMPLES * (width + 1)];
            byte[] row = new byte[SAMPLES * (width + 1)];
            byte[] filtered = new byte[SAMPLES * width];
            for (int y = 0; y < planes.get(0).height(); y++) {
                // Rows begin with a pixel of zeros, which the filter wants to see left of the first one.
                for (int x = 0; x < width; x++) {
                    for (int k = 0; k < SAMPLES; k++) {
                        row[SAMPLES * (x + 1) + k] =
                                (byte) PictureWriter.sample(planes.get(k).at(x, y), 255);
                    }
                }
                for (int i = 0; i < filtered.length; i++) {
                    int left = row[i] & 0xff;
                    int up = above[i + SAMPLES] & 0xff;
                    int corner = above[i] & 0xff;
                    filtered[i] = (byte) (row[i + SAMPLES] - predicted(left, up, corner));
                }
                out.write(PAETH);
                out.write(filtered);
                byte[] swap = above;
                above = row;
                row = swap;
            }
        } finally {
            deflater.end();
        }
        return bytes.toByteArray();
    }

    /** Paeth's predictor (PNG Specification, section 9.4). */
    private static int predicted(int left, int up, int corner) {
        int guess = left + up - corner;
        int fromLeft = Math.abs(guess - left);
        int fromUp = Math.abs(guess - up);
        int fromCorner = Math.abs(guess - corner);
        if (fromLeft <= fromUp && fromLeft <= fromCorner) {
            return left;
        }
        return fromUp <= fromCorner ? up : corner;
    }

    private static void chunk(OutputStream out, String type, byte[] data) throws IOException {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(name);
        sum.update(data);
        DataOutputStream to = new DataOutputStream(out);
        to.writeInt(data.length);
        to.write(name);
        to.write(data);
        to.writeInt((int) sum.getValue());
    }
}
