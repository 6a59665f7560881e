package org.epochrome.desktop.state;

import org.epochrome.desktop.style.Texts;

/** What the side is about. */
public enum Topic {
    SESSION(Texts.of("side.session")),
    FRAME(Texts.of("side.frame")),
    DISK(Texts.of("side.disk")),
    SHIFT(Texts.of("side.shift")),
    COLOUR(Texts.of("side.colour")),
    DETAIL(Texts.of("side.detail")),
    FRAMING(Texts.of("side.framing")),
    EVIDENCE(Texts.of("side.evidence"));

    private final String title;

    Topic(String title) {
        this.title = title;
    }

    public String title() {
        return title;
    }
}
