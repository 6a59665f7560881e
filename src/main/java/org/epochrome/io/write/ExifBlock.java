package org.epochrome.io.write;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.epochrome.io.fits.FitsWriter;

/**
 * The body of a JPEG's Exif segment (CIPA DC-008-2019, section 4): description, software, the time shown as
 * DateTimeOriginal in UTC, and that the picture is sRGB.
 */
final class ExifBlock {
    /** How TIFF and Exif write a time. */
    static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int UNDEFINED = 7;
    private static final int ENTRY_BYTES = 12;
    private static final int FIRST_DIRECTORY = 8;
    private static final int EXIF_POINTER = 34665;

    private ExifBlock() {}

    /** A field of a directory: its tag, its type, how many values it has, and these in bytes. */
    private static final class Entry {
        private final int tag;
        private final int type;
        private final int count;
        private final byte[] value;

        Entry(int tag, int type, int count, byte[] value) {
            this.tag = tag;
            this.type = type;
            this.count = count;
            this.value = value;
        }

        static Entry text(int tag, String text) {
            byte[] bytes = (FitsWriter.ascii(text) + "\0").getBytes(StandardCharsets.US_ASCII);
            return new Entry(tag, ASCII, bytes.length, bytes);
        }

        /** Bytes that the value takes after the directory: none if it fits into its entry; an even number. */
        int outside() {
            return value.length <= 4 ? 0 : (value.length + 1) / 2 * 2;
        }
    }

    /** The segment's content, from "Exif" on. */
    static byte[] of(PictureWriter.Caption caption) {
        List<Entry> image = new ArrayList<>();
        image.add(Entry.text(270, caption.description()));
        image.add(Entry.text(305, caption.software()));
        List<Entry> exif = new ArrayList<>();
        exif.add(new Entry(36864, UNDEFINED, 4, "0232".getBytes(StandardCharsets.US_ASCII)));
        caption.shown().ifPresent(instant -> {
            image.add(Entry.text(306, TIME.format(instant)));
            exif.add(Entry.text(36867, TIME.format(instant)));
            exif.add(Entry.text(36880, "+00:00"));
            exif.add(Entry.text(36881, "+00:00"));
        });
        exif.add(new Entry(40961, SHORT, 1, new byte[] {0, 1}));

        // The pointer itself does not change how long the directory is.
        int second = FIRST_DIRECTORY + bytes(with(image, 0));
        List<Entry> first = with(image, second);
        ByteBuffer block = ByteBuffer.allocate(6 + second + bytes(exif));
        block.put("Exif\0\0MM\0*".getBytes(StandardCharsets.US_ASCII)).putInt(FIRST_DIRECTORY);
        put(first, FIRST_DIRECTORY, block);
        put(exif, second, block);
        return block.array();
    }

    private static List<Entry> with(List<Entry> image, int pointer) {
        List<Entry> all = new ArrayList<>(image);
        all.add(new Entry(
                EXIF_POINTER, LONG, 1, ByteBuffer.allocate(4).putInt(pointer).array()));
        return all;
    }

    private static int bytes(List<Entry> entries) {
        return directoryBytes(entries)
                + entries.stream().mapToInt(Entry::outside).sum();
    }

    private static int directoryBytes(List<Entry> entries) {
        return 2 + ENTRY_BYTES * entries.size() + 4;
    }

    private static void put(List<Entry> entries, int at, ByteBuffer block) {
        block.putShort((short) entries.size());
        int next = at + directoryBytes(entries);
        for (Entry entry : entries) {
            block.putShort((short) entry.tag).putShort((short) entry.type).putInt(entry.count);
            if (entry.value.length <= 4) {
                block.put(entry.value).put(new byte[4 - entry.value.length]);
            } else {
                block.putInt(next);
                next += entry.outside();
            }
        }
        block.putInt(0);
        for (Entry entry : entries) {
            if (entry.value.length > 4) {
                block.put(entry.value).put(new byte[entry.outside() - entry.value.length]);
            }
        }
    }
}
