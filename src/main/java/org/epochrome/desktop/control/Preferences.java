package org.epochrome.desktop.control;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.state.PlanInputs;
import org.epochrome.desktop.state.PlannedNight;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.ephemeris.Site;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Setup;

/** What is kept from one start to the next: sites, sessions, the theme. A damaged file counts as none. */
public final class Preferences {
    private static final int MOST_SESSIONS = 8;
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private final Path file;
    private KeptPreferences kept;

    /** A site with its name. */
    public record NamedSite(String name, Site site) {}

    /**
     * A telescope with its name: what of a setup stays from night to night.
     *
     * @param scaleArcsecPerPx null if the disk shall tell it
     */
    public record NamedTelescope(String name, Mirroring mirroring, Mount mount, Double scaleArcsecPerPx) {
        public static NamedTelescope of(String name, Setup s) {
            Double scale = s.scaleArcsecPerPx().isPresent()
                    ? Double.valueOf(s.scaleArcsecPerPx().getAsDouble())
                    : null;
            return new NamedTelescope(name, s.mirroring(), s.mount(), scale);
        }

        /** A setup with this telescope; its north angle stays. */
        public Setup on(Setup s) {
            return new Setup(
                    s.northDeg(),
                    mirroring,
                    scaleArcsecPerPx == null ? OptionalDouble.empty() : OptionalDouble.of(scaleArcsecPerPx),
                    mount);
        }
    }

    /** @param folder where it is kept */
    public Preferences(Path folder) {
        file = folder.resolve("preferences.json");
        kept = read();
    }

    private KeptPreferences read() {
        try {
            return Files.exists(file)
                    ? MAPPER.readValue(Files.readAllBytes(file), KeptPreferences.class)
                    : KeptPreferences.NOTHING;
        } catch (IOException e) {
            return KeptPreferences.NOTHING;
        }
    }

    private void write(KeptPreferences next) {
        kept = next;
        try {
            Files.createDirectories(file.getParent());
            AtomicFile.write(
                    file,
                    true,
                    part -> Files.write(
                            part, MAPPER.writerWithDefaultPrettyPrinter().writeValueAsBytes(next)));
        } catch (IOException | OutputRefused e) {
            // Nothing is lost but a convenience.
        }
    }

    public String theme() {
        return kept.theme();
    }

    public void setTheme(String theme) {
        write(kept.with(KeptPreferences::theme, theme));
    }

    /** The site that new sessions get. */
    public Optional<Site> site() {
        return Optional.ofNullable(kept.site());
    }

    public void use(Site site) {
        write(kept.with(KeptPreferences::site, site));
    }

    public List<NamedSite> sites() {
        return kept.sites();
    }

    /** Keeps a site under a name; one of that name is exchanged. */
    public void keep(String name, Site site) {
        List<NamedSite> next = new ArrayList<>(
                kept.sites().stream().filter(s -> !s.name.equals(name)).toList());
        next.add(new NamedSite(name, site));
        write(kept.with(KeptPreferences::sites, next));
    }

    public void forget(NamedSite site) {
        write(kept.with(KeptPreferences::sites, without(kept.sites(), site)));
    }

    public List<NamedTelescope> telescopes() {
        return kept.telescopes();
    }

    /** Keeps a telescope; one of that name is exchanged. */
    public void keep(NamedTelescope telescope) {
        List<NamedTelescope> next = new ArrayList<>(kept.telescopes().stream()
                .filter(t -> !t.name.equals(telescope.name))
                .toList());
        next.add(telescope);
        write(kept.with(KeptPreferences::telescopes, next));
    }

    public void forget(NamedTelescope telescope) {
        write(kept.with(KeptPreferences::telescopes, without(kept.telescopes(), telescope)));
    }

    private static <T> List<T> without(List<T> all, T one) {
        return all.stream().filter(other -> !other.equals(one)).toList();
    }

    /** Sessions that were saved or opened, the newest first, as far as they are still there. */
    public List<Path> sessions() {
        return kept.sessions().stream().map(Path::of).filter(Files::exists).toList();
    }

    public void opened(Path session) {
        List<String> next = new ArrayList<>();
        next.add(session.toAbsolutePath().toString());
        kept.sessions().stream()
                .filter(s -> !next.contains(s))
                .limit(MOST_SESSIONS - 1)
                .forEach(next::add);
        write(kept.with(KeptPreferences::sessions, next));
    }

    /** What new sessions get besides the site. */
    public Equipment equipment() {
        return kept.equipment();
    }

    /** Keeps what was answered when the window asked for site and equipment; it does not ask again by itself. */
    public void answered(Optional<Site> site, Equipment equipment) {
        write(kept.with(KeptPreferences::site, site.orElse(null))
                .with(KeptPreferences::equipment, equipment)
                .with(KeptPreferences::asked, true));
    }

    /** Whether the window asked for site and equipment. */
    public boolean asked() {
        return kept.asked();
    }

    /** Remembers not to ask again. */
    public void setAsked() {
        write(kept.with(KeptPreferences::asked, true));
    }

    /** Where the window was when it was closed. */
    public Optional<KeptPreferences.WindowPlace> window() {
        return Optional.ofNullable(kept.window());
    }

    public void setWindow(KeptPreferences.WindowPlace place) {
        write(kept.with(KeptPreferences::window, place));
    }

    /** What was typed last on the page that plans a night, completed by site and equipment. */
    public PlanInputs plan() {
        return Optional.ofNullable(kept.plan()).orElseGet(this::firstPlan);
    }

    private PlanInputs firstPlan() {
        PlanInputs first = PlanInputs.USUAL;
        if (site().isPresent()) {
            Site at = site().get();
            first = first.with(PlanInputs::latitude, Numbers.plain(at.latitudeDeg()))
                    .with(PlanInputs::longitude, Numbers.plain(at.longitudeDeg()))
                    .with(PlanInputs::height, Numbers.plain(at.heightM()));
        }
        Equipment e = kept.equipment();
        if (e.apertureMm() != null) {
            first = first.with(PlanInputs::aperture, Numbers.plain(e.apertureMm()));
        }
        if (e.focalLengthMm() != null) {
            first = first.with(PlanInputs::focalLength, Numbers.plain(e.focalLengthMm()));
        }
        if (e.pixelUm() != null) {
            first = first.with(PlanInputs::pixel, Numbers.plain(e.pixelUm()));
        }
        return e.utcOffset() == null ? first : first.with(PlanInputs::offset, e.utcOffset());
    }

    /** Remembers what was typed. */
    public void setPlan(PlanInputs plan) {
        if (!plan.equals(kept.plan())) {
            write(kept.with(KeptPreferences::plan, plan));
        }
    }

    public List<KeptPreferences.NamedOptics> optics() {
        return kept.optics();
    }

    /** Keeps a telescope with its camera for plans; one of that name is exchanged. */
    public void keep(KeptPreferences.NamedOptics optics) {
        List<KeptPreferences.NamedOptics> next = new ArrayList<>(kept.optics().stream()
                .filter(o -> !o.name().equals(optics.name()))
                .toList());
        next.add(optics);
        write(kept.with(KeptPreferences::optics, next));
    }

    /** Lets the frames of a night be compared with its plan. */
    public void setPlanned(PlannedNight night) {
        write(kept.with(KeptPreferences::planned, KeptPreferences.Planned.of(night)));
    }

    /** What new sessions begin with. */
    public Draft.Beginning beginning() {
        return new Draft.Beginning(
                site().map(Place::at).orElse(Place.UNKNOWN),
                kept.equipment().clock(),
                Optional.ofNullable(kept.planned()).flatMap(KeptPreferences.Planned::night));
    }
}
