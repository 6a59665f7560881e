package org.epochrome.command.terminal;

import java.io.PrintStream;
import java.util.Arrays;
import java.util.Locale;
import org.epochrome.io.file.VisibleText;
import org.epochrome.text.Message;

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
        System.err.println(VisibleText.message(Message.text("run.note", sentence)));
    }

    /** Says on standard error what may be wrong. */
    public static void warning(String sentence) {
        System.err.println(VisibleText.message(Message.text("run.warning", sentence)));
    }

    /** A line. */
    public void println(String line) {
        to.println(VisibleText.of(line));
    }

    /** A line of a message; control characters in its values are shown, and long ones lose their middle. */
    public void println(Message line) {
        to.println(shown(line));
    }

    /** Text by a format with its own line ends; control characters in the values are shown, and long ones lose their middle. */
    public void printf(String format, Object... values) {
        to.print(String.format(
                Locale.ROOT,
                format,
                Arrays.stream(values).map(TerminalPage::shown).toArray()));
    }

    private static Object shown(Object value) {
        if (value instanceof Message m) {
            return new Message(
                    m.key(), m.values().stream().map(TerminalPage::shown).toList());
        }
        return value instanceof Number ? value : VisibleText.message(value.toString());
    }
}
