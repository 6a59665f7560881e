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
import org.epochrome.desktop.style.Numbers;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Encoding;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.time.UtcText;

/** What holds for the session as a whole: planet, place, epoch, how the camera looked at the sky, which laws count. */
public final class SessionPanel extends Panel {
    private static final String ZONAL = "zonal";

    private final Preferences remembered;
    private final List<RecipeForm> forms;
    private final Label aspect = prose("");

    public SessionPanel(Workspace bench, Preferences remembered) {
        super(bench);
        this.remembered = remembered;
        RecipeForm what = what();
        forms = List.of(what, new SiteForm(this, remembered), how(), corrected());
        getChildren().addAll(forms);
        what.getChildren().add(aspect);
    }

    private RecipeForm what() {
        RecipeForm form = new RecipeForm(this, "");
        form.choice(
                new Words("body", "Planet", "The planet"),
                Arrays.asList(Body.values()),
                Body::displayName,
                Recipe::body,
                "name the planet",
                Recipe::of);
        form.text(
                new Words(
                        "epoch",
                        "Epoch (UTC)",
                        "The instant that the picture shows, UTC. Empty: midway between the first and the last middle."),
                "midway",
                r -> bench.epoch().map(Object::toString).orElse(""),
                "set the epoch",
                (r, t) -> r.at(t.isBlank() ? Optional.empty() : Optional.of(UtcText.parse(t))));
        Button midway = new Button("Midway");
        midway.setId("midway");
        midway.setMinWidth(USE_PREF_SIZE);
        midway.setTooltip(
                new Tooltip("Midway between the middles of the first and the last recording (M on the ribbon)"));
        midway.setOnAction(e -> bench.edit("put the epoch midway", d -> d.recipe(r -> r.at(Optional.empty()))));
        form.row("", midway);
        return form;
    }

    private RecipeForm how() {
        RecipeForm form = new RecipeForm(this, "How the frames lie");
        FormField north = form.number(
                new Words(
                        "north",
                        "North (°)",
                        "North angle of the reference frame: from image up to the planet's north pole, counter-clockwise"
                                + " positive. Empty: found from the disk, rings or the motion of detail."),
                "by the frames",
                r -> r.setup().northDeg(),
                "set north",
                (r, v) -> r.with(r.setup().north(v)));
        form.shows(r -> bench.combination()
                .ifPresent(c ->
                        north.setPromptText(Numbers.text("found: %.2f", c.disk().northAngleDeg()))));
        form.choice(
                new Words(
                        "mirrored",
                        "Mirrored",
                        "Whether the frames have an odd number of reflections, as with a star diagonal"),
                Arrays.asList(Mirroring.values()),
                m -> m == Mirroring.AUTO ? "by the frames" : m == Mirroring.YES ? "yes" : "no",
                r -> r.setup().mirroring(),
                "set the mirroring",
                (r, m) -> r.with(r.setup().with(m)));
        form.choice(
                new Words(
                        "mount",
                        "Mount",
                        "Equatorial: all frames are turned alike. Alt-azimuth: the field turns from frame to frame."),
                Arrays.asList(Mount.values()),
                m -> m == Mount.ALTAZ ? "alt-azimuth" : "equatorial",
                r -> r.setup().mount(),
                "set the mount",
                (r, m) -> r.with(r.setup().with(m)));
        form.number(
                new Words(
                        "scale",
                        "Scale (\"/px)",
                        "Plate scale, arcsec per pixel, if you know it better than the disk shows it"),
                "by the disk",
                r -> r.setup().scaleArcsecPerPx(),
                "set the scale",
                (r, v) -> r.with(r.setup().scale(v)));
        form.text(
                new Words(
                        "encoding",
                        "Encoding",
                        "How the samples of the frames stand for light: linear, srgb or gamma=2.2; undone when they are"
                                + " read"),
                "linear",
                r -> r.frames().conventions().encoding().word(),
                "set the encoding",
                (r, t) -> r.with(r.frames().with(t.isBlank() ? Encoding.LINEAR : Encoding.of(t))));
        ComboBox<Preferences.NamedTelescope> telescopes = form.choice(
                new Words(
                        "telescopes",
                        "Telescope",
                        "Telescopes that you kept: mirroring, mount and plate scale at once"),
                r -> remembered.telescopes(),
                Preferences.NamedTelescope::name,
                r -> kept(remembered.telescopes(), t -> t.on(r.setup()).equals(r.setup())),
                "choose the telescope",
                (r, t) -> r.with(t.on(r.setup())));
        form.shows(r -> telescopes.setPromptText(remembered.telescopes().isEmpty() ? "none kept" : "choose"));
        form.keep(
                "telescope-name",
                "A name under which mirroring, mount and plate scale are kept",
                name -> bench.draft()
                        .recipe()
                        .ifPresent(r -> remembered.keep(Preferences.NamedTelescope.of(name, r.setup()))),
                telescopes,
                remembered::forget);
        return form;
    }

    private RecipeForm corrected() {
        RecipeForm form = new RecipeForm(this, "What is corrected");
        form.choice(
                new Words(
                        "system",
                        "Rotation",
                        "The longitude system that the surface turns with; zonal: each latitude at its own rate"),
                SessionPanel::systems,
                s -> s,
                r -> r.corrections().system().map(Enum::name).orElse(ZONAL),
                "set the rotation",
                (r, s) -> r.with(r.corrections()
                        .by(s.equals(ZONAL) ? Optional.empty() : Optional.of(RotationSystem.valueOf(s)))));
        form.check(
                new Words(
                        "turn", "Turn to the epoch", "Off: frames are only laid on each other, to see the difference"),
                r -> r.corrections().turn(),
                (r, on) -> r.with(r.corrections().turned(on)));
        form.check(
                new Words("dispersion", "Reckon with dispersion", "How the air shifts and smears each band"),
                r -> r.corrections().dispersion(),
                (r, on) -> r.with(r.corrections().dispersed(on)));
        form.check(
                new Words(
                        "unsmear",
                        "Undo all smear within bands",
                        "Off: half of a long smear. On: sharper blue low in the sky, at the price of more noise"),
                r -> r.corrections().unsmear() == Extent.ALL,
                (r, on) -> r.with(r.corrections().unsmeared(on ? Extent.ALL : Extent.HALF)));
        form.check(
                new Words(
                        "moons",
                        "Keep moons round",
                        "Off: moons and their shadows turn with the globe, as if they lay on it"),
                r -> r.corrections().moons(),
                (r, on) -> r.with(r.corrections().roundMoons(on)));
        return form;
    }

    private static List<String> systems(Recipe r) {
        List<String> systems = new ArrayList<>();
        r.body().systems().forEach(s -> systems.add(s.name()));
        if (r.body() == Body.JUPITER || r.body() == Body.SATURN) {
            systems.add(ZONAL);
        }
        return systems;
    }

    /** What is kept and in use; null, as a box has it, if nothing is. */
    static <T> T kept(List<T> all, Predicate<T> inUse) {
        return all.stream().filter(inUse).findFirst().orElse(null);
    }

    @Override
    void renew() {
        Optional<Recipe> recipe = bench.draft().recipe();
        setDisable(recipe.isEmpty());
        recipe.ifPresent(r -> forms.forEach(form -> form.show(r)));
        bench.timetableProperty().get().ifPresent(t -> aspect.setText(described(t.aspect())));
    }

    private static String described(Aspect a) {
        StringBuilder text = new StringBuilder("CM");
        a.body().systems().stream()
                .sorted()
                .forEach(s -> text.append(Numbers.text(
                        "  %s%.2f°", s == RotationSystem.SINGLE ? "" : s.key() + " ", a.centralMeridianDeg(s))));
        text.append(Numbers.text(
                "%nDiameter %.2f\", P %.2f°%nSub-Earth latitude %.2f°, phase angle %.2f°",
                a.equatorialDiameterArcsec(), a.poleAngleDeg(), a.subEarthLatitudeDeg(), a.phaseAngleDeg()));
        a.horizontal()
                .ifPresentOrElse(
                        h -> text.append(
                                Numbers.text("%nAltitude %.1f°, azimuth %.1f°", h.altitudeDeg(), h.azimuthDeg())),
                        () -> text.append("\nWithout a site the air's dispersion is not known."));
        return text.toString();
    }
}
