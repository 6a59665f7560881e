package org.epochrome.io.raster;

import com.twelvemonkeys.imageio.metadata.Directory;
import com.twelvemonkeys.imageio.metadata.Entry;
import com.twelvemonkeys.imageio.metadata.tiff.TIFF;
import java.io.IOException;
import java.lang.reflect.Array;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.ImageLimits;
import org.epochrome.text.Message;

/**
 * How the pixels of a TIFF page are stored (TIFF 6.0, with the supplements on predictors). Only made for pages that can
 * be read without loss and whose data lie within the file.
 */
record TiffLayout(
        int width,
        int height,
        int samplesPerPixel,
        int bitsPerSample,
        boolean floats,
        boolean whiteIsZero,
        boolean rgb,
        TiffOrientation orientation) {
    private static final int SAMPLE_UNSIGNED = 1;
    private static final int SAMPLE_FLOAT = 3;
    private static final int UNCOMPRESSED = 1;
    /** A code of LZW has 9 to 12 bits and stands for fewer than 4096 bytes (TIFF 6.0, section 13). */
    private static final long MOST_GAIN = 4096;

    private static final Map<Long, String> COMPRESSIONS =
            Map.of(1L, "none", 5L, "LZW", 8L, "Deflate", 32946L, "Deflate", 32773L, "PackBits");

    static TiffLayout of(Path file, Directory page, long fileBytes) {
        Fields fields = new Fields(file, page);
        fields.checkComplete();
        long width = fields.required(TIFF.TAG_IMAGE_WIDTH, Message.of("tiff.width"));
        long height = fields.required(TIFF.TAG_IMAGE_HEIGHT, Message.of("tiff.height"));
        long photometric = fields.required(TIFF.TAG_PHOTOMETRIC_INTERPRETATION, Message.of("tiff.photometric"));
        if (photometric > 2) {
            throw new FrameRefused(file, refusal(photometric));
        }
        boolean rgb = photometric == 2;
        long samples = fields.one(TIFF.TAG_SAMPLES_PER_PIXEL, 1);
        if (samples < (rgb ? 3 : 1) || samples > (rgb ? 4 : 2)) {
            throw new FrameRefused(file, Message.of("tiff.samples", samples));
        }
        long bits = fields.uniform(TIFF.TAG_BITS_PER_SAMPLE, 1);
        long kind = fields.uniform(TIFF.TAG_SAMPLE_FORMAT, SAMPLE_UNSIGNED);
        boolean floats = kind == SAMPLE_FLOAT && bits == 32;
        boolean integers = kind == SAMPLE_UNSIGNED && (bits == 8 || bits == 16);
        if (!floats && !integers) {
            throw new FrameRefused(
                    file,
                    Message.of(
                            "tiff.bits",
                            bits,
                            Message.of(
                                    kind == SAMPLE_FLOAT ? "tiff.float" : kind == 2 ? "tiff.signed" : "tiff.integer")));
        }
        if (floats && photometric == 0) {
            throw new FrameRefused(file, Message.of("tiff.whiteIsZero"));
        }
        long orientation = fields.one(TIFF.TAG_ORIENTATION, 1);
        if (orientation < 1 || orientation > 8) {
            throw new FrameRefused(file, Message.of("tiff.orientation", orientation));
        }
        ImageLimits.check(file, width, height, samples * (bits / 8) * 2 + 4L * (rgb ? 3 : 1));
        TiffLayout layout = new TiffLayout(
                (int) width,
                (int) height,
                (int) samples,
                (int) bits,
                floats,
                photometric == 0,
                rgb,
                new TiffOrientation((int) orientation));
        layout.checkPacking(fields);
        layout.checkData(fields, fileBytes);
        return layout;
    }

    int planes() {
        return rgb ? 3 : 1;
    }

    String depth() {
        return bitsPerSample + (floats ? "-bit float" : "-bit integer");
    }

    /** The largest value that the samples can hold; NaN for floats. */
    double fullScale() {
        return floats ? Double.NaN : Math.scalb(1.0, bitsPerSample) - 1;
    }

    private static Message refusal(long photometric) {
        if (photometric == 3) {
            return Message.of("tiff.palette");
        }
        if (photometric == 5 || photometric == 6) {
            return Message.of("tiff.colours", photometric == 5 ? "CMYK" : "YCbCr");
        }
        return Message.of("tiff.otherColours");
    }

    private void checkPacking(Fields fields) {
        long compression = fields.one(TIFF.TAG_COMPRESSION, UNCOMPRESSED);
        if (!COMPRESSIONS.containsKey(compression)) {
            throw new FrameRefused(fields.file, Message.of("tiff.compression", compression));
        }
        long predictor = fields.one(TIFF.TAG_PREDICTOR, 1);
        if (predictor != 1 && predictor != (floats ? 3 : 2)) {
            throw new FrameRefused(fields.file, Message.of("tiff.predictor", predictor));
        }
    }

    /** Every strip or tile must be there and lie within the file, or the decoder fills in what is missing. */
    private void checkData(Fields fields, long fileBytes) {
        boolean tiled = fields.has(TIFF.TAG_TILE_OFFSETS);
        long across = tiled ? fields.required(TIFF.TAG_TILE_WIDTH, Message.of("tiff.tileWidth")) : width;
        long rows = tiled
                ? fields.required(TIFF.TAG_TILE_HEIGTH, Message.of("tiff.tileHeight"))
                : Math.min(height, fields.one(TIFF.TAG_ROWS_PER_STRIP, height));
        if (across <= 0 || rows <= 0 || across > 2L * ImageLimits.LARGEST_SIDE_PX) {
            throw new FrameRefused(fields.file, Message.of("tiff.tileSize"));
        }
        boolean separate = fields.one(TIFF.TAG_PLANAR_CONFIGURATION, 1) == 2;
        long parts = ((width + across - 1) / across) * ((height + rows - 1) / rows) * (separate ? samplesPerPixel : 1);
        long[] offsets = fields.all(tiled ? TIFF.TAG_TILE_OFFSETS : TIFF.TAG_STRIP_OFFSETS);
        long[] counts = fields.all(tiled ? TIFF.TAG_TILE_BYTE_COUNTS : TIFF.TAG_STRIP_BYTE_COUNTS);
        if (offsets.length != parts || counts.length != parts) {
            throw new FrameRefused(fields.file, Message.of("tiff.partsNotListed"));
        }
        for (int i = 0; i < parts; i++) {
            if (offsets[i] < 8 || counts[i] <= 0 || offsets[i] > fileBytes - counts[i]) {
                throw new FrameRefused(fields.file, Message.of("tiff.partsMissing"));
            }
        }
        long samples = (long) width * height * samplesPerPixel;
        ImageLimits.checkPacked(fields.file, Arrays.stream(counts).sum(), samples * (bitsPerSample / 8), MOST_GAIN);
        if (fields.one(TIFF.TAG_COMPRESSION, UNCOMPRESSED) == UNCOMPRESSED) {
            long samplesInPart = (separate ? 1 : samplesPerPixel) * across;
            for (int i = 0; i < parts; i++) {
                long strip = i % ((height + rows - 1) / rows);
                long rowsHere = tiled ? rows : Math.min(rows, height - strip * rows);
                if (counts[i] < samplesInPart * rowsHere * (bitsPerSample / 8)) {
                    throw new FrameRefused(fields.file, Message.of("tiff.partsShort"));
                }
            }
        }
    }

    /** The fields of a page as numbers. */
    private record Fields(Path file, Directory page) {
        /** The library puts an exception in the place of a value that lies beyond the end of the file. */
        void checkComplete() {
            for (Entry entry : page) {
                if (entry.getValue() instanceof IOException) {
                    throw new FrameRefused(file, Message.of("tiff.header"));
                }
            }
        }

        boolean has(int tag) {
            return page.getEntryById(tag) != null;
        }

        long[] all(int tag) {
            Entry entry = page.getEntryById(tag);
            Object value = entry == null ? null : entry.getValue();
            if (value instanceof Number number) {
                return new long[] {number.longValue()};
            }
            if (value == null || !value.getClass().isArray() || value instanceof Object[]) {
                return new long[0];
            }
            long[] all = new long[Array.getLength(value)];
            for (int i = 0; i < all.length; i++) {
                all[i] = ((Number) Array.get(value, i)).longValue();
            }
            return all;
        }

        long required(int tag, Message what) {
            long[] all = all(tag);
            if (all.length != 1) {
                throw new FrameRefused(file, Message.of("tiff.lacks", what));
            }
            return all[0];
        }

        long one(int tag, long otherwise) {
            return has(tag) ? required(tag, Message.of("tiff.field", tag)) : otherwise;
        }

        /** A field with one value for each sample, which must all agree. */
        long uniform(int tag, long otherwise) {
            long[] all = all(tag);
            if (all.length == 0) {
                return otherwise;
            }
            if (Arrays.stream(all).distinct().count() > 1) {
                throw new FrameRefused(file, Message.of("tiff.kinds", Arrays.toString(all)));
            }
            return all[0];
        }
    }
}
