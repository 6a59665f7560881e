package org.epochrome.io;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import nom.tam.fits.HeaderCard;
import nom.tam.fits.HeaderCardException;
import nom.tam.fits.utilities.FitsCheckSum;
import org.epochrome.image.Plane;

/**
 * Writes linear images as FITS: 32-bit floats, one plane or a cube of three, rows from the bottom up as the standard has
 * it, NaN for no data, with checksums (FITS Standard 4.0, sections 4.4.2.7 and appendix J). The same image and cards
 * give the same bytes.
 */
public final class FitsWriter {
    private static final int FLOAT_BYTES = 4;
    private static final int HISTORY_CHARS = 72;
    /** What the encoding of a checksum starts from. */
    private static final String NO_CHECKSUM = "0000000000000000";
    /** Keywords that the image itself decides. */
    private static final Set<String> RESERVED = Set.of(
            "SIMPLE",
            "BITPIX",
            "NAXIS",
            "NAXIS1",
            "NAXIS2",
            "NAXIS3",
            "EXTEND",
            "ROWORDER",
            "DATASUM",
            "CHECKSUM",
            "END",
            "BZERO",
            "BSCALE",
            "BLANK",
            "HISTORY",
            "COMMENT",
            "CONTINUE");

    private FitsWriter() {}

    /**
     * Writes an image.
     *
     * @param planes one or three, of the same size
     * @param cards further keywords, in this order; text outside ASCII is written without its accents
     * @param history what was done to the image, a line each; long ones are continued
     * @throws OutputRefused if the file exists and may not be replaced, or cannot be written
     */
    public static void write(
            Path file, List<Plane> planes, List<FitsCard> cards, List<String> history, boolean overwrite) {
        if (planes.size() != 1 && planes.size() != 3) {
            throw new IllegalArgumentException("An image has one or three planes, not " + planes.size() + ".");
        }
        if (!planes.stream().allMatch(p -> p.sameSize(planes.get(0)))) {
            throw new IllegalArgumentException("The planes of an image must have the same size.");
        }
        long sum = dataSum(planes);
        String header = header(planes, cards, history, sum);
        AtomicFile.write(file, overwrite, part -> {
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part), 1 << 16)) {
                out.write(header.getBytes(StandardCharsets.US_ASCII));
                writeData(planes, out);
            }
        });
    }

    private static void writeData(List<Plane> planes, OutputStream out) throws IOException {
        long written = 0;
        for (Plane plane : planes) {
            for (int y = plane.height() - 1; y >= 0; y--) {
                byte[] row = row(plane, y);
                out.write(row);
                written += row.length;
            }
        }
        out.write(new byte[(int) (FitsHdu.padded(written) - written)]);
    }

    private static byte[] row(Plane plane, int y) {
        ByteBuffer bytes = ByteBuffer.allocate(plane.width() * FLOAT_BYTES);
        for (int x = 0; x < plane.width(); x++) {
            bytes.putFloat(plane.at(x, y));
        }
        return bytes.array();
    }

    private static long dataSum(List<Plane> planes) {
        long sum = 0;
        for (Plane plane : planes) {
            for (int y = plane.height() - 1; y >= 0; y--) {
                sum = FitsCheckSum.sumOf(sum, FitsCheckSum.checksum(row(plane, y)));
            }
        }
        return sum;
    }

    private static String header(List<Plane> planes, List<FitsCard> cards, List<String> history, long dataSum) {
        String before = text(lines(planes, cards, history, dataSum, NO_CHECKSUM));
        long headerSum = FitsCheckSum.checksum(before.getBytes(StandardCharsets.US_ASCII));
        String checksum = FitsCheckSum.encode(FitsCheckSum.sumOf(headerSum, dataSum));
        return text(lines(planes, cards, history, dataSum, checksum));
    }

    private static List<String> lines(
            List<Plane> planes, List<FitsCard> cards, List<String> history, long dataSum, String checksum) {
        List<FitsCard> all = new ArrayList<>();
        all.add(new FitsCard("SIMPLE", true, "conforms to FITS standard"));
        all.add(new FitsCard("BITPIX", -8 * FLOAT_BYTES, "32-bit floating point"));
        all.add(new FitsCard("NAXIS", planes.size() == 1 ? 2 : 3, ""));
        all.add(new FitsCard("NAXIS1", planes.get(0).width(), "[pixel] width"));
        all.add(new FitsCard("NAXIS2", planes.get(0).height(), "[pixel] height"));
        if (planes.size() == 3) {
            all.add(new FitsCard("NAXIS3", 3, "red, green, blue"));
        }
        all.add(new FitsCard("ROWORDER", "BOTTOM-UP", "the first row is the bottom one"));
        for (FitsCard card : cards) {
            if (RESERVED.contains(card.keyword())) {
                throw new IllegalArgumentException(card.keyword() + " is written by the image itself.");
            }
            all.add(card);
        }
        all.add(new FitsCard("DATASUM", Long.toString(dataSum), "sum of the data"));
        all.add(new FitsCard("CHECKSUM", checksum, "makes the sum of all vanish"));
        List<String> lines = new ArrayList<>();
        all.forEach(card -> lines.add(line(card)));
        for (String entry : history) {
            String plain = ascii(entry);
            for (int at = 0; at < Math.max(1, plain.length()); at += HISTORY_CHARS) {
                lines.add("HISTORY " + plain.substring(at, Math.min(plain.length(), at + HISTORY_CHARS)));
            }
        }
        lines.add("END");
        return lines;
    }

    static String line(FitsCard card) {
        String comment = ascii(card.comment());
        try {
            if (card.value() instanceof String text) {
                return new HeaderCard(card.keyword(), ascii(text), comment).toString();
            }
            if (card.value() instanceof Boolean flag) {
                return new HeaderCard(card.keyword(), flag, comment).toString();
            }
            return new HeaderCard(card.keyword(), (Number) card.value(), comment).toString();
        } catch (HeaderCardException e) {
            throw new IllegalArgumentException(card.keyword() + " does not fit a FITS card: " + card.value(), e);
        }
    }

    static String text(List<String> lines) {
        StringBuilder text = new StringBuilder();
        lines.forEach(line -> text.append(String.format("%-80s", line)));
        return String.format("%-" + FitsHdu.padded(text.length()) + "s", text);
    }

    private static String ascii(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^\\x20-\\x7e]", "?");
    }
}
