package org.epochrome.desktop.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.junit.jupiter.api.Test;

/** Work is queued by hand here, so that every order can be played through without threads. */
class LatestTaskRunnerTest {
    private final Queue<Runnable> background = new ArrayDeque<>();
    private final List<String> done = new ArrayList<>();

    private void ask(LatestTaskRunner lane, String name) {
        lane.submit(
                progress -> {
                    progress.check();
                    return name;
                },
                done::add,
                e -> done.add("failed: " + e.getMessage()),
                (at, doing) -> {});
    }

    private void runAll() {
        while (!background.isEmpty()) {
            background.remove().run();
        }
    }

    @Test
    void theNewestOfThoseThatWaitWins() {
        LatestTaskRunner lane = new LatestTaskRunner(background::add, Runnable::run, false);
        for (String name : List.of("first", "second", "third")) {
            ask(lane, name);
        }
        runAll();
        assertEquals(List.of("first", "third"), done);
        assertTrue(lane.idle());
    }

    @Test
    void aNewRequestCancelsTheOneThatRuns() {
        LatestTaskRunner lane = new LatestTaskRunner(background::add, Runnable::run, true);
        ask(lane, "first");
        ask(lane, "second");
        runAll();
        assertEquals(List.of("second"), done);
    }

    @Test
    void whatWasCancelledIsNotHandedOver() {
        List<Runnable> face = new ArrayList<>();
        LatestTaskRunner lane = new LatestTaskRunner(background::add, face::add, true);
        ask(lane, "first");
        runAll();
        lane.cancel();
        ask(lane, "second");
        runAll();
        face.forEach(Runnable::run);
        assertEquals(List.of("second"), done);
    }

    @Test
    void tellsWhatFailed() {
        LatestTaskRunner lane = new LatestTaskRunner(background::add, Runnable::run, true);
        lane.submit(
                progress -> {
                    throw new IllegalStateException("no");
                },
                r -> done.add("done"),
                e -> done.add("failed: " + e.getMessage()),
                (at, doing) -> {});
        ask(lane, "next");
        runAll();
        assertTrue(done.contains("next"), done.toString());
    }
}
