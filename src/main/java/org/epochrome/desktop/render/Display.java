package org.epochrome.desktop.render;

import org.epochrome.desktop.style.Texts;

/** How the picture is shown. */
public enum Display {
    FINISHED(Texts.of("display.finished"), Texts.of("display.finished.tip")),
    SAVED(Texts.of("display.saved"), Texts.of("display.saved.tip")),
    LINEAR(Texts.of("display.linear"), Texts.of("display.linear.tip")),
    STRETCHED(Texts.of("display.stretched"), Texts.of("display.stretched.tip")),
    RED(Texts.of("display.red"), Texts.of("display.red.tip")),
    GREEN(Texts.of("display.green"), Texts.of("display.green.tip")),
    BLUE(Texts.of("display.blue"), Texts.of("display.blue.tip")),
    FRINGES(Texts.of("display.fringes"), Texts.of("display.fringes.tip")),
    STRIP(Texts.of("display.strip"), Texts.of("display.strip.tip")),
    MAP(Texts.of("display.map"), Texts.of("display.map.tip")),
    TURNING(Texts.of("display.turning"), Texts.of("display.turning.tip"));

    private final String title;
    private final String meaning;

    Display(String title, String meaning) {
        this.title = title;
        this.meaning = meaning;
    }

    /** Whether it is made from the whole globe, which no quick picture has. */
    boolean isOfGlobe() {
        return this == MAP || this == TURNING;
    }

    public String title() {
        return title;
    }

    public String meaning() {
        return meaning;
    }
}
