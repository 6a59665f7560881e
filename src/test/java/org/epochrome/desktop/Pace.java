package org.epochrome.desktop;

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
import org.epochrome.session.Place;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/**
 * Measures how quick the window is: from dropping frames to a picture, and while the epoch is dragged; and how long its thread
 * was ever kept busy. Reports, asserts nothing. Arguments: frames.
 */
public final class Pace {
    private static final int ROUNDS = 5;
    private static final int DRAG_MS = 4000;

    private Pace() {}

    public static void main(String[] args) throws Exception {
        Path home = Files.createTempDirectory("pace");
        FxToolkit.registerPrimaryStage();
        Rig[] rig = new Rig[1];
        FxToolkit.setupStage(stage -> {
            rig[0] = new Rig(home, stage, 1440, 900);
            stage.show();
        });
        List<Path> frames = Arrays.stream(args).map(Path::of).toList();
        for (int i = 0; i < ROUNDS; i++) {
            round(rig[0], frames);
        }
        System.exit(0);
    }

    private static void round(Rig rig, List<Path> frames) throws Exception {
        WaitForAsyncUtils.asyncFx(() -> rig.bench().clear()).get();
        AtomicLong worst = new AtomicLong();
        Thread watch = watch(worst);
        long start = System.nanoTime();
        WaitForAsyncUtils.asyncFx(() -> rig.bench().take(frames, Place.at(new Site(46.2, 8.5, 480))))
                .get();
        await(() -> rig.bench().studio().shownProperty().get().isPresent());
        long first = System.nanoTime();
        await(() -> rig.bench().combination().isPresent()
                && !rig.bench().studio().work().busyProperty().get());
        long full = System.nanoTime();
        long stalled = worst.getAndSet(0);
        double perSecond = drag(rig);
        watch.interrupt();
        System.out.printf(
                "first picture %.2f s, full picture %.2f s, longest stall %d ms; dragging %.1f pictures/s, stall %d ms%n",
                (first - start) * 1e-9, (full - start) * 1e-9, stalled / 1_000_000, perSecond, worst.get() / 1_000_000);
    }

    /** As a hand that moves the marker 60 times a second. */
    private static double drag(Rig rig) throws Exception {
        AtomicLong pictures = new AtomicLong();
        Instant from = rig.bench().epoch().orElseThrow();
        var shown = rig.bench().studio().shownProperty();
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

    /** Asks the window's thread again and again for a sign of life. */
    private static Thread watch(AtomicLong worst) {
        Thread thread = new Thread(() -> {
            try {
                while (true) {
                    long asked = System.nanoTime();
                    Platform.runLater(() -> worst.accumulateAndGet(System.nanoTime() - asked, Math::max));
                    Thread.sleep(5);
                }
            } catch (InterruptedException e) {
                // asked enough
            }
        });
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private static void await(BooleanSupplier condition) throws Exception {
        WaitForAsyncUtils.waitFor(120, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(condition::getAsBoolean)
                .get());
    }
}
