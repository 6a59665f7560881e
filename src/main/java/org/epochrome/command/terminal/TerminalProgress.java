package org.epochrome.command.terminal;

import java.util.Locale;
import org.epochrome.job.Progress;
import picocli.CommandLine.Help;

/** Progress as one line on the terminal that is written over and over; silent where the output is no terminal. */
public final class TerminalProgress implements Progress {
    private final boolean shown;
    private String what = "";
    private int percent = -1;

    public TerminalProgress(boolean wanted) {
        shown = wanted && Help.Ansi.AUTO.enabled();
    }

    @Override
    public synchronized void at(double fraction) {
        int now = (int) Math.round(100 * fraction);
        if (now > percent) {
            percent = now;
            draw();
        }
    }

    @Override
    public synchronized void doing(String now) {
        what = now;
        draw();
    }

    @Override
    public boolean cancelled() {
        return false;
    }

    public void end() {
        if (shown) {
            System.err.print("\r" + " ".repeat(60) + "\r");
            System.err.flush();
        }
    }

    private void draw() {
        if (shown) {
            System.err.print(String.format(Locale.ROOT, "\r%3d %%  %-50s", Math.max(0, percent), what));
            System.err.flush();
        }
    }
}
