package org.epochrome.desktop.state;

/** What the side is about. */
public enum Topic {
    SESSION("Session"),
    FRAME("Frame"),
    DISK("Disk"),
    SHIFT("Shift"),
    COLOUR("Colour"),
    DETAIL("Detail"),
    FRAMING("Framing"),
    EVIDENCE("Evidence");

    private final String title;

    Topic(String title) {
        this.title = title;
    }

    public String title() {
        return title;
    }
}
