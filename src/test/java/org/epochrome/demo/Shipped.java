package org.epochrome.demo;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.epochrome.demo.scene.Rendered;

/** The demo's sessions and their true pictures, each made once for all tests. */
public final class Shipped {
    private static final Map<String, DemoSession> SESSIONS = new ConcurrentHashMap<>();
    private static final Map<DemoSession, List<Rendered>> TRUTHS = new ConcurrentHashMap<>();

    private Shipped() {}

    public static DemoSession jupiter() {
        return once("jupiter", DemoSessions::jupiter);
    }

    public static DemoSession mars() {
        return once("mars", DemoSessions::mars);
    }

    public static DemoSession saturn() {
        return once("saturn", DemoSessions::saturn);
    }

    /** What a perfect combination of a session would give: R, G and B. */
    public static List<Rendered> truth(DemoSession session) {
        return TRUTHS.computeIfAbsent(session, DemoSession::truth);
    }

    private static DemoSession once(String name, Supplier<DemoSession> session) {
        return SESSIONS.computeIfAbsent(name, unused -> session.get());
    }
}
