package org.epochrome.io.raster;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.epochrome.image.Encoding;
import org.epochrome.io.LeapTable;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.read.FrameSource;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TaggedEncodingTest {
    private static final int HEADER_END = 8 + 25;

    @TempDir
    private Path folder;

    /** An 8-bit grey PNG file by the JDK, with one more chunk behind its header. */
    private Path png(String type, byte... data) throws IOException {
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(20, 18, BufferedImage.TYPE_BYTE_GRAY), "png", plain);
        byte[] bytes = plain.toByteArray();
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(name);
        sum.update(data);
        ByteBuffer all = ByteBuffer.allocate(bytes.length + 12 + data.length);
        all.put(bytes, 0, HEADER_END).putInt(data.length).put(name).put(data).putInt((int) sum.getValue());
        all.put(bytes, HEADER_END, bytes.length - HEADER_END);
        Path file = folder.resolve("2031-05-02-211405-R.png");
        Files.write(file, all.array());
        return file;
    }

    /** Chunks by the PNG specification, second edition, sections 11.3.3.2 and 11.3.3.5. */
    @Test
    void readsTheChunksOfAPngFile() throws IOException {
        assertEquals(Optional.of(Encoding.SRGB), tagged(png("sRGB", (byte) 0)));
        assertEquals(
                Optional.of(Encoding.power(2.2)),
                tagged(png("gAMA", ByteBuffer.allocate(4).putInt(45455).array())));
        assertEquals(
                Optional.empty(),
                tagged(png("gAMA", ByteBuffer.allocate(4).putInt(100_000).array())));
        assertEquals(Optional.empty(), tagged(png("tEXt", "Title\0x".getBytes(StandardCharsets.US_ASCII))));
    }

    private static Optional<Encoding> tagged(Path file) {
        return FrameReader.head(file).tagged();
    }

    @Test
    void readsTheProfilesOfTheJdk() {
        assertEquals(Optional.of(Encoding.SRGB), TaggedEncoding.ofProfile(profile(ColorSpace.CS_sRGB)));
        assertEquals(Optional.empty(), TaggedEncoding.ofProfile(profile(ColorSpace.CS_LINEAR_RGB)));
        assertEquals(Optional.empty(), TaggedEncoding.ofProfile(new byte[] {1, 2, 3}));
    }

    private static byte[] profile(int space) {
        return ICC_Profile.getInstance(space).getData();
    }

    @Test
    void warnsOfAnEncodedFrameUnlessItsEncodingIsSaid() throws IOException {
        Path file = png("sRGB", (byte) 0);
        FrameSource source = new FrameSource(
                new NameClock(Optional.of(TimestampMeaning.START), Optional.empty(), java.time.ZoneOffset.UTC),
                Map.of(),
                new LeapTable());
        DatedFrame found = source.find(FrameRequest.of(file));
        assertTrue(
                found.notes().stream().anyMatch(n -> n.toString().contains("--encoding srgb")),
                found.notes().toString());
        assertTrue(
                Message.texts(found.encoded(Encoding.SRGB).notes()).contains("Its encoding (srgb) was undone."),
                found.encoded(Encoding.SRGB).notes().toString());
        SheetRow row = new SheetRow(file, Optional.empty(), Optional.empty(), "sheet a.csv line 2");
        DatedFrame said = source.find(FrameRequest.of(row.with(Optional.of(Encoding.LINEAR))));
        List<Message> notes = said.encoded(Encoding.SRGB).notes();
        assertTrue(notes.stream().noneMatch(n -> n.toString().contains("ncod")), notes.toString());
    }
}
