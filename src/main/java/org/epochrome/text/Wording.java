package org.epochrome.text;

import java.util.List;

/** Where a message is shown: what one changes by an option there, one changes by a control here. */
public enum Wording {
    /** On the command line and in files; the controls are options. */
    COMMAND_LINE(""),
    /** In the window; the controls are named by their label and page. */
    WINDOW(".window", ""),
    /** On the page Frame of the window, whose controls need no page. */
    FRAME_PAGE(".frame", ".window", "");

    private final List<String> endings;

    Wording(String... endings) {
        this.endings = List.of(endings);
    }

    /** What may end the key of a message in this wording, the most special first; the last is always there. */
    List<String> endings() {
        return endings;
    }
}
