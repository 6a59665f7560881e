package org.epochrome.desktop;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Comparator;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import javafx.application.Platform;

/**
 * Watches the window's thread: asks it again and again for a sign of life. Time that it computes is told apart from time that passes,
 * since on a busy machine the one says little about the other. With -Ddeeds=true it also looks at what the thread does, for which Java
 * stops the whole program for up to 25 ms at a time: for causes, not for times.
 */
final class FaceWatch {
    private static final long ASKED_MS = 4;
    private static final int DEEDS = 5;
    private static final boolean NOTES = Boolean.getBoolean("deeds");

    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    private final Thread face;
    private final Thread asking = new Thread(this::ask, "watch");
    private final Map<String, Integer> deeds = new ConcurrentHashMap<>();
    private long lastSign;
    private long lastComputed;
    private long worstPassed;
    private long worstComputed;
    private volatile boolean over;

    FaceWatch() {
        face = CompletableFuture.supplyAsync(Thread::currentThread, Platform::runLater)
                .join();
        asking.setDaemon(true);
        asking.start();
    }

    void end() {
        over = true;
    }

    private void ask() {
        while (!over) {
            Platform.runLater(this::sign);
            if (NOTES) {
                note();
            }
            try {
                Thread.sleep(ASKED_MS);
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    private synchronized void sign() {
        long now = System.nanoTime();
        long computed = threads.getThreadCpuTime(face.getId());
        if (lastSign != 0) {
            worstPassed = Math.max(worstPassed, now - lastSign);
            worstComputed = Math.max(worstComputed, computed - lastComputed);
        }
        lastSign = now;
        lastComputed = computed;
    }

    /** The innermost class of this program in the stack, or what the toolkit does by itself. */
    private void note() {
        if (face.getState() != Thread.State.RUNNABLE && face.getState() != Thread.State.BLOCKED) {
            return;
        }
        String deed = "";
        for (StackTraceElement e : face.getStackTrace()) {
            boolean own = e.getClassName().startsWith("org.epochrome");
            boolean pulse = e.getClassName().endsWith("Scene$ScenePulseListener");
            if (own || pulse) {
                String name = e.getClassName().substring(e.getClassName().lastIndexOf('.') + 1);
                deed = name + "." + e.getMethodName();
                break;
            }
        }
        if (!deed.isEmpty() && !deed.startsWith("FaceWatch")) {
            deeds.merge(deed, 1, Integer::sum);
        }
    }

    /** The longest time without a response. */
    synchronized double stallMs() {
        return worstPassed * 1e-6;
    }

    /** The most that the thread computed without a break. */
    synchronized double computedMs() {
        return worstComputed * 1e-6;
    }

    /** What was going on most often; empty unless -Ddeeds=true. */
    String mostOften() {
        return deeds.entrySet().stream()
                .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                .limit(DEEDS)
                .map(e -> e.getKey() + " " + e.getValue())
                .collect(Collectors.joining(", "));
    }
}
