package org.epochrome.command.terminal;

import java.io.PrintStream;
import java.util.Arrays;
import java.util.Locale;
import org.epochrome.io.file.VisibleText;

/** Lines for people; words from files cannot control the terminal that shows them. */
public final class TerminalPage {
    private final PrintStream to;

    private TerminalPage(PrintStream to) {
        this.to = to;
    }

    /** On standard output. */
    public static TerminalPage out() {
        return new TerminalPage(System.out);
    }

    /** Says on standard error what the user should know. */
    public static void note(String sentence) {
        System.err.println(VisibleText.message("Note: " + sentence));
    }

    /** A line. */
    public void println(String line) {
        to.println(VisibleText.of(line));
    }

    /** Text by a format with its own line ends; control characters in the values are shown, and long ones lose their middle. */
    public void printf(String format, Object... values) {
        Object[] shown = Arrays.stream(values)
                .map(v -> v instanceof Number ? v : VisibleText.message(v.toString()))
                .toArray();
        to.print(String.format(Locale.ROOT, format, shown));
    }
}
