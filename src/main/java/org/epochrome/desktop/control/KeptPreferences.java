package org.epochrome.desktop.control;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.epochrome.choice.Choices;
import org.epochrome.desktop.state.PlanInputs;
import org.epochrome.desktop.state.PlannedNight;
import org.epochrome.ephemeris.Body;
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
 * @param plan what was typed last on the page that plans a night
 * @param optics telescopes with cameras, saved by name on that page
 * @param planned the night whose plan is used
 */
public record KeptPreferences(
        String theme,
        Site site,
        List<Preferences.NamedSite> sites,
        List<Preferences.NamedTelescope> telescopes,
        List<String> sessions,
        Equipment equipment,
        boolean asked,
        WindowPlace window,
        PlanInputs plan,
        List<NamedOptics> optics,
        Planned planned)
        implements Choices<KeptPreferences> {
    static final KeptPreferences NOTHING = new KeptPreferences(
            "DARK", null, List.of(), List.of(), List.of(), Equipment.UNKNOWN, false, null, null, List.of(), null);

    /**
     * Where the window was, in the screen's coordinates.
     *
     * @param maximized whether it filled the screen
     */
    public record WindowPlace(double x, double y, double width, double height, boolean maximized) {}

    /**
     * A telescope with its camera, as typed on the page that plans a night: mm, per cent, mm, micrometres.
     *
     * @param name given by the user
     */
    public record NamedOptics(String name, String aperture, String obstruction, String focalLength, String pixel) {}

    /**
     * A night whose plan is used.
     *
     * @param body the planet's name
     * @param from noon before the night, UTC
     * @param until noon after the night, UTC
     * @param lengthsS longest recordings by band, seconds
     */
    public record Planned(String body, String from, String until, Map<String, Double> lengthsS) {
        static Planned of(PlannedNight night) {
            Map<String, Double> seconds = new TreeMap<>();
            night.lengths().forEach((band, length) -> seconds.put(band, length.toMillis() / 1000.0));
            return new Planned(
                    night.body().displayName(),
                    night.from().toString(),
                    night.until().toString(),
                    seconds);
        }

        /** The night; empty if the file of preferences was damaged. */
        Optional<PlannedNight> night() {
            try {
                Map<String, Duration> lengths = new TreeMap<>();
                lengthsS.forEach((band, s) -> lengths.put(band, Duration.ofMillis(Math.round(1000 * s))));
                return Body.named(body)
                        .map(b -> new PlannedNight(b, Instant.parse(from), Instant.parse(until), lengths));
            } catch (DateTimeException | NullPointerException e) {
                return Optional.empty();
            }
        }
    }

    public KeptPreferences {
        theme = theme == null ? "DARK" : theme;
        telescopes = telescopes == null ? List.of() : List.copyOf(telescopes);
        sites = sites == null ? List.of() : List.copyOf(sites);
        sessions = sessions == null ? List.of() : List.copyOf(sessions);
        optics = optics == null ? List.of() : List.copyOf(optics);
        equipment = equipment == null ? Equipment.UNKNOWN : equipment;
    }
}
