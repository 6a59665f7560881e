package org.epochrome.io.fits;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.zip.GZIPInputStream;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.image.compression.hdu.CompressedImageHDU;
import nom.tam.util.FitsOutputStream;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FrameFormat;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.head.HeaderGeometry;
import org.epochrome.io.head.ImageLimits;
import org.epochrome.io.head.OpenedFrame;
import org.epochrome.text.Message;

/** A FITS file whose first image has been found (FITS Standard 4.0; Pence et al. 2010 for its predecessor). */
public final class FitsFrame implements OpenedFrame {
    // The library warns about every odd card on standard error; a reference to the logger must be kept, or its level is
    // lost.
    private static final Logger LIBRARY_LOG = Logger.getLogger("nom.tam");
    /** What a packed file may hold before and after its image. */
    private static final long MOST_BESIDES_BYTES = 1L << 29;

    private static final Set<String> EXACT_METHODS = Set.of("RICE_1", "GZIP_1", "GZIP_2");
    private static final Set<Long> RICE_BYTES = Set.of(1L, 2L, 4L);

    // A table cannot come first in a FITS file, so the library wants to see this before it.
    private static final String EMPTY_PRIMARY = String.format(
            "%-80s%-80s%-80s%-2640s",
            "SIMPLE  =                    T",
            "BITPIX  =                    8",
            "NAXIS   =                    0",
            "END");

    static {
        LIBRARY_LOG.setLevel(Level.OFF);
    }

    private final FrameHead head;
    private final boolean compressed;

    private FitsFrame(FrameHead head, boolean compressed) {
        this.head = head;
        this.compressed = compressed;
    }

    public static FitsFrame open(Path file) throws IOException {
        try (LimitedStream in = stream(file)) {
            FitsHdu hdu = FitsHdu.ofFirstImage(file, in);
            boolean compressed = hdu.isCompressed();
            FitsLayout layout = FitsLayout.of(file, hdu, compressed ? "Z" : "");
            if (compressed) {
                checkTiles(file, hdu, layout);
            }
            checkLength(file, hdu.dataOffset() + FitsHdu.padded(hdu.dataBytes(file)));
            FrameHead head = new FrameHead(
                    file,
                    FrameFormat.FITS,
                    layout.width(),
                    layout.height(),
                    layout.planes(),
                    layout.depth(),
                    layout.fullScale(),
                    hdu.keywords(),
                    layout.interleaved()
                            ? HeaderGeometry.UNKNOWN
                            : FitsGeometry.of(hdu.own(), hdu.keywords(), layout.topDown()),
                    Optional.empty(),
                    notes(layout));
            return new FitsFrame(head, compressed);
        }
    }

    @Override
    public FrameHead head() {
        return head;
    }

    @Override
    public List<Plane> planes() throws IOException {
        try (LimitedStream in = stream(head.file())) {
            FitsHdu hdu = FitsHdu.ofFirstImage(head.file(), in);
            in.allow(FitsHdu.padded(hdu.dataBytes(head.file())));
            List<Plane> planes = compressed ? decode(unpackTiles(hdu, in)) : decode(hdu, in);
            // The end of a gzip stream holds its checksum.
            in.transferTo(OutputStream.nullOutputStream());
            return planes;
        }
    }

    private List<Plane> decode(byte[] plain) throws IOException {
        InputStream in = new ByteArrayInputStream(plain);
        return decode(FitsHdu.ofFirstImage(head.file(), in), in);
    }

    private List<Plane> decode(FitsHdu hdu, InputStream in) throws IOException {
        FitsLayout layout = FitsLayout.of(head.file(), hdu, "");
        if (layout.width() != head.width()
                || layout.height() != head.height()
                || layout.planes() != head.planeCount()) {
            throw new FrameRefused(head.file(), Message.of("fits.size"));
        }
        List<Plane> planes = layout.read(in);
        if (in.readNBytes((int) (FitsHdu.padded(layout.dataBytes()) - layout.dataBytes())).length
                < FitsHdu.padded(layout.dataBytes()) - layout.dataBytes()) {
            throw new EOFException();
        }
        return planes;
    }

    /** Writes the image in compressed tiles out as an ordinary one. */
    private byte[] unpackTiles(FitsHdu hdu, InputStream data) throws IOException {
        byte[] headers = (EMPTY_PRIMARY + hdu.cards()).getBytes(StandardCharsets.US_ASCII);
        long length = FitsHdu.padded(hdu.dataBytes(head.file()));
        byte[] tiles = data.readNBytes((int) Math.min(length, Integer.MAX_VALUE - 8L));
        if (tiles.length < length) {
            throw new EOFException();
        }
        TileHeap.check(head.file(), hdu, tiles);
        InputStream wanted =
                new SequenceInputStream(new ByteArrayInputStream(headers), new ByteArrayInputStream(tiles));
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        try (Fits fits = new Fits(wanted);
                FitsOutputStream out = new FitsOutputStream(plain)) {
            fits.readHDU();
            if (!(fits.readHDU() instanceof CompressedImageHDU image)) {
                throw new FrameRefused(head.file(), Message.of("fits.tilesDamaged"));
            }
            image.asImageHDU().write(out);
        } catch (FitsException e) {
            throw new FrameRefused(head.file(), Message.of("fits.compression"), e);
        }
        return plain.toByteArray();
    }

    private static List<Message> notes(FitsLayout layout) {
        List<Message> notes = new ArrayList<>();
        if (layout.bytesPerSample() > 2 && !layout.depth().equals("32-bit float")) {
            notes.add(Message.of("fits.asFloats", layout.depth()));
        }
        return notes;
    }

    /** The bytes of a file, unpacked; for what is packed beside the image there is a limit. */
    private static LimitedStream stream(Path file) throws IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        return isGzip(file)
                ? new LimitedStream(
                        file, new BufferedInputStream(new GZIPInputStream(in, 1 << 16), 1 << 16), MOST_BESIDES_BYTES)
                : new LimitedStream(file, in, Long.MAX_VALUE);
    }

    private static boolean isGzip(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.read() == 0x1f;
        }
    }

    /** Only what the library undoes exactly; from floats that were compressed without loss it makes zeros. */
    private static void checkTiles(Path file, FitsHdu hdu, FitsLayout layout) {
        String method = hdu.own().text("ZCMPTYPE").orElse("");
        if (layout.depth().endsWith("float") || !EXACT_METHODS.contains(method)) {
            throw new FrameRefused(file, Message.of("fits.tileSamples", layout.depth(), method));
        }
        if (method.equals("RICE_1")) {
            checkRice(file, hdu);
        }
        ImageLimits.checkPacked(file, hdu.dataBytes(file), layout.dataBytes(), ImageLimits.MOST_DEFLATE_GAIN);
        long axes = hdu.integer(file, "ZNAXIS");
        for (int i = 1; i <= axes; i++) {
            checkTileSide(file, hdu, "ZTILE" + i);
        }
    }

    /** The library prints stack traces for samples of another length (FITS Standard 4.0, section 10.4.1). */
    private static void checkRice(Path file, FitsHdu hdu) {
        for (int i = 1; hdu.own().text("ZNAME" + i).isPresent(); i++) {
            String keyword = "ZVAL" + i;
            if (hdu.own().text("ZNAME" + i).get().equals("BYTEPIX")
                    && !RICE_BYTES.contains(hdu.integer(file, keyword))) {
                throw new FrameRefused(file, Message.of("fits.keyword", keyword));
            }
        }
    }

    /** A tile without extent would repeat without end (FITS Standard 4.0, section 10.1.1). */
    private static void checkTileSide(Path file, FitsHdu hdu, String keyword) {
        if (hdu.own().text(keyword).isEmpty()) {
            return;
        }
        long side = hdu.integer(file, keyword);
        if (side < 1 || side > ImageLimits.LARGEST_SIDE_PX) {
            throw new FrameRefused(file, Message.of("fits.tileSides", side, keyword));
        }
    }

    private static void checkLength(Path file, long needed) throws IOException {
        long there = Files.size(file);
        boolean impossible = isGzip(file) ? there * ImageLimits.MOST_DEFLATE_GAIN < needed : there < needed;
        if (impossible) {
            throw new FrameRefused(file, Message.of("fits.short", there, needed));
        }
    }
}
