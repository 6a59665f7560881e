package org.epochrome.session.sessionfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.epochrome.align.Witness;
import org.epochrome.atmosphere.Air;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Tone;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.ChannelOffsets;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Grading;
import org.epochrome.colour.finish.LevelPoints;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.colour.finish.ToneCurve;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Session;
import org.epochrome.session.product.TurningFile;
import org.epochrome.session.recipe.AbsentFrame;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.FileMark;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.recipe.Light;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sessions in files: nothing is lost, nothing is guessed. */
class SessionFileTest {
    @TempDir
    private Path folder;

    private Path red;
    private Path infrared;
    private Path colour;

    @BeforeEach
    void frames() throws IOException {
        Files.createDirectories(folder.resolve("frames"));
        red = frame("frames/2022-10-26-035735-R.fits");
        infrared = frame("frames/2022-10-26-040100.fits");
        colour = frame("2022-10-26-040500-G.fits");
    }

    private Path frame(String name) {
        Path file = folder.resolve(name);
        FrameWriter.write(file, new Plane(18, 17), List.of(), false);
        return file;
    }

    /** Nothing said but what must be. */
    private Session plain() {
        return Session.usual(
                Recipe.usual(Frames.found(List.of(FrameRequest.of(red)), Conventions.UNKNOWN), Body.JUPITER));
    }

    /** Everything said that can be. */
    private Session full() {
        return full(OptionalDouble.of(5.5), OptionalDouble.empty());
    }

    /**
     * @param scalePx the scale of detail, which is in pixels or in arcseconds; with the first goes a response of the camera, with the
     *     second another light, of which there is also only one
     */
    private Session full(OptionalDouble scalePx, OptionalDouble scaleArcsec) {
        Conventions conventions = new Conventions(
                new NameClock(
                        Optional.of(TimestampMeaning.END), Optional.of(Duration.ofSeconds(95)), ZoneOffset.ofHours(2)),
                Map.of("H", new Passband(654, 658.5)),
                Encoding.power(2.2),
                Map.of("H", Duration.ofSeconds(90)));
        RecordingSpan span = new RecordingSpan(
                Instant.parse("2022-10-26T04:01:00.123456789Z"), Instant.parse("2022-10-26T04:03:00Z"));
        List<DatedFrame> frames = Frames.found(
                List.of(
                        FrameRequest.of(red),
                        FrameRequest.of(colour, "B"),
                        new FrameRequest(
                                infrared,
                                Optional.empty(),
                                Optional.of(new SheetRow(
                                        infrared,
                                        Optional.of("H"),
                                        Optional.of(span),
                                        Optional.of(true),
                                        Optional.of(Encoding.SRGB),
                                        "sheet a.csv line 2")))),
                conventions);
        Recipe recipe = new Recipe(
                new Frames(
                        frames,
                        conventions,
                        Set.of(colour),
                        Map.of(infrared, new ManualDisk(4.1, 3.9, 2.5, OptionalDouble.of(-12.3))),
                        List.of(new AbsentFrame(
                                FrameRequest.of(folder.resolve("gone.fits"), "G"),
                                Optional.of(new FileMark(2880, "ab")),
                                Message.of("session.absent", "gone.fits")))),
                Body.SATURN,
                new Place(Optional.of(new Site(-37.1, 146.5, 301.5)), Optional.of(new Air(970.1, -3.3, 0.29))),
                Optional.of(Instant.parse("2022-10-26T04:00:00.5Z")),
                new Setup(OptionalDouble.of(0.1 + 0.2), Mirroring.YES, OptionalDouble.of(1 / 3.0), Mount.ALTAZ),
                new Corrections(
                        Optional.of(RotationSystem.I),
                        OptionalDouble.of(0.41),
                        false,
                        false,
                        false,
                        Extent.ALL,
                        false,
                        scalePx.isPresent() ? Light.CAMERA : Light.EVEN,
                        Optional.of(List.of(new Spectrum.Point(400, 0.5), new Spectrum.Point(900, 0.25)))
                                .filter(curve -> scalePx.isPresent())),
                new Alignment(EnumSet.of(Witness.DETAIL), Map.of("B", new PixelOffset(0.25, -0.1)), true),
                new Assignment("H", "R", "G", Optional.of("L")));
        Look look = new Look(
                WhiteBalance.solar(new Gains(1.3, 1.1, 1.7)),
                new Sharpening(0.4, 12, 0.006, 0.7, scalePx, scaleArcsec, 1.5, 2.5, 0.3, Sharpening.DetailOf.BANDS),
                new Tone(0.7, 0.02, 1.2, 1.3),
                new Grading(
                        new Gains(1.1, 0.9, 1.2),
                        new ChannelOffsets(0.01, 0.02, -0.03),
                        Map.of("all", new LevelPoints(0.02, 0.4, 0.95)),
                        new ToneCurve(0.2, 0.55, 0.8)),
                new Framing(
                        Framing.Orientation.SOUTH_UP,
                        OptionalDouble.of(0.15),
                        OptionalDouble.of(1.5),
                        Optional.of(new Framing.Canvas(640, 480)),
                        OptionalDouble.of(12.5),
                        Optional.of(new Framing.Centre(0.5, -0.2)),
                        true,
                        Optional.of("a garden, seeing 7/10")));
        Products products = new Products(
                List.of(folder.resolve("out/a.tif")),
                32,
                List.of(folder.resolve("a.json"), folder.resolve("a.html")),
                Optional.of(new MapFile(folder.resolve("map.png"), OptionalInt.of(720), true)),
                Optional.of(new TurningFile(
                        folder.resolve("turning.gif"),
                        Optional.of(Instant.parse("2022-10-26T03:00:00Z")),
                        Optional.of(Instant.parse("2022-10-26T05:00:00Z")),
                        9)));
        return new Session(recipe, look, products);
    }

    private Session reread(Session session, String name) {
        Path file = folder.resolve(name);
        SessionFile.write(session, file, "0", false);
        SessionFile.Opened opened = SessionFile.read(file);
        assertEquals(List.of(), opened.notes());
        return opened.session();
    }

    @Test
    void whatIsSaidComesBackToTheLastBit() {
        assertEquals(List.of(), differences("", full(), reread(full(), "full.json")));
        assertEquals(List.of(), differences("", plain(), reread(plain(), "plain.json")));
        Session other = full(OptionalDouble.empty(), OptionalDouble.of(0.8));
        assertEquals(List.of(), differences("", other, reread(other, "other.json")));
    }

    /** So that a component which is added to a record but not here does not slip through the test above. */
    @Test
    void theFullSessionDiffersFromThePlainOneInEveryComponent() {
        List<String> alike = new ArrayList<>();
        alike(alike, "", full(), plain());
        List<String> inTheOther = new ArrayList<>();
        alike(inTheOther, "", full(OptionalDouble.empty(), OptionalDouble.of(0.8)), plain());
        assertEquals(2, alike.size());
        assertEquals(2, inTheOther.size());
        alike.retainAll(inTheOther);
        assertEquals(List.of(), alike);
    }

    @Test
    void aFolderCanBeMovedAndItsPathsAreRelative() throws IOException {
        Path file = folder.resolve("s.json");
        SessionFile.write(full(), file, "0", false);
        assertFalse(Files.readString(file).contains(folder.getFileName().toString()));
        Path moved = Files.createDirectories(folder.resolve("elsewhere")).resolve("night");
        Files.createDirectories(moved.resolve("frames"));
        for (Path frame : List.of(red, infrared, colour, file)) {
            Files.move(frame, moved.resolve(folder.relativize(frame)));
        }
        Session there = SessionFile.read(moved.resolve("s.json")).session();
        assertEquals(
                List.of(
                        moved.resolve("frames/2022-10-26-035735-R.fits"),
                        moved.resolve("2022-10-26-040500-G.fits"),
                        moved.resolve("frames/2022-10-26-040100.fits")),
                there.recipe().frames().all().stream().map(f -> f.head().file()).toList());
        assertEquals(List.of(moved.resolve("out/a.tif")), there.products().pictures());
        assertEquals(
                Set.of(moved.resolve("2022-10-26-040500-G.fits")),
                there.recipe().frames().leftOut());
    }

    @Test
    void aChangedFrameIsTold() {
        Path file = folder.resolve("s.json");
        SessionFile.write(plain(), file, "0", false);
        Plane other = new Plane(18, 17);
        other.set(4, 4, 100);
        FrameWriter.write(red, other, List.of(), true);
        List<String> notes = SessionFile.read(file).notes();
        assertEquals(1, notes.size());
        assertTrue(notes.get(0).startsWith("2022-10-26-035735-R.fits has changed"), notes.get(0));
    }

    @Test
    void anExistingFileIsReplacedAsAWholeOrNotAtAll() throws IOException {
        Path file = folder.resolve("s.json");
        Files.writeString(file, "mine");
        assertThrows(OutputRefused.class, () -> SessionFile.write(plain(), file, "0", false));
        assertEquals("mine", Files.readString(file));
        Session gone = plain();
        Files.delete(red);
        assertThrows(FrameRefused.class, () -> SessionFile.write(gone, file, "0", true));
        assertEquals("mine", Files.readString(file));
        try (var left = Files.list(folder)) {
            assertTrue(left.noneMatch(f -> f.toString().endsWith(".part")));
        }
    }

    @Test
    void whatIsMissingIsAsUsual() throws IOException {
        Path file = folder.resolve("s.json");
        Files.writeString(
                file,
                "{\"format\":\"epochrome-session\",\"version\":1,\"body\":\"jupiter\",\"frames\":"
                        + "[{\"file\":\"frames/2022-10-26-035735-R.fits\"}]}");
        assertEquals(List.of(), differences("", plain(), SessionFile.read(file).session()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"version\" : 1|\"version\" : 2|is a session of version 2",
                "\"version\" : 1|\"version\" : \"1\"|the value of version is of the wrong kind",
                "epochrome-session|other|is not a session file",
                "\"black\"|\"blak\"|the key look.tone.blak is unknown",
                "\"black\" : 0.0|\"black\" : \"0\"|the value of look.tone.black is of the wrong kind",
                "\"black\" : 0.0|\"black\" : 7|The black must be between 0.0 and 0.9",
                "\"iterations\" : 15|\"iterations\" : 1.5|the value of look.detail.iterations is of the wrong kind",
                "Jupiter|Pluto|'Pluto' is not a planet",
                "\"mount\" : \"equatorial\"|\"mount\" : \"dobson\"|'dobson' is unknown",
                "\"rotationSystem\" : \"zonal\"|\"rotationSystem\" : \"IV\"|Jupiter has no rotationSystem 'IV'",
                "\"tiffBits\" : 16|\"tiffBits\" : 8|tiffBits must be 16 or 32",
                "\"body\"|\"body\" : \"Mars\", \"body\"|it is not valid JSON near line",
                "\"look\" : {|\"look\" : [|it is not valid JSON near line",
                "frames/2022|frames/2021|2021-10-26-035735-R.fits"
            })
    void aFileThatCannotBeUsedIsRefusedInOneSentence(String what, String by, String sentence) throws IOException {
        Path file = folder.resolve("s.json");
        SessionFile.write(plain(), file, "0", false);
        String text = Files.readString(file);
        assertTrue(text.contains(what));
        Files.writeString(file, text.replace(what, by));
        RuntimeException refused = assertThrows(RuntimeException.class, () -> SessionFile.read(file));
        assertTrue(refused instanceof FrameRefused || refused instanceof FramesRefused, refused.toString());
        assertTrue(refused.getMessage().contains(sentence), refused.getMessage());
        assertEquals(1, refused.getMessage().lines().count());
    }

    @Test
    void anyPrefixOfAFileIsRefused() throws IOException {
        Path file = folder.resolve("s.json");
        SessionFile.write(plain(), file, "0", false);
        byte[] whole = Files.readAllBytes(file);
        int tried = 0;
        for (int n = 0; n < whole.length - 2; n += 97) {
            Files.write(file, java.util.Arrays.copyOf(whole, n));
            assertThrows(FrameRefused.class, () -> SessionFile.read(file));
            tried++;
        }
        assertTrue(tried > 5);
    }

    /** Where two values differ; what a file's head says is read anew and not compared. */
    private static List<String> differences(String where, Object a, Object b) {
        if (a instanceof FrameHead h && b instanceof FrameHead other) {
            return h.file().equals(other.file()) ? List.of() : List.of(where);
        }
        if (a instanceof Record && a.getClass() == b.getClass()) {
            List<String> all = new ArrayList<>();
            for (RecordComponent c : a.getClass().getRecordComponents()) {
                all.addAll(differences(where + "." + c.getName(), value(c, a), value(c, b)));
            }
            return all;
        }
        if (a instanceof List<?> l && b instanceof List<?> m && l.size() == m.size() && !l.isEmpty()) {
            List<String> all = new ArrayList<>();
            for (int i = 0; i < l.size(); i++) {
                all.addAll(differences(where + "[" + i + "]", l.get(i), m.get(i)));
            }
            return all;
        }
        return a.equals(b) ? List.of() : List.of(where + ": " + a + " became " + b);
    }

    private static void alike(List<String> found, String where, Object a, Object b) {
        if (a instanceof Record && a.getClass() == b.getClass()) {
            for (RecordComponent c : a.getClass().getRecordComponents()) {
                alike(found, where + "." + c.getName(), value(c, a), value(c, b));
            }
        } else if (a.equals(b)) {
            found.add(where);
        }
    }

    private static Object value(RecordComponent component, Object of) {
        try {
            component.getAccessor().setAccessible(true);
            return component.getAccessor().invoke(of);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(e.getMessage(), e);
        }
    }
}
