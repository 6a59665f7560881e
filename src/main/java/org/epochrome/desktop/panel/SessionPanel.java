package org.epochrome.desktop.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.RecipeForm.Words;
import org.epochrome.desktop.style.Texts;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Encoding;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.time.UtcText;

/** What holds for the session as a whole: planet, place, epoch, how the camera looked at the sky, which laws count. */
public final class SessionPanel extends Panel {
    private static final String ZONAL = "zonal";

    private final Preferences preferences;
    private final List<RecipeForm> forms;
    private final Label aspect = prose("");

    public SessionPanel(Workspace bench, Preferences preferences) {
        super(bench);
        this.preferences = preferences;
        RecipeForm what = what();
        forms = List.of(what, new SiteForm(this, preferences), how(), corrected());
        getChildren().addAll(forms);
        what.getChildren().add(aspect);
    }

    private RecipeForm what() {
        RecipeForm form = new RecipeForm(this, "");
        form.choice(
                new Words("body", Texts.of("panel.session.planet"), Texts.of("panel.session.planet.tip")),
                Arrays.asList(Body.values()),
                Body::displayName,
                Recipe::body,
                Texts.of("step.planet"),
                Recipe::of);
        form.text(
                new Words("epoch", Texts.of("panel.session.epoch"), Texts.of("panel.session.epoch.tip")),
                Texts.of("panel.session.epoch.prompt"),
                r -> bench.epoch().map(Object::toString).orElse(""),
                Texts.of("step.epoch"),
                (r, t) -> r.at(t.isBlank() ? Optional.empty() : Optional.of(UtcText.parse(t))));
        Button midway = new Button(Texts.of("panel.session.midpoint"));
        midway.setId("midway");
        midway.setMinWidth(USE_PREF_SIZE);
        midway.setTooltip(new Tooltip(Texts.of("panel.session.midpoint.tip")));
        midway.setOnAction(e -> bench.edit(Texts.of("step.midpoint"), d -> d.recipe(r -> r.at(Optional.empty()))));
        form.row("", midway);
        return form;
    }

    private RecipeForm how() {
        RecipeForm form = new RecipeForm(this, Texts.of("panel.session.orientation"));
        FormField north = form.number(
                new Words("north", Texts.of("panel.session.north"), Texts.of("panel.session.north.tip")),
                Texts.of("panel.session.automatic"),
                r -> r.setup().northDeg(),
                Texts.of("step.north"),
                (r, v) -> r.with(r.setup().with(Setup::northDeg, v)));
        form.shows(r -> bench.combination()
                .ifPresent(c -> north.setPromptText(
                        Texts.of("panel.session.north.found", c.disk().northAngleDeg()))));
        form.choice(
                new Words("mirrored", Texts.of("panel.session.mirrored"), Texts.of("panel.session.mirrored.tip")),
                Arrays.asList(Mirroring.values()),
                m -> m == Mirroring.AUTO
                        ? Texts.of("panel.session.automatic")
                        : m == Mirroring.YES
                                ? Texts.of("panel.session.mirrored.yes")
                                : Texts.of("panel.session.mirrored.no"),
                r -> r.setup().mirroring(),
                Texts.of("step.mirroring"),
                (r, m) -> r.with(r.setup().with(Setup::mirroring, m)));
        form.choice(
                new Words("mount", Texts.of("panel.session.mount"), Texts.of("panel.session.mount.tip")),
                Arrays.asList(Mount.values()),
                m -> m == Mount.ALTAZ
                        ? Texts.of("panel.session.mount.altaz")
                        : Texts.of("panel.session.mount.equatorial"),
                r -> r.setup().mount(),
                Texts.of("step.mount"),
                (r, m) -> r.with(r.setup().with(Setup::mount, m)));
        form.number(
                new Words("scale", Texts.of("panel.session.scale"), Texts.of("panel.session.scale.tip")),
                Texts.of("panel.session.automatic"),
                r -> r.setup().scaleArcsecPerPx(),
                Texts.of("step.scale"),
                (r, v) -> r.with(r.setup().with(Setup::scaleArcsecPerPx, v)));
        form.text(
                new Words("encoding", Texts.of("panel.session.encoding"), Texts.of("panel.session.encoding.tip")),
                "linear",
                r -> r.frames().conventions().encoding().word(),
                Texts.of("step.encoding"),
                (r, t) -> r.with(r.frames().with(t.isBlank() ? Encoding.LINEAR : Encoding.of(t))));
        ComboBox<Preferences.NamedTelescope> telescopes = form.choice(
                new Words("telescopes", Texts.of("panel.session.telescope"), Texts.of("panel.session.telescope.tip")),
                r -> preferences.telescopes(),
                Preferences.NamedTelescope::name,
                r -> kept(preferences.telescopes(), t -> t.on(r.setup()).equals(r.setup())),
                Texts.of("step.telescope"),
                (r, t) -> r.with(t.on(r.setup())));
        form.shows(r -> telescopes.setPromptText(
                preferences.telescopes().isEmpty()
                        ? Texts.of("panel.session.telescope.none")
                        : Texts.of("panel.session.telescope.choose")));
        form.keep(
                "telescope-name",
                Texts.of("panel.session.telescope.save.tip"),
                name -> bench.draft()
                        .recipe()
                        .ifPresent(r -> preferences.keep(Preferences.NamedTelescope.of(name, r.setup()))),
                telescopes,
                preferences::forget);
        return form;
    }

    private RecipeForm corrected() {
        RecipeForm form = new RecipeForm(this, Texts.of("panel.session.corrections"));
        form.choice(
                new Words("system", Texts.of("panel.session.rotation"), Texts.of("panel.session.rotation.tip")),
                SessionPanel::systems,
                SessionPanel::title,
                r -> r.corrections().system().map(Enum::name).orElse(ZONAL),
                Texts.of("step.rotation"),
                (r, s) -> r.with(r.corrections()
                        .by(s.equals(ZONAL) ? Optional.empty() : Optional.of(RotationSystem.valueOf(s)))));
        form.check(
                new Words("turn", Texts.of("panel.session.turn"), Texts.of("panel.session.turn.tip")),
                Texts.of("step.turn"),
                Corrections::turn);
        form.check(
                new Words("dispersion", Texts.of("panel.session.dispersion"), Texts.of("panel.session.dispersion.tip")),
                Texts.of("step.dispersion"),
                Corrections::dispersion);
        form.check(
                new Words("unsmear", Texts.of("panel.session.unsmear"), Texts.of("panel.session.unsmear.tip")),
                r -> r.corrections().unsmear() == Extent.ALL,
                Texts.of("step.unsmear"),
                (r, on) -> r.with(r.corrections().with(Corrections::unsmear, on ? Extent.ALL : Extent.HALF)));
        form.check(
                new Words("moons", Texts.of("panel.session.moons"), Texts.of("panel.session.moons.tip")),
                Texts.of("step.moons"),
                Corrections::moons);
        return form;
    }

    private static List<String> systems(Recipe r) {
        List<String> systems = new ArrayList<>();
        r.body().systems().forEach(s -> systems.add(s.name()));
        if (r.body().wind().isPresent()) {
            systems.add(ZONAL);
        }
        return systems;
    }

    private static String title(String system) {
        return system.equals(ZONAL)
                ? Texts.of("panel.session.rotation.zonal")
                : system.equals(RotationSystem.SINGLE.name()) ? Texts.of("panel.session.rotation.single") : system;
    }

    /** What is kept and in use; null, as a box has it, if nothing is. */
    static <T> T kept(List<T> all, Predicate<T> inUse) {
        return all.stream().filter(inUse).findFirst().orElse(null);
    }

    @Override
    protected void renew() {
        Optional<Recipe> recipe = bench.draft().recipe();
        setDisable(recipe.isEmpty());
        recipe.ifPresent(r -> forms.forEach(form -> form.show(r)));
        bench.timetableProperty().get().ifPresent(t -> aspect.setText(described(t.aspect())));
    }

    private static String described(Aspect a) {
        StringBuilder text = new StringBuilder(Texts.of("panel.session.aspect.meridian"));
        a.body().systems().stream()
                .sorted()
                .forEach(s -> text.append(Texts.of(
                        "panel.session.aspect.longitude",
                        s == RotationSystem.SINGLE ? "" : s.key() + " ",
                        a.centralMeridianDeg(s))));
        text.append(Texts.of(
                "panel.session.aspect",
                a.equatorialDiameterArcsec(),
                a.poleAngleDeg(),
                a.subEarthLatitudeDeg(),
                a.phaseAngleDeg()));
        a.horizontal()
                .ifPresentOrElse(
                        h -> text.append(Texts.of("panel.session.aspect.altitude", h.altitudeDeg(), h.azimuthDeg())),
                        () -> text.append(Texts.of("panel.session.aspect.noSite")));
        return text.toString();
    }
}
