package org.epochrome.desktop.panel;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import javafx.scene.control.ComboBox;
import org.epochrome.atmosphere.Air;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;

/** Where the telescope stood, and the air there. */
final class SiteForm extends RecipeForm {
    private final Panel panel;
    private final Preferences preferences;

    SiteForm(Panel panel, Preferences preferences) {
        super(panel, Texts.of("panel.site"));
        this.panel = panel;
        this.preferences = preferences;
        ComboBox<Preferences.NamedSite> sites = choice(
                new Words("sites", Texts.of("panel.site.saved"), Texts.of("panel.site.saved.tip")),
                r -> preferences.sites(),
                Preferences.NamedSite::name,
                r -> SessionPanel.kept(
                        preferences.sites(), s -> r.place().site().equals(Optional.of(s.site()))),
                Texts.of("step.site"),
                (r, s) -> at(r, s.site()));
        shows(r -> sites.setPromptText(
                r.place().site().isPresent()
                        ? Texts.of("panel.site.unsaved")
                        : preferences.sites().isEmpty() ? Texts.of("panel.site.none") : Texts.of("panel.site.choose")));
        Typed typed = new Typed();
        typed.field(
                0, new Words("latitude", Texts.of("panel.site.latitude"), Texts.of("panel.site.latitude.tip")), "46.2");
        typed.field(
                1,
                new Words("longitude", Texts.of("panel.site.longitude"), Texts.of("panel.site.longitude.tip")),
                "8.5");
        typed.field(2, new Words("height", Texts.of("panel.site.height"), Texts.of("panel.site.height.tip")), "480");
        keep(
                "site-name",
                Texts.of("panel.site.save.tip"),
                name -> panel.bench
                        .draft()
                        .recipe()
                        .flatMap(r -> r.place().site())
                        .ifPresent(site -> preferences.keep(name, site)),
                sites,
                preferences::forget);
        air(
                new Words("pressure", Texts.of("panel.site.pressure"), Texts.of("panel.site.pressure.tip")),
                Air::pressureHpa,
                (a, v) -> a.with(Air::pressureHpa, v));
        air(
                new Words("temperature", Texts.of("panel.site.temperature"), Texts.of("panel.site.temperature.tip")),
                Air::temperatureC,
                (a, v) -> a.with(Air::temperatureC, v));
        air(
                new Words("humidity", Texts.of("panel.site.humidity"), Texts.of("panel.site.humidity.tip")),
                a -> 100 * a.relativeHumidity(),
                SiteForm::humid);
    }

    private static Air humid(Air air, double perCent) {
        if (!(perCent >= 0 && perCent <= 100)) {
            throw new IllegalArgumentException(Texts.of("panel.site.humidity.wrong"));
        }
        return air.with(Air::relativeHumidity, perCent / 100);
    }

    private Recipe at(Recipe r, Site site) {
        panel.bench.setBeginning(preferences.beginning());
        preferences.use(site);
        return r.with(r.place().with(Place::site, Optional.of(site)));
    }

    private interface AirChange {
        Air set(Air air, double value);
    }

    private void air(Words words, Function<Air, Double> get, AirChange change) {
        text(
                words,
                Texts.of("panel.site.standard"),
                r -> r.place().air().map(a -> Numbers.plain(get.apply(a))).orElse(""),
                Texts.of("step.air"),
                (r, t) -> {
                    double height = r.place().site().map(Site::heightM).orElse(0.0);
                    Air before = r.place().air().orElseGet(() -> Air.standardAt(height));
                    Optional<Air> next =
                            t.isBlank() ? Optional.empty() : Optional.of(change.set(before, Numbers.number(t)));
                    return r.with(r.place().with(Place::air, next));
                });
    }

    /** Latitude, longitude and height while they are typed; only latitude and longitude together make a site. */
    private final class Typed {
        private final OptionalDouble[] typed = {OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()};

        void field(int which, Words words, String prompt) {
            text(
                    words,
                    prompt,
                    r -> Numbers.plain(
                            r.place().site().map(s -> parts(s)[which]).orElse(typed[which])),
                    Texts.of("step.site"),
                    (r, t) -> {
                        OptionalDouble[] all = r.place().site().map(this::parts).orElse(typed);
                        all[which] = read(which, t);
                        return all[0].isPresent() && all[1].isPresent()
                                ? at(r, new Site(all[0].getAsDouble(), all[1].getAsDouble(), all[2].orElse(0)))
                                : r;
                    });
        }

        private static OptionalDouble read(int which, String text) {
            if (text.isBlank()) {
                return OptionalDouble.empty();
            }
            return OptionalDouble.of(
                    switch (which) {
                        case 0 -> TypedValues.latitude(text);
                        case 1 -> TypedValues.longitude(text);
                        default -> Numbers.number(text);
                    });
        }

        private OptionalDouble[] parts(Site s) {
            return new OptionalDouble[] {
                OptionalDouble.of(s.latitudeDeg()), OptionalDouble.of(s.longitudeDeg()), OptionalDouble.of(s.heightM())
            };
        }
    }
}
