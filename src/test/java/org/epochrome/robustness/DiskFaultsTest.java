package org.epochrome.robustness;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.epochrome.desktop.recovery.RecoveryFile;
import org.epochrome.desktop.recovery.RecoveryFolder;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsImage;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.AnimationWriter;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.io.write.PictureWriter;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.report.Outputs;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.text.Refusal;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whichever call a disk fails at, and for good, the old file is whole, or the new one is. */
class DiskFaultsTest {
    private static final PictureWriter.Caption CAPTION =
            new PictureWriter.Caption("a picture", Optional.of(Instant.EPOCH), "test");
    private static final byte[] OLD = "old".getBytes(StandardCharsets.US_ASCII);
    private static final String FRAME = "frame.fits";

    private FileSystem memory;
    private FaultyFiles disk;
    private Path plain;
    private Path folder;

    @BeforeEach
    void disk() throws IOException {
        memory = Jimfs.newFileSystem(Configuration.unix());
        disk = new FaultyFiles(memory);
        plain = Files.createDirectory(memory.getPath("/night"));
        folder = disk.on(plain);
    }

    @AfterEach
    void close() throws IOException {
        memory.close();
    }

    /** Something that writes. */
    @FunctionalInterface
    private interface Writing {
        void run() throws IOException;
    }

    private static void write(Path file, float grey) {
        Plane plane = Plane.filled(40, 30, grey);
        List<Plane> colours = List.of(plane, plane, plane);
        String name = file.getFileName().toString();
        if (name.startsWith("frame")) {
            FrameWriter.write(file, plane, List.of(), true);
        } else if (name.endsWith(".fits")) {
            FitsWriter.write(file, Collections.nCopies(3, new FitsImage("", colours, List.of(), List.of())), true);
        } else if (name.startsWith("turning")) {
            AnimationWriter.write(file, Collections.nCopies(3, new AnimationWriter.Still(colours, 8)), CAPTION, true);
        } else if (name.endsWith(".json")) {
            Outputs.writeReport(file, "{\"grey\": " + grey + "}", true);
        } else {
            PictureWriter.write(file, colours, CAPTION, true);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cube.fits",
                "picture.tif",
                "picture.png",
                "picture.jpg",
                "frame.fits",
                "frame.png",
                "frame.tif",
                "turning.gif",
                "turning.png",
                "report.json"
            })
    void everyWriter(String name) throws IOException {
        Path file = plain.resolve(name);
        Files.write(file, OLD);
        disk.failFrom(Integer.MAX_VALUE);
        write(disk.on(file), 0.5f);
        byte[] written = Files.readAllBytes(file);
        int calls = disk.calls();
        assertTrue(calls >= 5, calls + " calls");
        int kept = 0;
        for (int call = 1; call <= calls; call++) {
            Files.write(file, OLD);
            disk.failFrom(call);
            boolean refused = refuses(() -> write(disk.on(file), 0.5f));
            byte[] there = Files.readAllBytes(file);
            if (refused) {
                assertArrayEquals(OLD, there, "failing from call " + call);
                kept++;
            } else {
                assertArrayEquals(written, there, "failing from call " + call);
            }
        }
        assertTrue(kept >= 4, kept + " refusals");
    }

    /** Whether it was refused by a sentence that names the cause; any other failure ends the test. */
    private static boolean refuses(Writing writing) throws IOException {
        try {
            writing.run();
            return false;
        } catch (Refusal e) {
            assertTrue(e.getMessage().endsWith("."), e.getMessage());
            return true;
        }
    }

    private Session session() throws IOException {
        disk.failFrom(Integer.MAX_VALUE);
        Files.copy(Path.of("src/test/resources/truth/files/uint16.fits"), plain.resolve(FRAME));
        Files.writeString(
                plain.resolve("night.json"),
                "{\"format\":\"epochrome-session\",\"version\":1,\"body\":\"jupiter\",\"frames\":[{\"file\":\"" + FRAME
                        + "\",\"band\":\"R\",\"start\":\"2031-05-02T21:14:05Z\",\"end\":\"2031-05-02T21:16:05Z\"}]}");
        return SessionFile.read(folder.resolve("night.json")).session();
    }

    private static Session turned(Session session, double northDeg) {
        return session.with(session.recipe().with(session.recipe().setup().oriented(northDeg, Mirroring.NO)));
    }

    private static double north(Path file) {
        return SessionFile.read(file).session().recipe().setup().northDeg().orElseThrow();
    }

    @Test
    void theSessionFile() throws IOException {
        Session session = session();
        Path file = folder.resolve("night.json");
        SessionFile.write(turned(session, 1), file, "test", true);
        disk.failFrom(Integer.MAX_VALUE);
        SessionFile.write(turned(session, 1), file, "test", true);
        int calls = disk.calls();
        assertTrue(calls >= 5, calls + " calls");
        for (int call = 1; call <= calls; call++) {
            disk.failFrom(call);
            boolean refused = refuses(() -> SessionFile.write(turned(session, 2), file, "test", true));
            assertEquals(refused ? 1 : 2, north(file), "failing from call " + call);
            disk.failFrom(Integer.MAX_VALUE);
            SessionFile.write(turned(session, 1), file, "test", true);
        }
    }

    /** What was written down once can be restored, whatever happens to what is written down later. */
    @Test
    void recovery() throws IOException {
        Session session = session();
        int calls = 1;
        for (int call = 1; call <= calls; call++) {
            disk.failFrom(Integer.MAX_VALUE);
            RecoveryFolder recovery = new RecoveryFolder(folder.resolve("unsaved" + call));
            RecoveryFile own = recovery.begin();
            own.write(turned(session, 1), 1, "test");
            disk.failFrom(call == 1 ? Integer.MAX_VALUE : call - 1);
            boolean kept = true;
            try {
                own.write(turned(session, 2), 2, "test");
            } catch (IOException | Refusal e) {
                kept = false;
            }
            calls = call == 1 ? disk.calls() + 1 : calls;
            own.release();
            disk.failFrom(Integer.MAX_VALUE);
            RecoveryFolder later = new RecoveryFolder(folder.resolve("unsaved" + call));
            assertEquals(1, later.abandoned().size(), "failing from call " + (call - 1));
            RecoveryFile claimed = later.claim(later.abandoned().get(0)).orElseThrow();
            double found = north(claimed.path());
            assertTrue(kept ? found == 2 : found == 1 || found == 2, "failing from call " + (call - 1) + ": " + found);
            claimed.delete();
            assertEquals(List.of(), later.abandoned());
        }
        assertTrue(calls > 5, calls + " calls");
    }

    /** A disk that is full for a moment only leaves nothing behind. */
    @Test
    void noTemporaryFileIsLeft() throws IOException {
        Path file = plain.resolve("cube.fits");
        disk.failFrom(Integer.MAX_VALUE);
        write(disk.on(file), 0.5f);
        int calls = disk.calls();
        for (int call = 1; call < calls; call++) {
            disk.failOnce(call);
            refuses(() -> write(disk.on(file), 0.25f));
            try (Stream<Path> left = Files.list(plain)) {
                assertEquals(
                        List.of("cube.fits"),
                        left.map(f -> f.getFileName().toString()).toList());
            }
        }
    }
}
