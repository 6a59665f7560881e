package org.epochrome.desktop.style;

import javafx.application.Platform;

/** Does something once for all that asks for it at a time: while a hand drags, much changes at once. */
public final class CoalescedUpdate {
    private final Runnable action;
    private boolean asked;

    public CoalescedUpdate(Runnable action) {
        this.action = action;
    }

    public void ask() {
        if (!asked) {
            asked = true;
            Platform.runLater(() -> {
                asked = false;
                action.run();
            });
        }
    }
}
