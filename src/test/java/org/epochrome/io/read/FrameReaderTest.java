package org.epochrome.io.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.GZIPOutputStream;
import org.epochrome.image.Plane;
import org.epochrome.io.Sentences;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.head.FrameFormat;
import org.epochrome.io.head.FrameHead;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Pixels of files written by other programs, compared one by one; see truth/files/README.md. */
class FrameReaderTest {
    private static final Path FILES = Path.of("src/test/resources/truth/files");

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvFileSource(resources = "/truth/files/rows.csv", numLinesToSkip = 1)
    void readsEveryPixelExactly(
            String name,
            FrameFormat format,
            String depth,
            int width,
            int height,
            int planes,
            double fullScale,
            String pattern,
            int holes) {
        FrameFile frame = FrameReader.read(FILES.resolve(name));

        assertEquals(format, frame.head().format());
        assertEquals(depth, frame.head().depth());
        assertEquals(fullScale, frame.head().fullScale());
        assertEquals(planes, frame.planes().size());
        int compared = 0;
        for (int p = 0; p < planes; p++) {
            Plane plane = frame.planes().get(p);
            assertEquals(width, plane.width());
            assertEquals(height, plane.height());
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    float expected = holes == 1 && (x + y) % 11 == 0 ? Float.NaN : value(pattern, x, y, p);
                    assertEquals(expected, plane.at(x, y), name + " plane " + p + " at " + x + "," + y);
                    compared++;
                }
            }
        }
        assertEquals(23 * 17 * planes, compared);
    }

    @Test
    void everyFixtureIsListed() throws IOException {
        List<String> listed = Files.readAllLines(FILES.resolve("rows.csv")).stream()
                .skip(1)
                .map(line -> line.substring(0, line.indexOf(',')))
                .sorted()
                .toList();
        try (Stream<Path> there = Files.list(FILES)) {
            List<String> images = there.filter(Files::isRegularFile)
                    .map(f -> f.getFileName().toString())
                    .filter(n -> !List.of("README.md", "make.py", "rows.csv").contains(n))
                    .sorted()
                    .toList();
            assertEquals(images, listed);
        }
        assertEquals(58, listed.size());
    }

    private static float value(String pattern, int x, int y, int plane) {
        int v = (2749 * x + 911 * y + 10007 * plane) % 65536;
        return switch (pattern) {
            case "u16" -> v;
            case "u8" -> v % 256;
            case "i16" -> v - 32768;
            case "f32" -> v / 64f - 100;
            default -> throw new IllegalArgumentException(pattern);
        };
    }

    static Stream<Path> refusedFiles() throws IOException {
        try (Stream<Path> files = Files.list(FILES.resolve("refused"))) {
            return files.sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "12-bit.tif, 12-bit",
        "signed.tif, signed",
        "double.tif, 64-bit float",
        "half.tif, 16-bit float",
        "int32.tif, 32-bit integer",
        "cmyk.tif, CMYK",
        "palette.tif, palette",
        "palette.png, palette",
        "one-bit.png, 1-bit",
        "picture.jpg, JPEG",
        "picture.gif, 'not a FITS, TIFF or PNG'",
        "five-planes.fits, cube",
        "all-nan.fits, no pixel",
        "tiny.fits, only 10x6",
        "no-image.fits, no image",
        "tiles-float.fits, save it uncompressed",
    })
    void refusesWithTheReason(String name, String reason) {
        FrameRefused refused = assertThrows(
                FrameRefused.class,
                () -> FrameReader.read(FILES.resolve("refused").resolve(name)));
        assertTrue(refused.getMessage().contains(reason), refused.getMessage());
        Sentences.assertSentence(name, refused);
    }

    @ParameterizedTest
    @MethodSource("refusedFiles")
    void refusesEveryFileOfTheFolder(Path file) {
        Sentences.assertSentence(
                file.getFileName().toString(), assertThrows(FrameRefused.class, () -> FrameReader.read(file)));
    }

    @ParameterizedTest
    @CsvSource({
        "orientation-6.tif, ''",
        "u16-two-pages.tif, It has 2 pages; the first was used.",
        "rgba16.tif, Its transparency was ignored.",
        "pillow-rgba.png, Its transparency was ignored.",
        "int32.fits, Its 32-bit integer values were converted to 32-bit floats (24 significant bits).",
        "float32-nan.fits, 36 pixels have no value.",
    })
    void notesWhatAUserShouldKnow(String name, String note) {
        FrameFile frame = FrameReader.read(FILES.resolve(name));
        assertEquals(note.isEmpty() ? List.of() : List.of(note), Message.texts(frame.notes()));
    }

    @Test
    void theHeadOfAnExtensionIncludesThePrimaryHeader() {
        FrameHead head = FrameReader.head(FILES.resolve("extension.fits"));
        assertEquals("Mars", head.header().text("OBJECT").orElseThrow());
        assertEquals("IMAGE", head.header().text("XTENSION").orElseThrow());
    }

    @Test
    void refusesWhatIsNoFile() throws IOException {
        assertRefused(folder, "is a folder");
        assertRefused(folder.resolve("absent.fits"), "does not exist");
        Path empty = Files.createFile(folder.resolve("empty.tif"));
        assertRefused(empty, "is empty");
        Path text = Files.writeString(folder.resolve("text.fits"), "no picture at all");
        assertRefused(text, "is not a FITS, TIFF or PNG image");
        Path packed = Files.write(folder.resolve("a.fits.Z"), new byte[] {0x1f, (byte) 0x9d, 0x10, 0});
        assertRefused(packed, "unpack it");
        Path device = Path.of("/dev/zero");
        if (Files.exists(device)) {
            assertRefused(device, "is not a regular file");
        }
    }

    @Test
    void refusesWhatMayNotBeRead() throws IOException {
        Path locked = Files.copy(FILES.resolve("grey8.png"), folder.resolve("locked.png"));
        Assumptions.assumeTrue(locked.toFile().setReadable(false) && !Files.isReadable(locked));
        assertRefused(locked, "cannot be read by this user");
    }

    @Test
    void theSuffixDoesNotMatter() throws IOException {
        Path renamed = Files.copy(FILES.resolve("grey16.png"), folder.resolve("really-png.fits"));
        assertEquals(FrameFormat.PNG, FrameReader.head(renamed).format());
    }

    @ParameterizedTest
    @CsvSource({
        "100000, 100000, 1, has 100000x100000 pixels according to its header",
        "16384, 16384, 1, is cut short",
        "16384, 16384, 3, MB of memory",
        "16384, 16385, 1, has 16384x16385 pixels according to its header",
        "15, 16384, 1, only 15x16384",
        "0, 50, 1, no image",
        "-5, 50, 1, impossible size",
    })
    void checksTheSizeThatFitsPromises(int width, int height, int planes, String reason) throws IOException {
        String header = card("SIMPLE  =                    T")
                + card("BITPIX  =                  -64")
                + card("NAXIS   =                    3")
                + card(String.format("NAXIS1  = %20d", width))
                + card(String.format("NAXIS2  = %20d", height))
                + card(String.format("NAXIS3  = %20d", planes))
                + card("END");
        Path file = folder.resolve("huge.fits");
        Files.write(file, String.format("%-2880s", header).getBytes(StandardCharsets.US_ASCII));
        assertRefused(file, reason);
    }

    @Test
    void checksTheSizeThatTiffPromises() throws IOException {
        ByteBuffer bytes =
                ByteBuffer.wrap(Files.readAllBytes(FILES.resolve("u16-ii.tif"))).order(ByteOrder.LITTLE_ENDIAN);
        int directory = bytes.getInt(4);
        for (int i = 0; i < 2; i++) {
            int entry = directory + 2 + 12 * i;
            while (bytes.getShort(entry) != 256 + i) {
                entry += 12;
            }
            bytes.putShort(entry + 2, (short) 4).putInt(entry + 8, 100_000);
        }
        Path file = Files.write(folder.resolve("huge.tif"), bytes.array());
        assertRefused(file, "has 100000x100000 pixels according to its header");
    }

    @Test
    void checksTheSizeThatPngPromises() throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(FILES.resolve("grey8.png")));
        bytes.putInt(16, 100_000).putInt(20, 100_000);
        CRC32 sum = new CRC32();
        sum.update(bytes.array(), 12, 17);
        bytes.putInt(29, (int) sum.getValue());
        Path file = Files.write(folder.resolve("huge.png"), bytes.array());
        assertRefused(file, "has 100000x100000 pixels according to its header");
    }

    @Test
    void refusesOtherThingsPackedByGzip() throws IOException {
        Path file = folder.resolve("packed.tif.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write(new byte[10_000]);
        }
        assertRefused(file, "contains no FITS image");
    }

    @Test
    void toleratesAccentsAndOddCardsInAHeader() throws IOException {
        byte[] bytes = Files.readAllBytes(FILES.resolve("uint16.fits"));
        String header = new String(bytes, 0, 2880, StandardCharsets.ISO_8859_1);
        int end = header.indexOf("END     ");
        String odd = header.substring(0, end)
                + card("OBSERVER= 'Zo\u00eb     '")
                + card("OBJECT  = 'no closing quote")
                + card("exptime = 3 .. 5")
                + card("FILTER  = 'R'")
                + card("END");
        byte[] replaced = String.format("%-2880s", odd).getBytes(StandardCharsets.ISO_8859_1);
        System.arraycopy(replaced, 0, bytes, 0, 2880);
        Path file = Files.write(folder.resolve("odd.fits"), bytes);

        FrameFile frame = FrameReader.read(file);

        assertEquals("R", frame.head().header().text("FILTER").orElseThrow());
        assertEquals("Zo?", frame.head().header().text("OBSERVER").orElseThrow());
        assertEquals(value("u16", 3, 5, 0), frame.planes().get(0).at(3, 5));
    }

    private static String card(String text) {
        return String.format("%-80s", text);
    }

    private static void assertRefused(Path file, String reason) {
        FrameRefused refused = assertThrows(FrameRefused.class, () -> FrameReader.read(file));
        assertTrue(refused.getMessage().contains(reason), refused.getMessage());
        Sentences.assertSentence(file.getFileName().toString(), refused);
    }
}
