package org.epochrome.io;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import org.epochrome.image.Plane;

/**
 * A PNG file whose chunks have all been checked, because the decoder of the JDK takes files that lack their end. The
 * samples are taken as linear, whatever gamma the file names.
 */
final class PngFrame implements OpenedFrame {
    private static final int SIGNATURE_BYTES = 8;
    private static final int HEADER_CHUNK_BYTES = 13;
    private static final int GREY = 0;
    private static final int RGB = 2;
    private static final int PALETTE = 3;
    private static final int GREY_ALPHA = 4;
    private static final int RGBA = 6;

    private final FrameHead head;

    private PngFrame(FrameHead head) {
        this.head = head;
    }

    static PngFrame open(Path file) throws IOException {
        byte[] header = checkChunks(file);
        long width = bigEndian(header, 0);
        long height = bigEndian(header, 4);
        int bits = header[8];
        int colour = header[9];
        if (colour == PALETTE) {
            throw new FrameRefused(
                    file, "has a colour palette, which keeps too few shades; save it as 16-bit grey or RGB.");
        }
        if (colour != GREY && colour != RGB && colour != GREY_ALPHA && colour != RGBA) {
            throw new FrameRefused(file, "is damaged: its colour type is " + colour + "; save it again.");
        }
        if (bits != 8 && bits != 16) {
            throw new FrameRefused(file, "has only " + bits + "-bit samples; save it as 16-bit grey or RGB.");
        }
        int planes = colour == RGB || colour == RGBA ? 3 : 1;
        boolean alpha = colour == GREY_ALPHA || colour == RGBA;
        ImageLimits.check(file, width, height, (planes + (alpha ? 1L : 0L)) * (bits / 8) + 4L * planes);
        FrameHead head = new FrameHead(
                file,
                FrameFormat.PNG,
                (int) width,
                (int) height,
                planes,
                bits + "-bit integer",
                bits == 8 ? 255 : 65535,
                FitsKeywords.NONE,
                HeaderGeometry.UNKNOWN,
                alpha ? List.of("Its transparency is dropped.") : List.of());
        return new PngFrame(head);
    }

    @Override
    public FrameHead head() {
        return head;
    }

    @Override
    public List<Plane> planes() throws IOException {
        ImageReader reader = ImageIO.getImageReadersByFormatName("png").next();
        List<String> warnings = new ArrayList<>();
        try (ImageInputStream in = new FileImageInputStream(head.file().toFile())) {
            reader.setInput(in, true, true);
            reader.addIIOReadWarningListener((source, warning) -> warnings.add(warning));
            List<Plane> planes = Rasters.planes(reader.read(0).getRaster(), head.planeCount());
            if (!warnings.isEmpty()) {
                throw new FrameRefused(head.file(), "is damaged: parts of its image are missing; save it again.");
            }
            return planes;
        } finally {
            reader.dispose();
        }
    }

    /**
     * Walks all chunks up to the end and checks their sums (PNG, second edition, section 5.3).
     *
     * @return the data of the header chunk
     */
    private static byte[] checkChunks(Path file) throws IOException {
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file), 1 << 16))) {
            in.skipNBytes(SIGNATURE_BYTES);
            byte[] header = null;
            byte[] buffer = new byte[1 << 16];
            while (true) {
                long length = in.readInt() & 0xffffffffL;
                CRC32 sum = new CRC32();
                byte[] type = new byte[4];
                in.readFully(type);
                sum.update(type);
                String name = new String(type, StandardCharsets.ISO_8859_1);
                if (header == null) {
                    if (!name.equals("IHDR") || length != HEADER_CHUNK_BYTES) {
                        throw new FrameRefused(file, "is damaged: it has no PNG header; copy or save it again.");
                    }
                    header = new byte[HEADER_CHUNK_BYTES];
                    in.readFully(header);
                    sum.update(header);
                } else {
                    for (long left = length; left > 0; ) {
                        int part = (int) Math.min(left, buffer.length);
                        in.readFully(buffer, 0, part);
                        sum.update(buffer, 0, part);
                        left -= part;
                    }
                }
                if (in.readInt() != (int) sum.getValue()) {
                    throw new FrameRefused(file, "is damaged: a checksum does not match; copy or save it again.");
                }
                if (name.equals("IEND")) {
                    return header;
                }
            }
        }
    }

    private static long bigEndian(byte[] bytes, int at) {
        long value = 0;
        for (int i = 0; i < 4; i++) {
            value = value << 8 | (bytes[at + i] & 0xff);
        }
        return value;
    }
}
