package org.epochrome.desktop.render;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.Stream;
import org.epochrome.colour.finish.Look;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.job.CancelledException;
import org.epochrome.job.Progress;
import org.epochrome.session.preview.Preview;
import org.epochrome.session.preview.Preview.Care;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Timetable;
import org.epochrome.time.UtcText;

/**
 * Makes small pictures that nobody sees while the window waits for frames: Java loads and compiles code when it first runs,
 * and a user's first picture need not wait for that.
 */
public final class WarmUp implements Runnable {
    private static final Site SITE = new Site(46.2, 8.5, 480);
    private static final Instant BEGINS = Instant.parse("2024-12-18T19:20:00Z");
    private static final List<String> BANDS = List.of("R", "G", "B");
    private static final int ACROSS_PX = 200;
    private static final Disk DISK = new Disk(98.6, 101.2, 75, 8, false);
    private static final int PICTURES = 20;

    private final Path folder;
    private final ForkJoinPool quick;
    private final Progress progress = Progress.endedBy(() -> this.over);
    private volatile boolean over;

    /**
     * @param folder for its frames; it is gone in the end
     * @param quick runs quick pictures
     */
    public WarmUp(Path folder, ForkJoinPool quick) {
        this.folder = folder;
        this.quick = quick;
    }

    /** Makes way for what is real. */
    public void end() {
        over = true;
    }

    @Override
    public void run() {
        try {
            play();
        } catch (CancelledException e) {
            // It has made way.
        } catch (IOException | RuntimeException e) {
            // The first picture will take longer, and if something is wrong, it will say what.
        }
    }

    /** Returns how many pictures it made. */
    int play() throws IOException {
        Files.createDirectories(folder);
        try {
            return pictures();
        } finally {
            clear();
        }
    }

    private int pictures() {
        List<FrameRequest> requests = new ArrayList<>();
        for (int i = 0; i < BANDS.size(); i++) {
            Path file = folder.resolve(BANDS.get(i) + ".fits");
            draw(file, BANDS.get(i), BEGINS.plusSeconds(150L * i));
            requests.add(FrameRequest.of(file));
        }
        progress.check();
        Recipe recipe = Recipe.usual(Frames.found(requests, Conventions.UNKNOWN), Body.JUPITER)
                .with(Place.at(SITE));
        Instant epoch = Timetable.of(recipe).epoch();
        Preview preview = Preview.rough(recipe, progress);
        for (int i = 0; i < PICTURES; i++) {
            progress.check();
            Recipe moved = recipe.at(Optional.of(epoch.plusSeconds(i)));
            quick.submit(() -> Pictures.quick(
                            preview, moved, Look.DEFAULT, Display.FINISHED, Care.NEAREST_FRAMES, progress))
                    .join();
        }
        return PICTURES;
    }

    /** An even globe under a little noise. */
    private static void draw(Path file, String band, Instant start) {
        View view = new View(Globe.of(Ephemeris.aspect(Body.JUPITER, start, Optional.of(SITE))), DISK);
        Plane plane = new Shading(0.9, 2, Smear.NONE).picture(view, ACROSS_PX, ACROSS_PX);
        Random dice = new Random(band.charAt(0));
        float[] data = plane.data();
        for (int i = 0; i < data.length; i++) {
            data[i] = (float) Math.max(0, Math.rint(40000 * data[i] + 1000 + 150 * dice.nextGaussian()));
        }
        List<FitsCard> cards = List.of(
                new FitsCard("DATE-OBS", UtcText.format(start).replace("Z", ""), "UTC, start"),
                new FitsCard("EXPTIME", 120.0, "[s]"),
                new FitsCard("FILTER", band, ""));
        FrameWriter.write(file, plane, cards, true);
    }

    private void clear() throws IOException {
        List<Path> all;
        try (Stream<Path> files = Files.list(folder)) {
            all = files.toList();
        }
        for (Path file : all) {
            Files.delete(file);
        }
        Files.delete(folder);
    }
}
