package org.epochrome.desktop;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.recipe.Place;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/**
 * Measures how quick the window is: from dropping frames to a picture, and while the epoch is dragged; and how long its thread
 * was ever kept busy. Reports, asserts nothing. Arguments: frames. With -Dfull=false it does not wait for the full picture, as with a
 * hundred frames; -Drounds tells how often.
 */
public final class Pace {
    private static final int ROUNDS = Integer.getInteger("rounds", 5);
    private static final boolean FULL = !"false".equals(System.getProperty("full"));
    private static final int DRAG_MS = 4000;

    private static final OperatingSystemMXBean MACHINE =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private Pace() {}

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
        System.out.printf("rehearsal %.2f s%n", (System.nanoTime() - start) * 1e-9);
        List<Path> frames = Arrays.stream(args).map(Path::of).toList();
        for (int i = 0; i < ROUNDS; i++) {
            round(rig[0], frames);
        }
        System.exit(0);
    }

    private static void round(Rig rig, List<Path> frames) throws Exception {
        WaitForAsyncUtils.asyncFx(() -> rig.bench().clear()).get();
        FaceWatch watch = new FaceWatch();
        long start = System.nanoTime();
        long began = MACHINE.getProcessCpuTime();
        WaitForAsyncUtils.asyncFx(() -> rig.bench().take(frames, Place.at(new Site(46.2, 8.5, 480))))
                .get();
        await(() -> rig.bench().renderer().shownProperty().get().isPresent());
        long first = System.nanoTime();
        System.out.printf("first picture %.2f s, %.2f s of processors%n", (first - start) * 1e-9, computed(began));
        await(() -> !FULL
                || (rig.bench().combination().isPresent()
                        && !rig.bench().renderer().work().busyProperty().get()));
        long full = System.nanoTime();
        String opening = watch.told();
        long before = MACHINE.getProcessCpuTime();
        double perSecond = drag(rig);
        double each = computed(before) / (perSecond * DRAG_MS / 1000);
        String dragging = watch.told();
        watch.end();
        System.out.printf(
                "full picture %.2f s, %s%n    dragging %.1f pictures/s, each %.3f s of processors, %s; %d MB in use%n",
                (full - start) * 1e-9, opening, perSecond, each, dragging, used());
    }

    /** As a hand that moves the marker 60 times a second. */
    private static double drag(Rig rig) throws Exception {
        AtomicLong pictures = new AtomicLong();
        Instant from = rig.bench().epoch().orElseThrow();
        var shown = rig.bench().renderer().shownProperty();
        javafx.beans.value.ChangeListener<Object> count = (o, old, now) -> pictures.incrementAndGet();
        WaitForAsyncUtils.asyncFx(() -> shown.addListener(count)).get();
        long start = System.nanoTime();
        int step = 0;
        while (System.nanoTime() - start < DRAG_MS * 1_000_000L) {
            Instant at = from.plusSeconds(step++ % 240 - 120);
            Platform.runLater(() -> rig.bench().tryOut(s -> s.with(s.recipe().at(Optional.of(at)))));
            Thread.sleep(16);
        }
        WaitForAsyncUtils.asyncFx(() -> shown.removeListener(count)).get();
        return pictures.get() / (DRAG_MS / 1000.0);
    }

    private static double computed(long since) {
        return (MACHINE.getProcessCpuTime() - since) * 1e-9;
    }

    private static long used() {
        Runtime runtime = Runtime.getRuntime();
        return (runtime.totalMemory() - runtime.freeMemory()) >> 20;
    }

    private static void await(BooleanSupplier condition) throws Exception {
        WaitForAsyncUtils.waitFor(900, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(condition::getAsBoolean)
                .get());
    }
}
