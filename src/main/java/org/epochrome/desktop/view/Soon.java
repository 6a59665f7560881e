package org.epochrome.desktop.view;

import javafx.application.Platform;

/** Does something once for all that asks for it at a time: while a hand drags, much changes at once. */
final class Soon {
    private final Runnable action;
    private boolean asked;

    Soon(Runnable action) {
        this.action = action;
    }

    void ask() {
        if (!asked) {
            asked = true;
            Platform.runLater(() -> {
                asked = false;
                action.run();
            });
        }
    }
}
