package org.epochrome.io.write;

import java.awt.image.BufferedImage;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.epochrome.image.Plane;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.fits.FitsHdu;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.text.Message;

/**
 * Writes frames as a capture program leaves them: grey, linear, 16-bit counts, as FITS (rows from the bottom up), TIFF
 * (not packed) or PNG. The same counts and cards give the same bytes of FITS and TIFF; those of PNG hang on the zlib of
 * the Java that runs.
 */
public final class FrameWriter {
    private static final int TOP = 65535;
    private static final int ZERO = 32768;

    private FrameWriter() {}

    /**
     * Writes a frame in the format of its extension.
     *
     * @param counts 0 to 65535; rounded, clipped
     * @param cards keywords for a FITS header, in this order; other formats have no place for them
     * @throws OutputRefused if the extension is not a format for frames, the file exists and may not be replaced, or it
     *     cannot be written
     */
    public static void write(Path file, Plane counts, List<FitsCard> cards, boolean overwrite) {
        switch (OutputFormat.of(file)) {
            case FITS -> AtomicFile.write(file, overwrite, part -> Files.write(part, fits(counts, cards)));
            case TIFF -> AtomicFile.write(file, overwrite, part -> encode(part, "tiff", counts));
            case PNG -> AtomicFile.write(file, overwrite, part -> encode(part, "png", counts));
            case JPEG -> throw new OutputRefused(file, Message.of("output.frameName"));
        }
    }

    private static byte[] fits(Plane counts, List<FitsCard> cards) {
        List<FitsCard> all = new ArrayList<>();
        all.add(new FitsCard("SIMPLE", true, "conforms to FITS standard"));
        all.add(new FitsCard("BITPIX", 16, "16-bit integers"));
        all.add(new FitsCard("NAXIS", 2, ""));
        all.add(new FitsCard("NAXIS1", counts.width(), "[pixel] width"));
        all.add(new FitsCard("NAXIS2", counts.height(), "[pixel] height"));
        all.add(new FitsCard("BZERO", ZERO, "unsigned"));
        all.add(new FitsCard("BSCALE", 1, ""));
        all.add(new FitsCard("ROWORDER", "BOTTOM-UP", "the first row is the bottom one"));
        all.addAll(cards);
        List<String> lines = new ArrayList<>();
        all.forEach(card -> lines.add(FitsWriter.line(card)));
        lines.add("END");
        byte[] header = FitsWriter.text(lines).getBytes(StandardCharsets.US_ASCII);

        long data = 2L * counts.width() * counts.height();
        ByteBuffer file = ByteBuffer.allocate(Math.toIntExact(header.length + FitsHdu.padded(data)));
        file.put(header);
        for (int y = counts.height() - 1; y >= 0; y--) {
            for (int x = 0; x < counts.width(); x++) {
                file.putShort((short) (count(counts.at(x, y)) - ZERO));
            }
        }
        return file.array();
    }

    private static void encode(Path part, String format, Plane counts) throws IOException {
        BufferedImage image = new BufferedImage(counts.width(), counts.height(), BufferedImage.TYPE_USHORT_GRAY);
        WritableRaster raster = image.getRaster();
        for (int y = 0; y < counts.height(); y++) {
            for (int x = 0; x < counts.width(); x++) {
                raster.setSample(x, y, 0, count(counts.at(x, y)));
            }
        }
        ImageWriter writer = PictureWriter.writer(format);
        try (ImageOutputStream out = new ChannelImageStream(part)) {
            writer.setOutput(out);
            writer.write(new IIOImage(image, null, null));
        } finally {
            writer.dispose();
        }
    }

    private static int count(float value) {
        return Math.min(TOP, Math.max(0, Math.round(value)));
    }
}
