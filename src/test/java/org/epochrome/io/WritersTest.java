package org.epochrome.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageInputStream;
import nom.tam.fits.BasicHDU;
import nom.tam.fits.Fits;
import org.epochrome.image.Plane;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.head.FrameFormat;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.write.OutputFormat;
import org.epochrome.io.write.PictureWriter;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WritersTest {
    private static final int WIDTH = 37;
    private static final int HEIGHT = 19;
    private static final PictureWriter.Caption CAPTION = new PictureWriter.Caption(
            "Jupiter, an example", Optional.of(Instant.parse("2031-05-02T21:14:05Z")), "Epochrome 0");

    @TempDir
    private Path folder;

    /** Values on and between the steps of 16 bits, below 0, above 1, and none. */
    private static Plane ramp(int band) {
        Plane plane = new Plane(WIDTH, HEIGHT);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                plane.set(x, y, -0.1f + 1.2f * ((x + 5 * y + 13 * band) % 131) / 130f);
            }
        }
        plane.set(4, 3, Float.NaN);
        return plane;
    }

    private static List<Plane> colour() {
        return List.of(ramp(0), ramp(1), ramp(2));
    }

    private static int expected(float value, int top) {
        return Float.isNaN(value) ? 0 : (int) Math.round(Math.max(0.0, Math.min(1.0, value)) * top);
    }

    @ParameterizedTest
    @CsvSource({"picture.png, 3", "picture.tif, 3", "picture.TIFF, 1", "grey.png, 1"})
    void picturesKeepSixteenBitsRounded(String name, int count) {
        Path file = folder.resolve(name);
        List<Plane> planes = colour().subList(0, count);
        PictureWriter.write(file, planes, CAPTION, false);

        FrameFile read = FrameReader.read(file);

        assertEquals("16-bit integer", read.head().depth());
        assertEquals(count, read.planes().size());
        int compared = 0;
        for (int p = 0; p < count; p++) {
            for (int i = 0; i < WIDTH * HEIGHT; i++) {
                assertEquals(expected(planes.get(p).data()[i], 65535), (long)
                        read.planes().get(p).data()[i]);
                compared++;
            }
        }
        assertEquals(count * WIDTH * HEIGHT, compared);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void jpegIsCloseInEveryPixelAndItsColourIsNotSubsampled(int count) throws IOException {
        Path file = folder.resolve("picture.jpg");
        // One red pixel in ten: chroma at half resolution would be off by more than 50.
        List<Plane> planes = new ArrayList<>();
        for (int p = 0; p < count; p++) {
            Plane plane = Plane.filled(WIDTH, HEIGHT, 0.5f);
            for (int x = 0; x < WIDTH; x += 10) {
                for (int y = 0; y < HEIGHT; y++) {
                    plane.set(x, y, p == 0 ? 0.75f : 0.4f);
                }
            }
            planes.add(plane);
        }
        PictureWriter.write(file, planes, CAPTION, false);

        Raster raster = ImageIO.read(file.toFile()).getRaster();

        assertEquals(count, raster.getNumBands());
        for (int p = 0; p < count; p++) {
            for (int y = 0; y < HEIGHT; y++) {
                for (int x = 0; x < WIDTH; x++) {
                    // 12 of 255: what quantisation at quality 0.95 may cost next to an edge.
                    assertEquals(expected(planes.get(p).at(x, y), 255), raster.getSample(x, y, p), 12);
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "picture.png, iCCP sRGB",
        "grey.png, sRGB",
        "picture.png, Software",
        "picture.tif, Epochrome 0",
        "picture.png, Jupiter",
        "picture.png, 2031-05-02T21:14:05Z",
        "picture.tif, ICCProfile",
        "picture.tif, Jupiter",
        "picture.tif, 2031:05:02 21:14:05",
        "picture.jpg, app2ICC",
    })
    void picturesSayWhatTheyAre(String name, String wanted) throws IOException {
        Path file = folder.resolve(name);
        PictureWriter.write(file, colour(), CAPTION, false);
        try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
            ImageReader reader = ImageIO.getImageReaders(in).next();
            reader.setInput(in);
            IIOMetadata metadata = reader.getImageMetadata(0);
            String tree = flat((IIOMetadataNode) metadata.getAsTree(metadata.getNativeMetadataFormatName()));
            assertTrue(tree.contains(wanted), tree);
            reader.dispose();
        }
    }

    private static String flat(IIOMetadataNode node) {
        StringBuilder text = new StringBuilder(node.getNodeName());
        for (int i = 0; i < node.getAttributes().getLength(); i++) {
            text.append(' ').append(node.getAttributes().item(i).getNodeValue());
        }
        for (int i = 0; i < node.getChildNodes().getLength(); i++) {
            text.append(' ').append(flat((IIOMetadataNode) node.getChildNodes().item(i)));
        }
        return text.toString();
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.png", "a.tif", "a.jpg", "a.fits"})
    void theSameImageGivesTheSameBytes(String name) throws IOException {
        byte[] first = write(name);
        byte[] second = write("again-" + name);
        assertTrue(first.length > 500);
        assertArrayEquals(first, second);
    }

    private byte[] write(String name) throws IOException {
        Path file = folder.resolve(name);
        if (OutputFormat.of(file) == OutputFormat.FITS) {
            FitsWriter.write(file, colour(), List.of(new FitsCard("OBJECT", "Jupiter", "")), List.of("made"), false);
        } else {
            PictureWriter.write(file, colour(), CAPTION, false);
        }
        return Files.readAllBytes(file);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void fitsComesBackExactly(int count) throws Exception {
        Path file = folder.resolve("linear.fits");
        List<Plane> planes = colour().subList(0, count);
        List<FitsCard> cards = List.of(
                new FitsCard("OBJECT", "Jupiter", "body"),
                new FitsCard("NORTHANG", -12.25, "[deg] angle to north"),
                new FitsCard("MIRRORED", false, ""),
                new FitsCard("FRAMES", 3, "num\u00e9ro"));
        FitsWriter.write(file, planes, cards, List.of("x".repeat(100), "turned by Zo\u00eb"), false);

        FrameFile read = FrameReader.read(file);
        assertEquals("32-bit float", read.head().depth());
        for (int p = 0; p < count; p++) {
            assertArrayEquals(planes.get(p).data(), read.planes().get(p).data());
        }
        assertEquals("Jupiter", read.head().header().text("OBJECT").orElseThrow());
        assertEquals(
                -12.25, read.head().header().number("NORTHANG").orElseThrow().doubleValue());
        assertEquals("F", read.head().header().text("MIRRORED").orElseThrow());

        byte[] bytes = Files.readAllBytes(file);
        assertEquals(0, bytes.length % 2880);
        try (Fits fits = new Fits(new ByteArrayInputStream(bytes))) {
            BasicHDU<?> hdu = fits.readHDU();
            hdu.verifyDataIntegrity();
            hdu.verifyIntegrity();
            assertEquals("BOTTOM-UP", hdu.getHeader().getStringValue("ROWORDER"));
        }
        assertEquals(0xffffffffL, onesComplementSum(bytes));
        readByHand(bytes, planes);
    }

    /** Checksum of a whole HDU after FITS Standard 4.0, section 4.4.2.7, with nothing but arithmetic. */
    private static long onesComplementSum(byte[] bytes) {
        long sum = 0;
        ByteBuffer words = ByteBuffer.wrap(bytes);
        while (words.hasRemaining()) {
            sum += words.getInt() & 0xffffffffL;
            sum = (sum & 0xffffffffL) + (sum >>> 32);
        }
        return sum;
    }

    /** A reader that knows only the standard: 80-column cards, big-endian floats, first row at the bottom. */
    private static void readByHand(byte[] bytes, List<Plane> planes) {
        List<String> cards = new ArrayList<>();
        int at = 0;
        while (true) {
            String card = new String(bytes, at, 80, StandardCharsets.US_ASCII);
            at += 80;
            cards.add(card.stripTrailing());
            if (card.equals(String.format("%-80s", "END"))) {
                break;
            }
        }
        assertEquals("SIMPLE  =                    T", cards.get(0).substring(0, 30));
        assertEquals("BITPIX  =                  -32", cards.get(1).substring(0, 30));
        assertEquals(
                "NAXIS   =                    " + (planes.size() == 1 ? 2 : 3),
                cards.get(2).substring(0, 30));
        assertEquals("NAXIS1  =                   37", cards.get(3).substring(0, 30));
        assertEquals("NAXIS2  =                   19", cards.get(4).substring(0, 30));
        assertTrue(cards.contains("HISTORY " + "x".repeat(72)));
        assertTrue(cards.contains("HISTORY " + "x".repeat(28)));
        assertTrue(cards.contains("HISTORY turned by Zoe"));
        ByteBuffer data = ByteBuffer.wrap(bytes);
        data.position((at + 2879) / 2880 * 2880);
        int compared = 0;
        for (Plane plane : planes) {
            for (int y = HEIGHT - 1; y >= 0; y--) {
                for (int x = 0; x < WIDTH; x++) {
                    assertEquals(plane.at(x, y), data.getFloat());
                    compared++;
                }
            }
        }
        assertEquals(planes.size() * WIDTH * HEIGHT, compared);
    }

    @Test
    void cardsThatBreakTheHeaderAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new FitsCard("lower", 1, ""));
        assertThrows(IllegalArgumentException.class, () -> new FitsCard("NUMBER", Double.NaN, ""));
        List<FitsCard> cards = List.of(new FitsCard("NAXIS", 1, ""));
        assertThrows(
                IllegalArgumentException.class,
                () -> FitsWriter.write(folder.resolve("a.fits"), colour(), cards, List.of(), false));
    }

    @Test
    void anExistingFileStaysUnlessItMayBeReplaced() throws IOException {
        Path file = Files.writeString(folder.resolve("old.png"), "old");
        OutputRefused refused =
                assertThrows(OutputRefused.class, () -> PictureWriter.write(file, colour(), CAPTION, false));
        Sentences.assertSentence("old.png", refused);
        assertEquals("old", Files.readString(file));

        PictureWriter.write(file, colour(), CAPTION, true);
        assertEquals(FrameFormat.PNG, FrameReader.head(file).format());
        assertNothingLeftBut("old.png");
    }

    @Test
    void whenWritingFailsTheOldFileStaysAndNothingIsLeft() throws IOException {
        Path file = Files.writeString(folder.resolve("old.txt"), "old");
        OutputRefused refused = assertThrows(
                OutputRefused.class,
                () -> AtomicFile.write(file, true, part -> {
                    Files.writeString(part, "half of");
                    throw new IOException(part + ": No space left on device");
                }));
        assertEquals(
                "old.txt cannot be written (No space left on device); free some space or choose another folder.",
                refused.getMessage());
        assertThrows(
                IllegalStateException.class,
                () -> AtomicFile.write(file, true, part -> {
                    Files.writeString(part, "half of");
                    throw new IllegalStateException("a bug");
                }));
        assertEquals("old", Files.readString(file));
        assertNothingLeftBut("old.txt");
    }

    @Test
    void aNewFileHasOrdinaryPermissions() throws IOException {
        Assumptions.assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));
        Path ordinary = Files.writeString(folder.resolve("ordinary"), "x");
        Path written = folder.resolve("written");
        AtomicFile.write(written, false, part -> Files.writeString(part, "x"));
        assertEquals(
                PosixFilePermissions.toString(Files.getPosixFilePermissions(ordinary)),
                PosixFilePermissions.toString(Files.getPosixFilePermissions(written)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-------", "rw-r-----", "rw-rw-rw-", "r--r--r--"})
    void aReplacedFileKeepsItsPermissions(String permissions) throws IOException {
        Assumptions.assumeTrue(
                folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
        Path file = Files.writeString(folder.resolve("private"), "old");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
        Path link = Files.createSymbolicLink(folder.resolve("to-private"), file);
        AtomicFile.write(link, true, part -> Files.writeString(part, "new"));
        assertEquals("new", Files.readString(file));
        assertEquals(permissions, PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    }

    @Test
    void aLinkIsFollowed() throws IOException {
        Path real = Files.writeString(folder.resolve("real"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link"), real);
        AtomicFile.write(link, true, part -> Files.writeString(part, "new"));
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("new", Files.readString(real));
    }

    @ParameterizedTest
    @CsvSource({
        "absent/a.png, its folder does not exist",
        "sub.png, is a folder",
        "a.gif, has no known file extension",
        "a.fits, is for linear data",
    })
    void refusesWhereNothingCanBeWritten(String name, String reason) throws IOException {
        Files.createDirectory(folder.resolve("sub.png"));
        Path file = folder.resolve(name);
        OutputRefused refused =
                assertThrows(OutputRefused.class, () -> PictureWriter.write(file, colour(), CAPTION, true));
        assertTrue(refused.getMessage().contains(reason), refused.getMessage());
        Sentences.assertSentence(file.getFileName().toString(), refused);
        assertNothingLeftBut("sub.png");
    }

    @Test
    void refusesAFolderThatIsNotWritable() throws IOException {
        Path locked = Files.createDirectory(folder.resolve("locked"));
        Assumptions.assumeTrue(locked.toFile().setWritable(false) && !Files.isWritable(locked));
        OutputRefused refused = assertThrows(
                OutputRefused.class, () -> PictureWriter.write(locked.resolve("a.png"), colour(), CAPTION, false));
        assertTrue(refused.getMessage().contains("is not writable"), refused.getMessage());
    }

    private void assertNothingLeftBut(String... names) throws IOException {
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(
                    List.of(names), left.map(f -> f.getFileName().toString()).toList());
        }
    }

    @Test
    void theProfileIsTheOneForSrgb() throws IOException {
        Path file = folder.resolve("p.tif");
        PictureWriter.write(file, colour(), CAPTION, false);
        String bytes = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        // Signature of an ICC profile, and the colour space it converts from.
        assertTrue(bytes.contains("acsp") && bytes.contains("mntrRGB XYZ"));
        Path grey = folder.resolve("g.tif");
        PictureWriter.write(grey, List.of(ramp(0)), CAPTION, false);
        try (InputStream in = Files.newInputStream(grey)) {
            // Java's profile for grey is linear; a viewer would show the picture far too bright.
            assertTrue(!new String(in.readAllBytes(), StandardCharsets.ISO_8859_1).contains("acsp"));
        }
    }
}
