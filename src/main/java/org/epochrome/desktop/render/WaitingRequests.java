package org.epochrome.desktop.render;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.epochrome.session.combine.Combination;

/** Those who wait for a combination. */
final class WaitingRequests {
    private final List<Request> requests = new ArrayList<>();

    private record Request(Consumer<Combination> made, Runnable never) {}

    void add(Consumer<Combination> made, Runnable never) {
        requests.add(new Request(made, never));
    }

    void hand(Combination made) {
        taken().forEach(r -> r.made.accept(made));
    }

    void giveUp() {
        taken().forEach(r -> r.never.run());
    }

    private List<Request> taken() {
        List<Request> taken = List.copyOf(requests);
        requests.clear();
        return taken;
    }
}
