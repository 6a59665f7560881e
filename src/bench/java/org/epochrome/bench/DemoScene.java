package org.epochrome.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import nom.tam.fits.Fits;
import nom.tam.fits.ImageHDU;
import nom.tam.image.compression.hdu.CompressedImageHDU;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Plane;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.read.FrameSource;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.job.Progress;
import org.epochrome.session.locate.DiskFinder;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.ExposureReader;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.time.LeapSeconds;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** The demo session of Jupiter as it lies in {@code demo-data}: its frames, and their disks. */
@State(Scope.Benchmark)
public class DemoScene {
    static final int SIDE = 480;
    /** Pixels of a frame; times are reported for each of them. */
    static final int PIXELS = SIDE * SIDE;

    private static final Path DEMO = Path.of("demo-data", "jupiter");
    private static final Site SITE = new Site(46.2, 8.5, 480);

    Path folder;
    Path frame;
    Recipe recipe;
    Schedule schedule;
    Turning turning;
    WorkingFrames frames;

    @Setup(Level.Trial)
    public void make() throws IOException {
        folder = Files.createTempDirectory("bench");
        frame = DEMO.resolve("jupiter-R.fits");
        FrameSource source = new FrameSource(NameClock.UNKNOWN, Map.of(), LeapSeconds::taiMinusUtcS);
        List<DatedFrame> found = Stream.of("R", "G", "B")
                .map(band -> source.find(FrameRequest.of(DEMO.resolve("jupiter-" + band + ".fits"))))
                .toList();
        recipe = Recipe.usual(found, Body.JUPITER).with(Place.at(SITE));
        schedule = Schedule.of(recipe);
        turning = new Turning(recipe, schedule);
        ExposureReader reader = new ExposureReader(schedule);
        List<Plane> planes = IntStream.range(0, schedule.exposures().size())
                .mapToObj(reader::read)
                .toList();
        if (planes.get(0).data().length != PIXELS) {
            throw new IllegalStateException("Times would be divided by a wrong number of pixels.");
        }
        frames = new DiskFinder(recipe, schedule, AtmosphericDispersion.over(recipe), Memory.ofThisHeap())
                .find(planes, rough -> planes, Progress.NONE);
    }

    /** The first frame as another file. */
    Path as(String name) throws IOException {
        Path file = folder.resolve(name);
        Plane counts = frames.get(0).pixels().copy();
        for (int i = 0; i < counts.data().length; i++) {
            counts.data()[i] *= 65535;
        }
        FrameWriter.write(file, counts, List.of(), true);
        return file;
    }

    /** The first frame, gzipped. */
    Path gzipped() throws IOException {
        Path file = folder.resolve("gzipped.fits.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            Files.copy(frame, out);
        }
        return file;
    }

    /** The first frame, compressed by Rice's method in tiles of a row. */
    Path tiled() throws Exception {
        Path file = folder.resolve("tiled.fits");
        try (Fits plain = new Fits(frame.toFile());
                Fits tiled = new Fits()) {
            CompressedImageHDU hdu = CompressedImageHDU.fromImageHDU((ImageHDU) plain.getHDU(0), SIDE, 1);
            hdu.setCompressAlgorithm("RICE_1").setQuantAlgorithm(null);
            hdu.compress();
            tiled.addHDU(hdu);
            tiled.write(file.toFile());
        }
        return file;
    }

    @TearDown(Level.Trial)
    public void delete() throws IOException {
        List<Path> files;
        try (var list = Files.list(folder)) {
            files = list.toList();
        }
        for (Path file : files) {
            Files.delete(file);
        }
        Files.delete(folder);
    }
}
