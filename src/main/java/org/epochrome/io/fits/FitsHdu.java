package org.epochrome.io.fits;

import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import nom.tam.fits.HeaderCard;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.text.Message;

/**
 * The header of the first image in a FITS file and where its data begin. Walks the blocks itself and leaves single cards
 * to the library, so that one odd card (accents in a name, a missing quote) does not cost the whole file, and so that
 * sizes can be checked before anything is allocated.
 *
 * @param own the keywords of this header
 * @param keywords these, and those of the primary header which it does not have
 * @param cards the header as stored, with bytes outside ASCII replaced
 * @param dataOffset bytes before the data
 */
public record FitsHdu(FitsKeywords own, FitsKeywords keywords, String cards, long dataOffset) {
    static final int BLOCK_BYTES = 2880;
    private static final int CARD_BYTES = 80;
    private static final int MOST_HEADER_BLOCKS = 1000;
    private static final int MOST_UNITS = 1000;

    /**
     * Finds the first image and leaves the stream at the beginning of its data.
     *
     * @throws EOFException if the file ends before
     */
    static FitsHdu ofFirstImage(Path file, InputStream in) throws IOException {
        FitsKeywords primary = FitsKeywords.NONE;
        long offset = 0;
        for (int unit = 0; unit < MOST_UNITS; unit++) {
            String cards = readCards(file, in, offset == 0);
            FitsKeywords own = new FitsKeywords(parse(cards));
            offset += cards.length();
            FitsHdu hdu = new FitsHdu(own, own.over(primary), cards, offset);
            if (hdu.isCompressed() || hdu.holdsImage()) {
                return hdu;
            }
            if (unit == 0) {
                primary = own;
            }
            long data = padded(hdu.dataBytes(file));
            in.skipNBytes(data);
            offset += data;
        }
        throw new FrameRefused(file, Message.of("fits.noImage"));
    }

    /** Whether this is an image in compressed tiles, stored as a table. */
    boolean isCompressed() {
        return own.text("ZIMAGE").filter("T"::equals).isPresent();
    }

    private boolean holdsImage() {
        boolean table = own.text("XTENSION").filter(x -> !x.equals("IMAGE")).isPresent();
        int axes = own.number("NAXIS").map(BigDecimal::intValue).orElse(0);
        return !table
                && axes >= 2
                && own.number("NAXIS1").map(BigDecimal::signum).orElse(0) > 0;
    }

    /** The whole number that a mandatory keyword holds. */
    long integer(Path file, String keyword) {
        try {
            return own.number(keyword).orElseThrow().longValueExact();
        } catch (RuntimeException e) {
            throw new FrameRefused(file, Message.of("fits.keyword", keyword), e);
        }
    }

    /** Length of the data of this unit without padding (FITS Standard 4.0, section 4.4.1). */
    long dataBytes(Path file) {
        long axes = integer(file, "NAXIS");
        if (axes == 0) {
            return 0;
        }
        long elements = 1;
        for (int i = 1; i <= axes; i++) {
            elements = product(file, elements, integer(file, "NAXIS" + i));
        }
        long parameters = own.number("PCOUNT").map(BigDecimal::longValue).orElse(0L);
        long groups = own.number("GCOUNT").map(BigDecimal::longValue).orElse(1L);
        long bytesPerElement = Math.abs(integer(file, "BITPIX")) / 8;
        return product(file, product(file, elements + parameters, groups), bytesPerElement);
    }

    private static long product(Path file, long a, long b) {
        if (a < 0 || b < 0 || Math.multiplyHigh(a, b) != 0 || a * b < 0 || a * b > Long.MAX_VALUE / 4) {
            throw new FrameRefused(file, Message.of("fits.impossibleSize"));
        }
        return a * b;
    }

    public static long padded(long bytes) {
        return (bytes + BLOCK_BYTES - 1) / BLOCK_BYTES * BLOCK_BYTES;
    }

    private static String readCards(Path file, InputStream in, boolean first) throws IOException {
        ByteArrayOutputStream header = new ByteArrayOutputStream();
        for (int n = 0; n < MOST_HEADER_BLOCKS; n++) {
            byte[] block = in.readNBytes(BLOCK_BYTES);
            if (block.length == 0 && n == 0 && !first) {
                throw new FrameRefused(file, Message.of("fits.noImage"));
            }
            if (block.length < BLOCK_BYTES) {
                throw new EOFException();
            }
            if (n == 0 && first && !new String(block, 0, 9, StandardCharsets.US_ASCII).equals("SIMPLE  =")) {
                throw new FrameRefused(file, Message.of("fits.noImageInside"));
            }
            for (int i = 0; i < block.length; i++) {
                // Only printable ASCII is allowed in a header, yet names with accents occur.
                if (block[i] < 0x20 || block[i] > 0x7e) {
                    block[i] = '?';
                }
            }
            header.write(block);
            if (hasEnd(block)) {
                return header.toString(StandardCharsets.US_ASCII);
            }
        }
        throw new FrameRefused(file, Message.of("fits.noEnd"));
    }

    private static boolean hasEnd(byte[] block) {
        for (int at = 0; at < BLOCK_BYTES; at += CARD_BYTES) {
            if (new String(block, at, 8, StandardCharsets.US_ASCII).equals("END     ")) {
                return true;
            }
        }
        return false;
    }

    private static Map<String, String> parse(String cards) {
        Map<String, String> values = new LinkedHashMap<>();
        for (int at = 0; at < cards.length(); at += CARD_BYTES) {
            String line = cards.substring(at, at + CARD_BYTES);
            if (line.startsWith("END     ")) {
                break;
            }
            // Only cards with a value indicator hold values (FITS Standard 4.0, section 4.1.2.2).
            if (line.startsWith("= ", 8)) {
                try {
                    HeaderCard card = HeaderCard.create(line);
                    if (card.getValue() != null) {
                        values.putIfAbsent(card.getKey(), card.getValue());
                    }
                } catch (IllegalArgumentException ignored) {
                    // A card that cannot be understood says nothing; what is mandatory is asked for by name.
                }
            }
        }
        return values;
    }
}
