package org.epochrome.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.InflaterInputStream;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import nom.tam.fits.BasicHDU;
import nom.tam.fits.BinaryTableHDU;
import nom.tam.fits.Fits;
import org.epochrome.image.Plane;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.fits.FitsImage;
import org.epochrome.io.fits.FitsTable;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.write.AnimationWriter;
import org.epochrome.io.write.AnimationWriter.Still;
import org.epochrome.io.write.PictureWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the files say, read by other code than wrote it: other libraries, or readers that know only the standard. */
class FormatsTest {
    private static final int WIDTH = 31;
    private static final int HEIGHT = 17;
    private static final PictureWriter.Caption CAPTION = new PictureWriter.Caption(
            "Jupiter, an example", Optional.of(Instant.parse("2031-05-02T21:14:05Z")), "Epochrome 0");

    @TempDir
    private Path folder;

    private static List<Plane> colours(int seed) {
        List<Plane> planes = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            Plane plane = new Plane(WIDTH, HEIGHT);
            for (int i = 0; i < plane.data().length; i++) {
                plane.data()[i] = (i * (k + 2) + 37 * seed) % 97 / 80f;
            }
            planes.add(plane);
        }
        return planes;
    }

    @Test
    void aTiffOfFloatsIsNotClipped() {
        Path file = folder.resolve("floats.tif");
        List<Plane> planes = colours(0);
        planes.get(1).set(3, 2, Float.NaN);
        PictureWriter.write(file, planes, new PictureWriter.Form(Optional.empty(), true), CAPTION, false);
        FrameFile read = FrameReader.read(file);
        assertEquals("32-bit float", read.head().depth());
        planes.get(1).set(3, 2, 0);
        for (int k = 0; k < 3; k++) {
            assertArrayEquals(planes.get(k).data(), read.planes().get(k).data());
        }
    }

    /** Chunks of a PNG in their order, the sum of each checked; same names get a number. */
    private static Map<String, byte[]> chunks(byte[] png) {
        Map<String, byte[]> chunks = new LinkedHashMap<>();
        ByteBuffer in = ByteBuffer.wrap(png);
        assertEquals(0x89504e470d0a1a0aL, in.getLong());
        while (in.hasRemaining()) {
            int length = in.getInt();
            CRC32 sum = new CRC32();
            sum.update(png, in.position(), length + 4);
            byte[] type = new byte[4];
            in.get(type);
            byte[] data = new byte[length];
            in.get(data);
            assertEquals((int) sum.getValue(), in.getInt());
            String name = new String(type, StandardCharsets.US_ASCII);
            chunks.put(chunks.containsKey(name) ? name + chunks.size() : name, data);
        }
        return chunks;
    }

    @Test
    void aPngHoldsTheProfileAndItsTexts() throws IOException {
        Path file = folder.resolve("picture.png");
        PictureWriter.write(file, colours(1), CAPTION, false);
        Map<String, byte[]> chunks = chunks(Files.readAllBytes(file));
        byte[] profile = chunks.get("iCCP");
        assertEquals("sRGB\0\0", new String(profile, 0, 6, StandardCharsets.ISO_8859_1));
        byte[] plain = new InflaterInputStream(new ByteArrayInputStream(profile, 6, profile.length - 6)).readAllBytes();
        assertArrayEquals(PictureWriter.srgb().getData(), plain);
        StringBuilder texts = new StringBuilder();
        chunks.forEach((name, data) -> {
            if (name.startsWith("iTXt")) {
                texts.append(new String(data, StandardCharsets.UTF_8).replace('\0', ' '))
                        .append('\n');
            }
        });
        assertTrue(texts.toString().matches("(?s).*Description +Jupiter, an example\n.*"), texts.toString());
        assertTrue(texts.toString().matches("(?s).*Creation Time +2031-05-02T21:14:05Z\n.*"), texts.toString());
        assertTrue(texts.toString().matches("(?s).*Software +Epochrome 0\n.*"), texts.toString());
    }

    @Test
    void aJpegHoldsExifBehindItsHeader() throws IOException {
        Path file = folder.resolve("picture.jpg");
        PictureWriter.write(file, colours(1), CAPTION, false);
        ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(file));
        assertEquals((short) 0xffd8, in.getShort());
        Map<Integer, byte[]> segments = new LinkedHashMap<>();
        int marker = in.getShort() & 0xffff;
        while (marker != 0xffda) {
            byte[] body = new byte[(in.getShort() & 0xffff) - 2];
            in.get(body);
            segments.putIfAbsent(marker, body);
            marker = in.getShort() & 0xffff;
        }
        assertTrue(new String(segments.get(0xffe2), StandardCharsets.ISO_8859_1).startsWith("ICC_PROFILE\0\1\1"));
        Map<Integer, String> tags = exif(segments.get(0xffe1));
        assertEquals("Jupiter, an example", tags.get(270));
        assertEquals("Epochrome 0", tags.get(305));
        assertEquals("2031:05:02 21:14:05", tags.get(306));
        assertEquals("2031:05:02 21:14:05", tags.get(36867));
        assertEquals("+00:00", tags.get(36881));
        assertEquals("0232", tags.get(36864));
        assertEquals("1", tags.get(40961));
    }

    /** Exif by its standard: big-endian directories of 12 bytes an entry. */
    private static Map<Integer, String> exif(byte[] segment) {
        assertEquals("Exif\0\0MM", new String(segment, 0, 8, StandardCharsets.ISO_8859_1));
        ByteBuffer tiff = ByteBuffer.wrap(segment, 6, segment.length - 6).slice();
        assertEquals(42, tiff.getShort(2));
        Map<Integer, String> tags = new LinkedHashMap<>();
        int directory = tiff.getInt(4);
        while (directory > 0) {
            int next = 0;
            int last = -1;
            for (int i = 0; i < tiff.getShort(directory); i++) {
                int at = directory + 2 + 12 * i;
                int tag = tiff.getShort(at) & 0xffff;
                assertTrue(tag > last, "tags must ascend");
                last = tag;
                int type = tiff.getShort(at + 2);
                int count = tiff.getInt(at + 4);
                if (type == 3) {
                    tags.put(tag, Integer.toString(tiff.getShort(at + 8)));
                } else if (type == 4) {
                    next = tiff.getInt(at + 8);
                } else {
                    int from = count <= 4 ? at + 8 : tiff.getInt(at + 8);
                    byte[] text = new byte[count];
                    tiff.get(from, text);
                    tags.put(tag, new String(text, StandardCharsets.US_ASCII).replace("\0", ""));
                }
            }
            directory = next;
        }
        return tags;
    }

    @Test
    void anAnimatedPngHoldsEachStillExactly() throws IOException {
        Path file = folder.resolve("turning.png");
        List<Still> stills = List.of(new Still(colours(0), 80), new Still(colours(1), 8), new Still(colours(2), 8));
        AnimationWriter.write(file, stills, CAPTION, false);
        Map<String, byte[]> chunks = chunks(Files.readAllBytes(file));
        assertEquals(3, ByteBuffer.wrap(chunks.get("acTL")).getInt());
        assertEquals(0, ByteBuffer.wrap(chunks.get("acTL")).getInt(4));
        List<byte[]> pictures = new ArrayList<>();
        int sequence = 0;
        for (Map.Entry<String, byte[]> chunk : chunks.entrySet()) {
            byte[] data = chunk.getValue();
            if (chunk.getKey().startsWith("fcTL") || chunk.getKey().startsWith("fdAT")) {
                assertEquals(sequence++, ByteBuffer.wrap(data).getInt());
            }
            if (chunk.getKey().startsWith("IDAT")) {
                pictures.add(data);
            } else if (chunk.getKey().startsWith("fdAT")) {
                pictures.add(java.util.Arrays.copyOfRange(data, 4, data.length));
            }
        }
        assertEquals(3, pictures.size());
        int compared = 0;
        for (int i = 0; i < 3; i++) {
            // Each picture made a PNG of its own, for the reader of the JDK.
            ByteArrayOutputStream single = new ByteArrayOutputStream();
            byte[] all = Files.readAllBytes(file);
            single.write(all, 0, 8 + 12 + 13);
            ByteBuffer data = ByteBuffer.allocate(12 + pictures.get(i).length + 12);
            CRC32 sum = new CRC32();
            sum.update("IDAT".getBytes(StandardCharsets.US_ASCII));
            sum.update(pictures.get(i));
            data.putInt(pictures.get(i).length).put("IDAT".getBytes(StandardCharsets.US_ASCII));
            data.put(pictures.get(i)).putInt((int) sum.getValue());
            single.write(data.array(), 0, data.position());
            single.write(all, all.length - 12, 12);
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(single.toByteArray()));
            for (int k = 0; k < 3; k++) {
                for (int p = 0; p < WIDTH * HEIGHT; p++) {
                    float value = stills.get(i).planes().get(k).data()[p];
                    assertEquals(
                            Math.round(255.0 * Math.min(1, value)),
                            image.getRaster().getSample(p % WIDTH, p / WIDTH, k));
                    compared++;
                }
            }
        }
        assertEquals(9 * WIDTH * HEIGHT, compared);
    }

    @Test
    void aGifKeepsItsColoursAndRepeats() throws IOException {
        Path file = folder.resolve("turning.gif");
        List<Still> stills = List.of(new Still(soft(0), 80), new Still(soft(9), 8));
        AnimationWriter.write(file, stills, CAPTION, false);
        String bytes = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        assertTrue(bytes.startsWith("GIF89a"));
        // Extension, its name, a block of three bytes: 1, and 0 for ever (GIF89a, section 26, for the frame of it).
        assertTrue(bytes.contains("!\u00ff\u000bNETSCAPE2.0\u0003\u0001\u0000\u0000\u0000"));
        assertTrue(bytes.contains("!\u00fe\u0013Jupiter, an example"));
        try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
            ImageReader reader = ImageIO.getImageReaders(in).next();
            reader.setInput(in);
            assertEquals(2, reader.getNumImages(true));
            double sum = 0;
            for (int i = 0; i < 2; i++) {
                BufferedImage image = reader.read(i);
                for (int p = 0; p < WIDTH * HEIGHT; p++) {
                    int rgb = image.getRGB(p % WIDTH, p / WIDTH);
                    for (int k = 0; k < 3; k++) {
                        double off = (rgb >> (16 - 8 * k) & 255)
                                - 255 * stills.get(i).planes().get(k).data()[p];
                        sum += off * off;
                    }
                }
            }
            // Rms of 255: cells of 4 and a dither of 4 alone make 1.6. Measured: 2.2.
            double rms = Math.sqrt(sum / (6 * WIDTH * HEIGHT));
            assertTrue(rms < 3, "off by " + rms);
            reader.dispose();
        }
    }

    /** Colours that change slowly, as a planet's do. */
    private static List<Plane> soft(int moved) {
        List<Plane> planes = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            Plane plane = new Plane(WIDTH, HEIGHT);
            for (int p = 0; p < plane.data().length; p++) {
                int row = p / WIDTH;
                double wave = Math.sin((p % WIDTH + moved) / 9.0 + k) * Math.cos(row / 7.0);
                plane.data()[p] = (float) (0.5 + 0.3 * wave);
            }
            planes.add(plane);
        }
        return planes;
    }

    @Test
    void anAnimationHasItsOwnSuffixes() {
        List<Still> stills = List.of(new Still(colours(0), 8));
        OutputRefused refused = assertThrows(
                OutputRefused.class,
                () -> AnimationWriter.write(folder.resolve("turning.jpg"), stills, CAPTION, false));
        Sentences.assertSentence("turning.jpg", refused);
    }

    @Test
    void aFitsTableComesBackByAnotherReader() throws Exception {
        Path file = folder.resolve("table.fits");
        FitsTable table = new FitsTable(
                "FRAMES",
                List.of(
                        FitsTable.Column.texts("FILE", "frame", List.of("a.fits", "Zo\u00eb-2.fits", "")),
                        FitsTable.Column.numbers("X", "pixel", "column", List.of(1.25, Double.NaN, -1e-9))));
        FitsImage map = new FitsImage("COVERAGE", colours(3).subList(0, 1), List.of(), List.of());
        FitsWriter.write(file, List.of(new FitsImage("", colours(2), List.of(), List.of("made")), table, map), false);
        try (Fits fits = new Fits(file.toFile())) {
            BasicHDU<?>[] units = fits.read();
            assertEquals(3, units.length);
            for (BasicHDU<?> unit : units) {
                unit.verifyIntegrity();
                unit.verifyDataIntegrity();
            }
            assertTrue(units[0].getHeader().getBooleanValue("EXTEND"));
            BinaryTableHDU read = (BinaryTableHDU) units[1];
            assertEquals("FRAMES", read.getHeader().getStringValue("EXTNAME"));
            assertEquals("pixel", read.getHeader().getStringValue("TUNIT2"));
            assertArrayEquals(new String[] {"a.fits", "Zoe-2.fits", ""}, (String[]) read.getColumn("FILE"));
            assertArrayEquals(new double[] {1.25, Double.NaN, -1e-9}, (double[]) read.getColumn("X"));
            float[][] kernel = (float[][]) units[2].getKernel();
            assertEquals(colours(3).get(0).at(4, HEIGHT - 1), kernel[0][4]);
        }
        assertThrows(
                IllegalStateException.class, () -> FitsWriter.write(folder.resolve("b.fits"), List.of(table), false));
    }
}
