package org.epochrome.io.raster;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.InflaterInputStream;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import org.epochrome.image.Encoding;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.io.head.FrameFormat;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.head.HeaderGeometry;
import org.epochrome.io.head.ImageLimits;
import org.epochrome.io.head.OpenedFrame;
import org.epochrome.text.Message;

/**
 * A PNG file whose chunks have all been checked, because the decoder of the JDK takes files that lack their end. The
 * samples are read as they are, whatever gamma the file names.
 */
public final class PngFrame implements OpenedFrame {
    private static final int SIGNATURE_BYTES = 8;
    private static final int HEADER_CHUNK_BYTES = 13;
    private static final int GAMMA_CHUNK_BYTES = 4;
    private static final int MOST_PROFILE_BYTES = 1 << 22;
    private static final int GREY = 0;
    private static final int RGB = 2;
    private static final int PALETTE = 3;
    private static final int GREY_ALPHA = 4;
    private static final int RGBA = 6;

    private final FrameHead head;

    private PngFrame(FrameHead head) {
        this.head = head;
    }

    public static PngFrame open(Path file) throws IOException {
        Chunks chunks = checkChunks(file);
        long width = chunks.width();
        long height = chunks.height();
        int bits = chunks.bits();
        int colour = chunks.colour();
        if (colour == PALETTE) {
            throw new FrameRefused(file, Message.of("png.palette"));
        }
        if (colour != GREY && colour != RGB && colour != GREY_ALPHA && colour != RGBA) {
            throw new FrameRefused(file, Message.of("png.colourType", colour));
        }
        if (bits != 8 && bits != 16) {
            throw new FrameRefused(file, Message.of("png.bits", bits));
        }
        int planes = colour == RGB || colour == RGBA ? 3 : 1;
        boolean alpha = colour == GREY_ALPHA || colour == RGBA;
        long bytesPerPixel = (planes + (alpha ? 1L : 0L)) * (bits / 8);
        ImageLimits.check(file, width, height, bytesPerPixel + 4L * planes);
        ImageLimits.checkPacked(
                file, chunks.packedBytes(), width * height * bytesPerPixel, ImageLimits.MOST_DEFLATE_GAIN);
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
                chunks.encoding(),
                alpha ? List.of(Message.of("frame.transparency")) : List.of());
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
                throw new FrameRefused(head.file(), Message.of("png.partsMissing"));
            }
            return planes;
        } finally {
            reader.dispose();
        }
    }

    /**
     * Walks all chunks up to the end and checks their sums (PNG, second edition, section 5.3).
     *
     * @return what the chunks before the image say
     */
    private static Chunks checkChunks(Path file) throws IOException {
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file), 1 << 16))) {
            in.skipNBytes(SIGNATURE_BYTES);
            byte[] header = null;
            Optional<Encoding> encoding = Optional.empty();
            long packedBytes = 0;
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
                        throw new FrameRefused(file, Message.of("png.noHeader"));
                    }
                    header = new byte[HEADER_CHUNK_BYTES];
                    in.readFully(header);
                    sum.update(header);
                } else if (name.equals("gAMA") && length == GAMMA_CHUNK_BYTES) {
                    byte[] gamma = new byte[GAMMA_CHUNK_BYTES];
                    in.readFully(gamma);
                    sum.update(gamma);
                    // The sRGB chunk and a profile count before it (PNG, second edition, section 11.3.3.2).
                    encoding = encoding.isPresent() ? encoding : TaggedEncoding.ofGammaChunk(bigEndian(gamma, 0));
                } else if (name.equals("iCCP") && length <= MOST_PROFILE_BYTES) {
                    byte[] named = in.readNBytes((int) length);
                    sum.update(named);
                    encoding = profile(named);
                } else {
                    for (long left = length; left > 0; ) {
                        int part = (int) Math.min(left, buffer.length);
                        in.readFully(buffer, 0, part);
                        sum.update(buffer, 0, part);
                        left -= part;
                    }
                    if (name.equals("IDAT")) {
                        packedBytes += length;
                    }
                    if (name.equals("sRGB")) {
                        encoding = Optional.of(Encoding.SRGB);
                    }
                }
                if (in.readInt() != (int) sum.getValue()) {
                    throw new FrameRefused(file, Message.of("png.checksum"));
                }
                if (name.equals("IEND")) {
                    return new Chunks(
                            bigEndian(header, 0), bigEndian(header, 4), header[8], header[9], encoding, packedBytes);
                }
            }
        }
    }

    /** What the header chunk says, the encoding if one is named that is not linear, and the length of the image's data. */
    private record Chunks(
            long width, long height, int bits, int colour, Optional<Encoding> encoding, long packedBytes) {}

    /** The encoding by a chunk with a name, a zero, the method of packing, and a packed profile. */
    private static Optional<Encoding> profile(byte[] chunk) {
        int name = 0;
        while (name < chunk.length && chunk[name] != 0) {
            name++;
        }
        if (name + 2 > chunk.length) {
            return Optional.empty();
        }
        try (InputStream in =
                new InflaterInputStream(new ByteArrayInputStream(chunk, name + 2, chunk.length - name - 2))) {
            return TaggedEncoding.ofProfile(in.readNBytes(MOST_PROFILE_BYTES));
        } catch (IOException e) {
            // A profile that cannot be read says nothing.
            return Optional.empty();
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
