package org.epochrome.desktop.render;

/** How the picture is shown. */
public enum Display {
    FINISHED("Finished", "The picture as it will be saved"),
    SAVED("As saved", "Cropped, turned and with its caption, as the page Framing says"),
    LINEAR("Linear", "Light as it was measured, black at zero: for the eye too dark, but nothing is bent"),
    STRETCHED("Stretched", "Faint light lifted: shows the sky, the limb and what lies beyond it"),
    RED("Red band", "What is shown as red, in grey"),
    GREEN("Green band", "What is shown as green, in grey"),
    BLUE("Blue band", "What is shown as blue, in grey"),
    FRINGES("Limb fringes", "Where colours part at the limb, amplified; grey means none"),
    STRIP("Limb unrolled", "The limb all around, stretched across: bands that lie apart show as coloured edges");

    private final String title;
    private final String meaning;

    Display(String title, String meaning) {
        this.title = title;
        this.meaning = meaning;
    }

    public String title() {
        return title;
    }

    public String meaning() {
        return meaning;
    }
}
