package org.epochrome.desktop.style;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.util.Objects;
import javafx.scene.Parent;

/** How the window looks. */
public enum Theme {
    DARK(Texts.of("theme.dark"), new PrimerDark().getUserAgentStylesheet(), "dark", Palette.DARK),
    LIGHT(Texts.of("theme.light"), new PrimerLight().getUserAgentStylesheet(), "light", Palette.LIGHT),
    /** Red on black, to keep eyes used to the dark beside the telescope. */
    NIGHT(Texts.of("theme.red"), new PrimerDark().getUserAgentStylesheet(), "night", Palette.RED);

    private final String title;
    private final String base;
    private final String styleClass;
    private final Palette palette;

    Theme(String title, String base, String styleClass, Palette palette) {
        this.title = title;
        this.base = base;
        this.styleClass = styleClass;
        this.palette = palette;
    }

    public String title() {
        return title;
    }

    public Palette palette() {
        return palette;
    }

    /** The stylesheet of the controls. */
    public String base() {
        return base;
    }

    /** Marks a scene's root, so that the workbench's own stylesheet takes this theme's colours. */
    public void on(Parent root) {
        for (Theme theme : values()) {
            root.getStyleClass().remove(theme.styleClass);
        }
        root.getStyleClass().add(styleClass);
    }

    /** The workbench's own stylesheet. */
    public static String own() {
        return Objects.requireNonNull(Theme.class.getResource("workbench.css")).toExternalForm();
    }

    /** The theme of a name, or the dark one. */
    public static Theme named(String name) {
        for (Theme theme : values()) {
            if (theme.name().equals(name)) {
                return theme;
            }
        }
        return DARK;
    }
}
