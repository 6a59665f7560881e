package org.epochrome.io.fits;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
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
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.OutputRefused;

/**
 * Writes linear images as FITS, with tables if wanted, with checksums (FITS Standard 4.0, sections 4.4.2.7 and appendix
 * J). The same content gives the same bytes.
 */
public final class FitsWriter {
    private static final int HISTORY_CHARS = 72;
    /** What the encoding of a checksum starts from. */
    private static final String NO_CHECKSUM = "0000000000000000";
    /** Keywords that the data themselves decide. */
    private static final Set<String> RESERVED = Set.of(
            "SIMPLE",
            "XTENSION",
            "BITPIX",
            "NAXIS",
            "NAXIS1",
            "NAXIS2",
            "NAXIS3",
            "PCOUNT",
            "GCOUNT",
            "EXTEND",
            "EXTNAME",
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
        write(file, List.of(new FitsImage("", planes, cards, history)), overwrite);
    }

    /**
     * Writes images and tables.
     *
     * @param units at least one; the first must be an image
     * @throws OutputRefused if the file exists and may not be replaced, or cannot be written
     */
    public static void write(Path file, List<? extends FitsUnit> units, boolean overwrite) {
        AtomicFile.write(file, overwrite, part -> {
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part), 1 << 16)) {
                for (int i = 0; i < units.size(); i++) {
                    write(units.get(i), i == 0, units.size() > 1, out);
                }
            }
        });
    }

    private static void write(FitsUnit unit, boolean first, boolean extended, OutputStream out) throws IOException {
        Sum sum = new Sum();
        unit.writeData(sum);
        out.write(header(unit, first, extended, sum.value()).getBytes(StandardCharsets.US_ASCII));
        unit.writeData(out);
        out.write(new byte[(int) (FitsHdu.padded(sum.count) - sum.count)]);
    }

    /** The ones' complement sum of all bytes, four at a time. */
    private static final class Sum extends OutputStream {
        private long sum;
        private long count;

        @Override
        public void write(int b) {
            sum += (long) (b & 0xff) << (24 - 8 * (int) (count & 3));
            sum = (sum & 0xffffffffL) + (sum >>> 32);
            count++;
        }

        @Override
        public void write(byte[] bytes, int from, int length) {
            for (int i = from; i < from + length; i++) {
                write(bytes[i]);
            }
        }

        long value() {
            return sum;
        }
    }

    private static String header(FitsUnit unit, boolean first, boolean extended, long dataSum) {
        String before = text(lines(unit, first, extended, dataSum, NO_CHECKSUM));
        long headerSum = FitsCheckSum.checksum(before.getBytes(StandardCharsets.US_ASCII));
        String checksum = FitsCheckSum.encode(FitsCheckSum.sumOf(headerSum, dataSum));
        return text(lines(unit, first, extended, dataSum, checksum));
    }

    private static List<String> lines(FitsUnit unit, boolean first, boolean extended, long dataSum, String checksum) {
        List<FitsCard> all = new ArrayList<>(unit.structure(first));
        if (first && extended) {
            all.add(new FitsCard("EXTEND", true, "extensions follow"));
        }
        if (!unit.name().isEmpty()) {
            all.add(new FitsCard("EXTNAME", unit.name(), ""));
        }
        for (FitsCard card : unit.cards()) {
            if (RESERVED.contains(card.keyword())) {
                throw new IllegalArgumentException(card.keyword() + " is written by the image itself.");
            }
            all.add(card);
        }
        all.add(new FitsCard("DATASUM", Long.toString(dataSum), "checksum of the data"));
        all.add(new FitsCard("CHECKSUM", checksum, "checksum of the whole HDU"));
        List<String> lines = new ArrayList<>();
        all.forEach(card -> lines.add(line(card)));
        for (String entry : unit.history()) {
            String plain = ascii(entry);
            for (int at = 0; at < Math.max(1, plain.length()); at += HISTORY_CHARS) {
                lines.add("HISTORY " + plain.substring(at, Math.min(plain.length(), at + HISTORY_CHARS)));
            }
        }
        lines.add("END");
        return lines;
    }

    public static String line(FitsCard card) {
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

    public static String text(List<String> lines) {
        StringBuilder text = new StringBuilder();
        lines.forEach(line -> text.append(String.format("%-80s", line)));
        return String.format("%-" + FitsHdu.padded(text.length()) + "s", text);
    }

    /** Without accents, and question marks for what is then not ASCII. */
    public static String ascii(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^\\x20-\\x7e]", "?");
    }
}
