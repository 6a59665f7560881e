package org.epochrome.desktop.picture;

/** What may be drawn over the picture. */
public enum Overlay {
    LIMB("L", "Limb", "The fitted limb"),
    GRATICULE("G", "Graticule", "Parallels and meridians, every 15 degrees; the equator thicker"),
    TERMINATOR("T", "Terminator", "Where the Sun rises or sets on the globe"),
    RINGS("R", "Rings", "Edges of Saturn's rings"),
    ARROWS("P", "Pole and zenith", "Where the planet's north pole and the zenith are"),
    DISPERSION("D", "Dispersion", "How far and whereto the air shifts each band, enlarged tenfold");

    private final String key;
    private final String title;
    private final String meaning;

    Overlay(String key, String title, String meaning) {
        this.key = key;
        this.title = title;
        this.meaning = meaning;
    }

    /** The key that shows and hides it. */
    public String key() {
        return key;
    }

    public String title() {
        return title;
    }

    String meaning() {
        return meaning;
    }
}
