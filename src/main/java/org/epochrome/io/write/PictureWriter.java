package org.epochrome.io.write;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.epochrome.image.Plane;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.text.Message;

/**
 * Writes finished pictures, already encoded for display by the curve of sRGB: PNG and TIFF with 16 bits, JPEG with 8. The
 * files say that they are sRGB and carry a description. The same picture gives the same bytes.
 */
public final class PictureWriter {

    private PictureWriter() {}

    /**
     * The description that a picture carries.
     *
     * @param description one line of text
     * @param shown the instant that the picture shows, UTC; never the time of writing
     * @param software name and version of the program
     */
    public record Caption(String description, Optional<Instant> shown, String software) {}

    /**
     * What is written beyond the ordinary.
     *
     * @param alpha how opaque each pixel is, 0 to 1, not multiplied into the planes; PNG only
     * @param floats whether a TIFF holds 32-bit floats instead of 16-bit integers; they are not clipped
     */
    public record Form(Optional<Plane> alpha, boolean floats) {
        /** Opaque, integers. */
        public static final Form PLAIN = new Form(Optional.empty(), false);
    }

    /**
     * Writes a picture in the format of its extension.
     *
     * @param planes one plane of grey or three of red, green, blue, of the same size, values 0 to 1; what lies beyond is
     *     clipped, NaN becomes black
     * @throws OutputRefused if the extension is not a picture format, the file exists and may not be replaced, or it cannot be
     *     written
     */
    public static void write(Path file, List<Plane> planes, Caption caption, boolean overwrite) {
        write(file, planes, Form.PLAIN, caption, overwrite);
    }

    /** Writes a picture in the format of its extension, in a form of its own. */
    public static void write(Path file, List<Plane> planes, Form form, Caption caption, boolean overwrite) {
        if (planes.size() != 1 && planes.size() != 3) {
            throw new IllegalArgumentException("A picture has one or three planes, not " + planes.size() + ".");
        }
        if (!planes.stream().allMatch(p -> p.sameSize(planes.get(0)))) {
            throw new IllegalArgumentException("The planes of a picture must have the same size.");
        }
        OutputFormat format = OutputFormat.of(file);
        if (form.alpha().isPresent() && format != OutputFormat.PNG) {
            throw new IllegalArgumentException("Only a PNG can be transparent.");
        }
        switch (format) {
            case PNG -> write(file, overwrite, "png", image(planes, form.alpha(), 16), new PngCaption(caption));
            case TIFF ->
                write(
                        file,
                        overwrite,
                        "tiff",
                        form.floats() ? floats(planes) : image(planes, Optional.empty(), 16),
                        new TiffCaption(caption));
            case JPEG -> write(file, overwrite, "jpeg", image(planes, Optional.empty(), 8), new JpegCaption(caption));
            case FITS -> throw new OutputRefused(file, Message.of("output.linearName"));
        }
    }

    /** How a format is set up and given the description of the picture. */
    interface Labels {
        void configure(ImageWriteParam param);

        void describe(IIOMetadata metadata, boolean grey) throws IOException;
    }

    /** A small picture as the bytes of a JPEG or, if it shall lose nothing, of a PNG with 8 bits, to embed in a page. */
    public static byte[] embedded(List<Plane> planes, boolean lossless) {
        Caption none = new Caption("", Optional.empty(), "");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        BufferedImage image = image(planes, Optional.empty(), 8);
        try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            if (lossless) {
                encode(out, "png", image, new Bare());
            } else {
                encode(out, "jpeg", image, new JpegCaption(none));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static void write(Path file, boolean overwrite, String format, BufferedImage image, Labels labels) {
        AtomicFile.write(file, overwrite, part -> {
            try (ImageOutputStream out = new ChannelImageStream(part)) {
                encode(out, format, image, labels);
            }
        });
    }

    private static void encode(ImageOutputStream out, String format, BufferedImage image, Labels labels)
            throws IOException {
        ImageWriter writer = writer(format);
        try {
            ImageWriteParam param = writer.getDefaultWriteParam();
            labels.configure(param);
            IIOMetadata metadata =
                    writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(image), param);
            labels.describe(metadata, image.getRaster().getNumBands() == 1);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, metadata), param);
        } finally {
            writer.dispose();
        }
    }

    /** No labels at all. */
    private record Bare() implements Labels {
        @Override
        public void configure(ImageWriteParam param) {
            // As the format has it.
        }

        @Override
        public void describe(IIOMetadata metadata, boolean grey) {
            // Nothing to say.
        }
    }

    /** The writer of the JDK; that of the TIFF library, which comes first, fails on interleaved 16-bit RGB. */
    static ImageWriter writer(String format) {
        Iterator<ImageWriter> writers = ImageIO.getImageWritersByFormatName(format);
        while (writers.hasNext()) {
            ImageWriter writer = writers.next();
            if (writer.getClass().getModule() == ImageIO.class.getModule()) {
                return writer;
            }
            writer.dispose();
        }
        throw new IllegalStateException("This Java has no writer for " + format + ".");
    }

    /** The colour profile that all pictures are meant in. */
    public static ICC_Profile srgb() {
        return ICC_Profile.getInstance(ColorSpace.CS_sRGB);
    }

    private static BufferedImage floats(List<Plane> planes) {
        int width = planes.get(0).width();
        int height = planes.get(0).height();
        ColorModel model =
                new ComponentColorModel(space(planes), false, false, ColorModel.OPAQUE, DataBuffer.TYPE_FLOAT);
        WritableRaster raster = model.createCompatibleWritableRaster(width, height);
        float[] row = new float[width];
        for (int band = 0; band < planes.size(); band++) {
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    float value = planes.get(band).at(x, y);
                    row[x] = Float.isNaN(value) ? 0 : value;
                }
                raster.setSamples(0, y, width, 1, band, row);
            }
        }
        return new BufferedImage(model, raster, false, null);
    }

    /** Grey counts as encoded like sRGB too; Java's own grey space is linear, but only the samples are written. */
    private static ColorSpace space(List<Plane> planes) {
        return planes.size() == 3 ? new ICC_ColorSpace(srgb()) : ColorSpace.getInstance(ColorSpace.CS_GRAY);
    }

    private static BufferedImage image(List<Plane> colours, Optional<Plane> alpha, int bits) {
        List<Plane> planes = new ArrayList<>(colours);
        alpha.ifPresent(planes::add);
        int width = planes.get(0).width();
        int height = planes.get(0).height();
        int type = bits == 16 ? DataBuffer.TYPE_USHORT : DataBuffer.TYPE_BYTE;
        ColorModel model = new ComponentColorModel(
                space(colours),
                alpha.isPresent(),
                false,
                alpha.isPresent() ? ColorModel.TRANSLUCENT : ColorModel.OPAQUE,
                type);
        WritableRaster raster = model.createCompatibleWritableRaster(width, height);
        int top = (1 << bits) - 1;
        int[] row = new int[width];
        for (int band = 0; band < planes.size(); band++) {
            Plane plane = planes.get(band);
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    row[x] = sample(plane.at(x, y), top);
                }
                raster.setSamples(0, y, width, 1, band, row);
            }
        }
        return new BufferedImage(model, raster, false, null);
    }

    static int sample(float value, int top) {
        if (!(value > 0)) {
            return 0;
        }
        return (int) Math.round(Math.min(value, 1.0) * top);
    }
}
