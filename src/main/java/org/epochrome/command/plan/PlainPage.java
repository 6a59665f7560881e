package org.epochrome.command.plan;

import org.epochrome.command.terminal.TerminalPage;
import org.epochrome.text.Message;

/** Lines on standard output with the signs that every terminal has, as the other commands print them. */
final class PlainPage {
    private final TerminalPage page = TerminalPage.out();

    void println(String line) {
        page.println(line.replace('\u2033', '"')
                .replace('\u2212', '-')
                .replace('\u2013', '-')
                .replace('\u00d7', 'x'));
    }

    void println(Message line) {
        println(line.toString());
    }

    /** A name and what belongs to it. */
    void line(String name, Object value) {
        println("  " + name + " ".repeat(Math.max(1, 23 - name.length())) + value);
    }
}
