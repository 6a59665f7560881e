package org.epochrome.desktop;

import javafx.application.Platform;
import javafx.stage.Window;

/** Opens the window of a program that a test has started, prints its size and the screen's scale, and closes it. */
public final class WindowOnce {
    private static final int PAUSE_MS = 200;

    private WindowOnce() {}

    public static void main(String[] args) {
        Thread watch = new Thread(WindowOnce::closeWhenShown, "watch");
        watch.setDaemon(true);
        watch.start();
        Launcher.main(new String[0]);
    }

    private static void closeWhenShown() {
        while (true) {
            try {
                Thread.sleep(PAUSE_MS);
                Platform.runLater(WindowOnce::closeIfShown);
            } catch (IllegalStateException e) {
                // the toolkit has not started yet
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    private static void closeIfShown() {
        if (!Window.getWindows().isEmpty() && Window.getWindows().get(0).isShowing()) {
            Window window = Window.getWindows().get(0);
            System.out.printf(
                    "window %.0f x %.0f, scale %.2f%n",
                    window.getWidth(), window.getHeight(), window.getOutputScaleX());
            System.out.flush();
            Platform.exit();
        }
    }
}
