package org.epochrome.desktop;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.beans.value.ChangeListener;
import org.epochrome.colour.Tone;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Place;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/**
 * Measures how quick the window is and compares that with what it aims at: from dropping frames to a picture in colour, while the
 * epoch is dragged, from the last change to the finished picture at full resolution; and how long its thread was ever kept busy.
 * Reports the median of the rounds after the first, when Java has compiled what it runs; asserts nothing. Arguments: frames. With
 * -Dfull=false it does not wait for the full picture, as with a hundred frames; -Drounds tells how often.
 */
public final class Pace {
    private static final int ROUNDS = Integer.getInteger("rounds", 6);
    private static final boolean FULL = !"false".equals(System.getProperty("full"));
    private static final int DRAG_MS = 4000;
    private static final int PARTS = 40;

    private static final OperatingSystemMXBean MACHINE =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    /** What is measured. */
    private enum Measure {
        FIRST("from the drop to a picture in colour, s", 0.5, false),
        FULL("from the drop to the full picture, s", Double.NaN, false),
        DRAGGING("pictures a second while the epoch is dragged", 30, true),
        EPOCH("from the last change of the epoch to the full picture, s", 1, false),
        LOOK("from the last change of the tone to the full picture, s", 1, false),
        PART("from a change of the sharpening to 400 x 400 pixels at full resolution, ms", 60, false),
        STALL("longest time without a response, ms", 50, false),
        COMPUTED("longest time that the window's thread computed at once, ms", 50, false);

        private final String title;
        private final double aim;
        private final boolean atLeast;

        Measure(String title, double aim, boolean atLeast) {
            this.title = title;
            this.aim = aim;
            this.atLeast = atLeast;
        }

        String line(List<double[]> rounds) {
            double elapsed = median(rounds.stream().mapToDouble(r -> r[0]).toArray());
            double cpu = median(rounds.stream().mapToDouble(r -> r[1]).toArray());
            boolean reached = atLeast ? elapsed >= aim : elapsed <= aim;
            String goal = Double.isNaN(aim)
                    ? ""
                    : String.format(
                            "aim %s %.4g, %s",
                            atLeast ? "at least" : "at most", aim, reached ? "reached" : "not reached");
            return String.format(
                    "%-62s %7.2f %s %s",
                    title,
                    elapsed,
                    Double.isNaN(cpu) ? " ".repeat(22) : String.format("(%6.3f s of processors)", cpu),
                    goal);
        }

        private static double median(double[] values) {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            return sorted[sorted.length / 2];
        }
    }

    private final Rig rig;
    private final Map<Measure, List<double[]>> rounds = new LinkedHashMap<>();

    private Pace(Rig rig) {
        this.rig = rig;
    }

    public static void main(String[] args) throws Exception {
        Path home = Files.createTempDirectory("pace");
        FxToolkit.registerPrimaryStage();
        Rig[] rig = new Rig[1];
        FxToolkit.setupStage(stage -> {
            rig[0] = new Rig(home, stage, 1440, 900);
            stage.show();
        });
        long start = System.nanoTime();
        rig[0].rehearse(home);
        System.out.printf("warm-up %.2f s%n", (System.nanoTime() - start) * 1e-9);
        List<Path> frames = Arrays.stream(args).map(Path::of).toList();
        Pace pace = new Pace(rig[0]);
        pace.round(frames);
        pace.print("first round");
        pace.rounds.clear();
        for (int i = 1; i < ROUNDS; i++) {
            pace.round(frames);
        }
        pace.print("median of " + (ROUNDS - 1) + " more");
        System.exit(0);
    }

    private void print(String title) {
        System.out.println(title);
        rounds.forEach((measure, values) -> System.out.println("  " + measure.line(values)));
    }

    private void round(List<Path> frames) throws Exception {
        WaitForAsyncUtils.asyncFx(() -> rig.bench().clear()).get();
        FaceWatch watch = new FaceWatch();
        Lap drop = new Lap();
        WaitForAsyncUtils.asyncFx(() -> rig.bench().take(frames, Place.at(new Site(46.2, 8.5, 480))))
                .get();
        await(() -> rig.bench().renderer().shownProperty().get().isPresent());
        drop.note(Measure.FIRST);
        if (FULL) {
            await(this::isFull);
            drop.note(Measure.FULL);
        }
        drag();
        if (FULL) {
            Instant epoch = rig.bench().epoch().orElseThrow();
            changed(s -> s.with(s.recipe().at(Optional.of(epoch.plusSeconds(30)))), Measure.EPOCH);
            changed(s -> s.with(s.look().with(Look::tone, new Tone(0.75, 0, 1, 1.1))), Measure.LOOK);
        }
        if (FULL) {
            parts();
        }
        note(Measure.STALL, watch.stallMs(), Double.NaN);
        note(Measure.COMPUTED, watch.computedMs(), Double.NaN);
        watch.end();
        if (!watch.mostOften().isEmpty()) {
            System.out.println(watch.mostOften());
        }
    }

    private boolean isFull() {
        return rig.bench().combination().isPresent()
                && !rig.bench().renderer().work().busyProperty().get();
    }

    /** As a hand that moves the marker 60 times a second. */
    private void drag() throws Exception {
        AtomicLong pictures = new AtomicLong();
        Instant from = rig.bench().epoch().orElseThrow();
        var shown = rig.bench().renderer().shownProperty();
        ChangeListener<Object> count = (o, old, now) -> pictures.incrementAndGet();
        WaitForAsyncUtils.asyncFx(() -> shown.addListener(count)).get();
        long start = System.nanoTime();
        long began = MACHINE.getProcessCpuTime();
        int step = 0;
        while (System.nanoTime() - start < DRAG_MS * 1_000_000L) {
            Instant at = from.plusSeconds(step++ % 240 - 120);
            Platform.runLater(() -> rig.bench().tryOut(s -> s.with(s.recipe().at(Optional.of(at)))));
            Thread.sleep(16);
        }
        WaitForAsyncUtils.asyncFx(() -> shown.removeListener(count)).get();
        double each = (MACHINE.getProcessCpuTime() - began) * 1e-9 / Math.max(1, pictures.get());
        note(Measure.DRAGGING, pictures.get() / (DRAG_MS / 1000.0), each);
    }

    /** As a hand that drags a slider of the page Detail, as fast as parts follow. */
    private void parts() throws Exception {
        var part = rig.bench().renderer().fine().partProperty();
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < PARTS; i++) {
            double gain = 0.3 + 0.01 * i;
            Object before = part.get();
            long start = System.nanoTime();
            Platform.runLater(() -> rig.bench()
                    .tryOut(s -> s.with(s.look()
                            .with(Look::sharpening, s.look().sharpening().with(Sharpening::gain, gain)))));
            while (part.get() == before && System.nanoTime() - start < 5e9) {
                Thread.sleep(1);
            }
            times.add((System.nanoTime() - start) * 1e-6);
        }
        WaitForAsyncUtils.asyncFx(() -> rig.bench().undo()).get();
        await(this::isFull);
        note(Measure.PART, Measure.median(times.stream().mapToDouble(t -> t).toArray()), Double.NaN);
    }

    /** A change, as when a hand lets a control go. */
    private void changed(Change change, Measure measure) throws Exception {
        Lap lap = new Lap();
        WaitForAsyncUtils.asyncFx(() -> rig.bench().editSession("change", change::of))
                .get();
        await(this::isFull);
        lap.note(measure);
    }

    /** Another session. */
    @FunctionalInterface
    private interface Change {
        Session of(Session session);
    }

    private void note(Measure measure, double value, double cpu) {
        rounds.computeIfAbsent(measure, m -> new ArrayList<>()).add(new double[] {value, cpu});
    }

    /** Time and processor time since a moment. */
    private final class Lap {
        private final long start = System.nanoTime();
        private final long began = MACHINE.getProcessCpuTime();

        void note(Measure measure) {
            Pace.this.note(measure, (System.nanoTime() - start) * 1e-9, (MACHINE.getProcessCpuTime() - began) * 1e-9);
        }
    }

    private static void await(BooleanSupplier condition) throws Exception {
        WaitForAsyncUtils.waitFor(900, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(condition::getAsBoolean)
                .get());
    }
}
