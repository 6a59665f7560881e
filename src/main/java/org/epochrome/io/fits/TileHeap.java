package org.epochrome.io.fits;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;

/**
 * Where the compressed tiles of an image lie: behind the rows of its table, in a heap that the rows point into (FITS Standard
 * 4.0, sections 7.3.5 and 10.1). The library allocates whatever length a row gives.
 */
final class TileHeap {
    private static final Pattern FORM = Pattern.compile("(\\d{0,9})([LXBIJKAEDCMPQ])(?:([LXBIJKAEDCM])\\(\\d*\\))?.*");
    private static final int MOST_COLUMNS = 999;

    private TileHeap() {}

    /**
     * Refuses a table whose rows point beyond its heap.
     *
     * @param data the table with its heap
     * @throws FrameRefused also if the columns cannot be understood
     */
    static void check(Path file, FitsHdu hdu, byte[] data) {
        long rowBytes = hdu.integer(file, "NAXIS1");
        long rows = hdu.integer(file, "NAXIS2");
        long heapBytes = data.length - rowBytes * rows;
        int at = 0;
        for (int i = 1; i <= Math.min(MOST_COLUMNS, hdu.integer(file, "TFIELDS")); i++) {
            Matcher form = FORM.matcher(hdu.own().text("TFORM" + i).orElse(""));
            if (!form.matches()) {
                throw damaged(file);
            }
            long count = form.group(1).isEmpty() ? 1 : Long.parseLong(form.group(1));
            char kind = form.group(2).charAt(0);
            long bytes = kind == 'X' ? (count + 7) / 8 : count * bytes(kind);
            if (at + bytes > rowBytes) {
                throw damaged(file);
            }
            if ((kind == 'P' || kind == 'Q') && count > 0) {
                long elementBytes =
                        form.group(3) == null ? 1 : bytes(form.group(3).charAt(0));
                for (int row = 0; row < rows; row++) {
                    ByteBuffer pointer = ByteBuffer.wrap(data, (int) (row * rowBytes + at), (int) bytes);
                    long elements = kind == 'P' ? pointer.getInt() : pointer.getLong();
                    long offset = kind == 'P' ? pointer.getInt() : pointer.getLong();
                    if (offset < 0
                            || elements < 0
                            || offset > heapBytes
                            || elements > (heapBytes - offset) / elementBytes) {
                        throw damaged(file);
                    }
                }
            }
            at += (int) bytes;
        }
    }

    private static FrameRefused damaged(Path file) {
        return new FrameRefused(file, Message.of("fits.tilesDamaged"));
    }

    private static int bytes(char kind) {
        return switch (kind) {
            case 'I' -> 2;
            case 'J', 'E' -> 4;
            case 'K', 'D', 'C', 'P' -> 8;
            case 'M', 'Q' -> 16;
            default -> 1;
        };
    }
}
