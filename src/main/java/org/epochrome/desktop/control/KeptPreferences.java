package org.epochrome.desktop.control;

import java.util.List;
import org.epochrome.choice.Choices;
import org.epochrome.ephemeris.Site;

/**
 * What the file of preferences holds; null where nothing was kept.
 *
 * @param theme name of the theme
 * @param site that new sessions get
 * @param sites saved by name
 * @param telescopes saved by name
 * @param sessions files that were opened or saved, the newest first
 * @param equipment that new sessions get
 * @param asked whether the user was asked for site and equipment
 * @param window where the window was
 */
public record KeptPreferences(
        String theme,
        Site site,
        List<Preferences.NamedSite> sites,
        List<Preferences.NamedTelescope> telescopes,
        List<String> sessions,
        Equipment equipment,
        boolean asked,
        WindowPlace window)
        implements Choices<KeptPreferences> {
    static final KeptPreferences NOTHING =
            new KeptPreferences("DARK", null, List.of(), List.of(), List.of(), Equipment.UNKNOWN, false, null);

    /**
     * Where the window was, in the screen's coordinates.
     *
     * @param maximized whether it filled the screen
     */
    public record WindowPlace(double x, double y, double width, double height, boolean maximized) {}

    public KeptPreferences {
        theme = theme == null ? "DARK" : theme;
        telescopes = telescopes == null ? List.of() : List.copyOf(telescopes);
        sites = sites == null ? List.of() : List.copyOf(sites);
        sessions = sessions == null ? List.of() : List.copyOf(sessions);
        equipment = equipment == null ? Equipment.UNKNOWN : equipment;
    }
}
