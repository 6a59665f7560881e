package org.epochrome.io.fits;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.io.head.ImageLimits;
import org.epochrome.text.Message;

/**
 * How the pixels of a FITS image lie in its data and what they mean (FITS Standard 4.0, sections 4.4.2.5, 5 and 7.1).
 *
 * @param interleaved whether the three planes alternate from sample to sample (NAXIS1 = 3)
 * @param topDown whether the first stored row is the top one; by the standard it is the bottom one
 * @param bitpix kind of the samples: 8 (unsigned), 16, 32, 64 (signed), -32, -64 (floats)
 * @param blank the integer that means "no value", if any
 */
record FitsLayout(
        int width,
        int height,
        int planes,
        boolean interleaved,
        boolean topDown,
        int bitpix,
        double zero,
        double scale,
        Long blank) {

    /**
     * Reads the layout from a header.
     *
     * @param prefix "Z" for the original header kept in that of an image in compressed tiles, else empty
     */
    static FitsLayout of(Path file, FitsHdu hdu, String prefix) {
        int bitpix = (int) hdu.integer(file, prefix + "BITPIX");
        if (!List.of(8, 16, 32, 64, -32, -64).contains(bitpix)) {
            throw new FrameRefused(file, Message.of("fits.bitpix", bitpix));
        }
        List<Long> axes = new ArrayList<>();
        long count = hdu.integer(file, prefix + "NAXIS");
        for (int i = 1; i <= Math.min(count, 999); i++) {
            axes.add(hdu.integer(file, prefix + "NAXIS" + i));
        }
        while (axes.size() > 2 && axes.get(axes.size() - 1) == 1) {
            axes.remove(axes.size() - 1);
        }
        boolean interleaved = axes.size() == 3 && axes.get(0) == 3 && axes.get(2) != 3;
        boolean cube = axes.size() == 3 && axes.get(2) == 3 && axes.get(0) != 3;
        if (axes.size() != 2 && !interleaved && !cube) {
            throw new FrameRefused(file, Message.of("fits.cube", axes));
        }
        long width = interleaved ? axes.get(1) : axes.get(0);
        long height = interleaved ? axes.get(2) : axes.get(1);
        int planes = axes.size() == 2 ? 1 : 3;
        ImageLimits.check(file, width, height, planes * (4L + Math.abs(bitpix) / 8));
        FitsKeywords keywords = hdu.own();
        double scale = keywords.number("BSCALE").map(BigDecimal::doubleValue).orElse(1.0);
        if (scale == 0) {
            throw new FrameRefused(file, Message.of("fits.bscale"));
        }
        return new FitsLayout(
                (int) width,
                (int) height,
                planes,
                interleaved,
                isTopDown(file, hdu.keywords()),
                bitpix,
                keywords.number("BZERO").map(BigDecimal::doubleValue).orElse(0.0),
                scale,
                bitpix > 0 ? keywords.number("BLANK").map(BigDecimal::longValue).orElse(null) : null);
    }

    private static boolean isTopDown(Path file, FitsKeywords keywords) {
        String order = keywords.text("ROWORDER").orElse("BOTTOM-UP");
        if (order.equalsIgnoreCase("TOP-DOWN")) {
            return true;
        }
        if (order.equalsIgnoreCase("BOTTOM-UP")) {
            return false;
        }
        throw new FrameRefused(file, Message.of("fits.rowOrder", order));
    }

    int bytesPerSample() {
        return Math.abs(bitpix) / 8;
    }

    long dataBytes() {
        return (long) width * height * planes * bytesPerSample();
    }

    String depth() {
        return Math.abs(bitpix) + (bitpix < 0 ? "-bit float" : "-bit integer");
    }

    /** The largest value that the samples can stand for; NaN for floats. */
    double fullScale() {
        if (bitpix < 0) {
            return Double.NaN;
        }
        double lowest = bitpix == 8 ? 0 : -Math.scalb(1.0, bitpix - 1);
        double highest = bitpix == 8 ? 255 : Math.scalb(1.0, bitpix - 1) - 1;
        return zero + scale * (scale > 0 ? highest : lowest);
    }

    /** Reads the samples from the beginning of the data. */
    List<Plane> read(InputStream in) throws IOException {
        List<Plane> all = new ArrayList<>();
        for (int p = 0; p < planes; p++) {
            all.add(new Plane(width, height));
        }
        int perRow = interleaved ? 3 * width : width;
        byte[] bytes = new byte[perRow * bytesPerSample()];
        float[] row = new float[perRow];
        for (int p = 0; p < (interleaved ? 1 : planes); p++) {
            for (int r = 0; r < height; r++) {
                if (in.readNBytes(bytes, 0, bytes.length) < bytes.length) {
                    throw new EOFException();
                }
                decode(ByteBuffer.wrap(bytes), row);
                int at = (topDown ? r : height - 1 - r) * width;
                if (interleaved) {
                    for (int i = 0; i < perRow; i++) {
                        all.get(i % 3).data()[at + i / 3] = row[i];
                    }
                } else {
                    System.arraycopy(row, 0, all.get(p).data(), at, width);
                }
            }
        }
        return all;
    }

    /** FITS numbers are big-endian; unlike its larger integers, those of 8 bits have no sign. */
    private void decode(ByteBuffer samples, float[] row) {
        for (int i = 0; i < row.length; i++) {
            if (bitpix == -32) {
                row[i] = (float) (zero + scale * samples.getFloat());
            } else if (bitpix == -64) {
                row[i] = (float) (zero + scale * samples.getDouble());
            } else {
                long stored =
                        switch (bitpix) {
                            case 8 -> samples.get() & 0xff;
                            case 16 -> samples.getShort();
                            case 32 -> samples.getInt();
                            default -> samples.getLong();
                        };
                row[i] = blank != null && stored == blank ? Float.NaN : (float) (zero + scale * stored);
            }
        }
    }
}
