package org.epochrome.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.function.Consumer;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.identify.Sheet;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.read.ResponseCurve;
import org.epochrome.session.sessionfile.SessionFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a file costs is bounded by its length and a stated budget, not by what it claims. */
class BoundedInputsTest {
    private static final Path FILES = Path.of("src/test/resources/truth/files");
    private static final int MEGABYTE = 1 << 20;

    @TempDir
    private Path folder;

    private static void refused(Path file, String words, Consumer<Path> reading) {
        FrameRefused refused = assertTimeoutPreemptively(
                Duration.ofSeconds(30), () -> assertThrows(FrameRefused.class, () -> reading.accept(file)));
        Sentences.assertSentence(file.getFileName().toString(), refused);
        assertTrue(refused.getMessage().contains(words), refused.getMessage());
    }

    /** Sixty-eight bytes that claim 200 MB, and a memory that would take them. */
    @Test
    void aPictureThatClaimsMoreThanItCanHold() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        ByteArrayOutputStream header = new ByteArrayOutputStream();
        DataOutputStream fields = new DataOutputStream(header);
        fields.writeInt(8192);
        fields.writeInt(8192);
        fields.write(new byte[] {8, 2, 0, 0, 0});
        chunk(out, "IHDR", header.toByteArray());
        chunk(out, "IDAT", new byte[11]);
        chunk(out, "IEND", new byte[0]);
        assertEquals(68, bytes.size());
        refused(Files.write(folder.resolve("claim.png"), bytes.toByteArray()), "cut short", FrameReader::head);
    }

    private static void chunk(DataOutputStream out, String type, byte[] data) throws IOException {
        CRC32 sum = new CRC32();
        sum.update(type.getBytes(StandardCharsets.US_ASCII));
        sum.update(data);
        out.writeInt(data.length);
        out.writeBytes(type);
        out.write(data);
        out.writeInt((int) sum.getValue());
    }

    @Test
    void tilesThatClaimMoreThanTheyCanHold() throws IOException {
        Path claim = changed("tiles-rice1.fits", "ZNAXIS1", "16384", "ZNAXIS2", "16384");
        refused(claim, "cut short", FrameReader::head);
    }

    /** From other lengths the library printed a stack trace for each tile. */
    @ParameterizedTest
    @ValueSource(strings = {"8", "0", "-1", "3", "2147483647", "1.5"})
    void tilesOfAnotherLengthOfSample(String bytes) throws IOException {
        Path file = changed("tiles-rice1.fits", "ZVAL2", bytes);
        PrintStream err = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        try (PrintStream there = new PrintStream(said, true, StandardCharsets.UTF_8)) {
            System.setErr(there);
            refused(file, "ZVAL2", FrameReader::read);
        } finally {
            System.setErr(err);
        }
        assertEquals("", said.toString(StandardCharsets.UTF_8));
    }

    private Path changed(String name, String... keywordsAndValues) throws IOException {
        String text = Files.readString(FILES.resolve(name), StandardCharsets.ISO_8859_1);
        for (int i = 0; i < keywordsAndValues.length; i += 2) {
            String begin = String.format("%-8s= ", keywordsAndValues[i]);
            int card = text.indexOf(begin);
            String said = String.format("%-80s", begin + String.format("%20s", keywordsAndValues[i + 1]));
            text = text.substring(0, card) + said + text.substring(card + said.length());
        }
        return Files.writeString(folder.resolve("changed-" + name), text, StandardCharsets.ISO_8859_1);
    }

    @Test
    void aPackedFrameWithALongTail() throws IOException {
        byte[] frame = Files.readAllBytes(FILES.resolve("uint16.fits"));
        Path some = packed("some.fits.gz", 100, frame);
        assertEquals(1, FrameReader.read(some).planes().size());
        refused(packed("tail.fits.gz", 600, frame), "512 MB", FrameReader::read);
    }

    /** Gibibytes before the image are not unpacked to be skipped. */
    @Test
    void aPackedFrameWithALongUnitBefore() throws IOException {
        String primary = String.format(
                "%-80s%-80s%-80s%-80s%-2560s",
                "SIMPLE  =                    T",
                "BITPIX  =                    8",
                "NAXIS   =                    1",
                "NAXIS1  =           1000000000",
                "END");
        refused(
                packed("before.fits.gz", 1000, primary.getBytes(StandardCharsets.US_ASCII)),
                "512 MB",
                FrameReader::head);
    }

    private Path packed(String name, int megabytesOfZeros, byte[] begin) throws IOException {
        Path file = folder.resolve(name);
        byte[] zeros = new byte[MEGABYTE];
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file), 1 << 16) {
            {
                def.setLevel(Deflater.BEST_SPEED);
            }
        }) {
            out.write(begin);
            for (int i = 0; i < megabytesOfZeros; i++) {
                out.write(zeros);
            }
        }
        return file;
    }

    @ParameterizedTest
    @ValueSource(strings = {"pipe.csv", "pipe.json", "pipe.fits"})
    void aPipeIsNotReadFrom(String name) throws Exception {
        Path pipe = folder.resolve(name);
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")));
        assertEquals(
                0,
                new ProcessBuilder("/usr/bin/mkfifo", pipe.toString()).start().waitFor());
        everyReaderRefuses(pipe);
    }

    @Test
    void aDeviceIsNotReadFrom() throws IOException {
        Path zero = Path.of("/dev/zero");
        assumeTrue(Files.exists(zero));
        everyReaderRefuses(zero);
        everyReaderRefuses(Files.createSymbolicLink(folder.resolve("zero.json"), zero));
    }

    private static void everyReaderRefuses(Path file) {
        refused(file, "not a regular file", Sheet::read);
        refused(file, "not a regular file", ResponseCurve::read);
        refused(file, "not a regular file", SessionFile::read);
        refused(file, "not a regular file", FrameReader::read);
    }

    @Test
    void anEndlessTableOrSession() throws IOException {
        Path table = Files.write(folder.resolve("long.csv"), new byte[11_000_000]);
        refused(table, "too large", Sheet::read);
        Path session = Files.write(folder.resolve("long.json"), new byte[65 * MEGABYTE]);
        refused(session, "too long", SessionFile::read);
    }

    /** A million digits took twelve seconds, and twenty of them wrapped around to eight seconds. */
    @ParameterizedTest
    @ValueSource(strings = {"18446744073709559", "1000000000", "1.0000000001", "."})
    void anExposureOfTooManyDigits(String exposure) throws IOException {
        refusedExposure(exposure);
        refusedExposure(exposure + "9".repeat(1_000_000));
    }

    private void refusedExposure(String exposure) throws IOException {
        Path sheet = Files.writeString(
                folder.resolve("night.csv"), "file,start,exposure\na.fits,2031-05-02T21:14:05Z," + exposure + "\n");
        refused(sheet, "line 2", Sheet::read);
    }
}
