package org.epochrome.desktop.picture;

import org.epochrome.desktop.style.Texts;

/** What may be drawn over the picture. */
public enum Overlay {
    LIMB("L", Texts.of("overlay.limb")),
    GRATICULE("G", Texts.of("overlay.graticule")),
    TERMINATOR("T", Texts.of("overlay.terminator")),
    RINGS("R", Texts.of("overlay.rings")),
    ARROWS("P", Texts.of("overlay.arrows")),
    DISPERSION("D", Texts.of("overlay.dispersion"));

    private final String key;
    private final String title;

    Overlay(String key, String title) {
        this.key = key;
        this.title = title;
    }

    /** The key that shows and hides it. */
    public String key() {
        return key;
    }

    public String title() {
        return title;
    }
}
