package org.epochrome.io.raster;

import com.twelvemonkeys.imageio.metadata.CompoundDirectory;
import com.twelvemonkeys.imageio.metadata.Directory;
import com.twelvemonkeys.imageio.metadata.Entry;
import com.twelvemonkeys.imageio.metadata.tiff.TIFF;
import com.twelvemonkeys.imageio.metadata.tiff.TIFFReader;
import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReaderSpi;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import org.epochrome.io.head.OpenedFrame;
import org.epochrome.text.Message;

/** A TIFF file (TIFF 6.0, also BigTIFF) whose first page has been checked. */
public final class TiffFrame implements OpenedFrame {
    private static final int LITTLE_ENDIAN_MARK = ('I' << 8) | 'I';
    private static final int BIG_TIFF = 43;
    private static final int MOST_FIELDS = 65535;

    private final FrameHead head;
    private final TiffLayout layout;

    private TiffFrame(FrameHead head, TiffLayout layout) {
        this.head = head;
        this.layout = layout;
    }

    public static TiffFrame open(Path file) throws IOException {
        try (ImageInputStream in = new FileImageInputStream(file.toFile())) {
            checkDirectoryEnd(file, in);
            CompoundDirectory pages = (CompoundDirectory) new TIFFReader().read(in);
            if (pages.directoryCount() == 0) {
                throw new FrameRefused(file, Message.of("tiff.noImage"));
            }
            TiffLayout layout = TiffLayout.of(file, pages.getDirectory(0), in.length());
            List<Message> notes = new ArrayList<>();
            if (pages.directoryCount() > 1) {
                notes.add(Message.of("tiff.pages", pages.directoryCount()));
            }
            if (layout.samplesPerPixel() != layout.planes()) {
                notes.add(Message.of("frame.transparency"));
            }
            boolean turned = layout.orientation().swapsSides();
            FrameHead head = new FrameHead(
                    file,
                    FrameFormat.TIFF,
                    turned ? layout.height() : layout.width(),
                    turned ? layout.width() : layout.height(),
                    layout.planes(),
                    layout.depth(),
                    layout.fullScale(),
                    FitsKeywords.NONE,
                    HeaderGeometry.UNKNOWN,
                    encoding(pages.getDirectory(0)),
                    notes);
            return new TiffFrame(head, layout);
        }
    }

    private static Optional<Encoding> encoding(Directory page) {
        Entry profile = page.getEntryById(TIFF.TAG_ICC_PROFILE);
        return profile != null && profile.getValue() instanceof byte[] bytes
                ? TaggedEncoding.ofProfile(bytes)
                : Optional.empty();
    }

    /** The library takes what it finds of a directory that is cut off. */
    private static void checkDirectoryEnd(Path file, ImageInputStream in) throws IOException {
        in.setByteOrder(in.readShort() == LITTLE_ENDIAN_MARK ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        boolean big = in.readShort() == BIG_TIFF;
        if (big) {
            in.skipBytes(4);
        }
        long directory = big ? in.readLong() : in.readUnsignedInt();
        if (directory < 8 || directory >= in.length()) {
            throw new FrameRefused(file, Message.of("tiff.noImage"));
        }
        in.seek(directory);
        long fields = big ? in.readLong() : in.readUnsignedShort();
        if (fields < 0
                || fields > MOST_FIELDS
                || in.getStreamPosition() + fields * (big ? 20 : 12) + (big ? 8 : 4) > in.length()) {
            throw new FrameRefused(file, Message.of("tiff.header"));
        }
        in.seek(0);
    }

    @Override
    public FrameHead head() {
        return head;
    }

    @Override
    public List<Plane> planes() throws IOException {
        // The raster, because a picture made of it would have its floats clipped and its colours converted.
        ImageReader reader = new TIFFImageReaderSpi().createReaderInstance(null);
        try (ImageInputStream in = new FileImageInputStream(head.file().toFile())) {
            reader.setInput(in);
            Raster raster = reader.readRaster(0, null);
            List<Plane> planes = new ArrayList<>();
            for (Plane stored : Rasters.planes(raster, layout.planes())) {
                if (layout.whiteIsZero()) {
                    invert(stored, (float) layout.fullScale());
                }
                planes.add(layout.orientation().upright(stored));
            }
            return planes;
        } finally {
            reader.dispose();
        }
    }

    private static void invert(Plane plane, float fullScale) {
        float[] data = plane.data();
        for (int i = 0; i < data.length; i++) {
            data[i] = fullScale - data[i];
        }
    }
}
