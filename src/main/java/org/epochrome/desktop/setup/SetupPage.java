package org.epochrome.desktop.setup;

import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.Equipment;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.TypedValues;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.session.recipe.Place;

/** Asks once for what stays from night to night, and changes it later. Nothing counts until all of it is saved. */
public final class SetupPage extends VBox {
    private final Workspace bench;
    private final Preferences preferences;
    private final ComboBox<Body> planet =
            Panel.comboBox("setup-planet", Texts.of("setup.planet.tip"), Body::displayName);
    private final Label planetName = new Label(Texts.of("setup.planet"));
    private final ComboBox<TimestampMeaning> meaning =
            Panel.comboBox("setup-meaning", Texts.of("setup.meaning.tip"), SetupPage::title);
    private final Map<String, TextField> fields = new LinkedHashMap<>();
    private final Map<String, String> titles = new HashMap<>();
    private final Label wrong = Panel.prose("");
    private final Label scale = Panel.prose("");

    public SetupPage(Workspace bench, Preferences preferences) {
        this.bench = bench;
        this.preferences = preferences;
        getStyleClass().add("setup");
        setId("setup");
        planet.getItems().setAll(Body.values());
        meaning.getItems().setAll(TimestampMeaning.values());
        wrong.getStyleClass().add("doubt");
        wrong.setId("setup-wrong");
        Label title = new Label(Texts.of("setup"));
        title.getStyleClass().add("side-title");
        title.setMinWidth(USE_PREF_SIZE);
        GridPane grid = Panel.grid();
        planetName.getStyleClass().add("name");
        planetName.setMinWidth(USE_PREF_SIZE);
        planetName.setLabelFor(planet);
        planet.setAccessibleText(planetName.getText());
        grid.addRow(0, planetName, planet);
        field(
                grid,
                "latitude",
                Texts.of("setup.latitude"),
                Texts.of("setup.latitude.tip"),
                Texts.of("setup.latitude.prompt"));
        field(
                grid,
                "longitude",
                Texts.of("setup.longitude"),
                Texts.of("setup.longitude.tip"),
                Texts.of("setup.longitude.prompt"));
        field(grid, "height", Texts.of("setup.height"), Texts.of("setup.height.tip"), Texts.of("setup.height.prompt"));
        Panel.row(grid, Texts.of("setup.meaning"), meaning);
        field(grid, "length", Texts.of("setup.length"), Texts.of("setup.length.tip"), Texts.of("setup.length.prompt"));
        field(grid, "offset", Texts.of("setup.offset"), Texts.of("setup.offset.tip"), Texts.of("setup.offset.prompt"));
        field(
                grid,
                "aperture",
                Texts.of("setup.aperture"),
                Texts.of("setup.aperture.tip"),
                Texts.of("setup.aperture.prompt"));
        field(
                grid,
                "focalLength",
                Texts.of("setup.focalLength"),
                Texts.of("setup.focalLength.tip"),
                Texts.of("setup.focalLength.prompt"));
        field(grid, "pixel", Texts.of("setup.pixel"), Texts.of("setup.pixel.tip"), Texts.of("setup.pixel.prompt"));
        Button save = new Button(Texts.of("setup.save"));
        save.setId("setup-save");
        save.getStyleClass().add("accent");
        save.setDefaultButton(false);
        save.setOnAction(e -> save());
        Button later = new Button(Texts.of("setup.later"));
        later.setId("setup-later");
        later.setMinWidth(USE_PREF_SIZE);
        later.setOnAction(e -> leave());
        save.setMinWidth(USE_PREF_SIZE);
        HBox buttons = new HBox(8, save, later);
        buttons.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(title, Panel.prose(Texts.of("setup.help")), grid, scale, wrong, buttons);
        setVisible(false);
        bench.draftProperty().addListener((o, old, now) -> {
            showPlanet();
            if (!preferences.asked()
                    && lacksSite()
                    && (old.isEmpty() || old.session().isEmpty())) {
                open();
            }
        });
    }

    /** With a bar to scroll by, where the window is small. */
    public ScrollPane scrolled() {
        return Panel.overPicture(this, 560);
    }

    /** What a moment of the recording is called. */
    public static String title(TimestampMeaning m) {
        return switch (m) {
            case START -> Texts.of("setup.meaning.start");
            case MIDDLE -> Texts.of("setup.meaning.middle");
            case END -> Texts.of("setup.meaning.end");
        };
    }

    private void field(GridPane grid, String name, String title, String teaches, String prompt) {
        TextField field = new TextField();
        field.setId("setup-" + name);
        field.setPromptText(prompt);
        field.setTooltip(new Tooltip(teaches));
        field.setOnAction(e -> save());
        field.textProperty().addListener((o, old, now) -> showScale());
        fields.put(name, field);
        titles.put(name, title);
        Panel.row(grid, title, field);
    }

    private boolean lacksSite() {
        return !bench.draft().isEmpty()
                && bench.draft().recipe().flatMap(r -> r.place().site()).isEmpty();
    }

    /** Shows the page with what is known. */
    public void open() {
        Optional<Site> site = preferences.site();
        Equipment known = preferences.equipment();
        show("latitude", site.map(Site::latitudeDeg));
        show("longitude", site.map(Site::longitudeDeg));
        show("height", site.map(Site::heightM));
        meaning.setValue(known.meaning());
        fields.get("length")
                .setText(known.clock().exposure().map(TypedValues::text).orElse(""));
        fields.get("offset").setText(known.utcOffset() == null ? "" : known.utcOffset());
        show("aperture", Optional.ofNullable(known.apertureMm()));
        show("focalLength", Optional.ofNullable(known.focalLengthMm()));
        show("pixel", Optional.ofNullable(known.pixelUm()));
        Panel.say(wrong, "");
        showPlanet();
        showScale();
        setVisible(true);
        fields.get("latitude").requestFocus();
    }

    private void show(String name, Optional<Double> value) {
        fields.get(name).setText(value.map(Numbers::plain).orElse(""));
    }

    private void showPlanet() {
        boolean asks =
                bench.draft().session().isEmpty() && !bench.draft().loose().isEmpty();
        planet.setVisible(asks);
        planet.setManaged(asks);
        planetName.setVisible(asks);
        planetName.setManaged(asks);
    }

    private void showScale() {
        try {
            Panel.say(
                    scale,
                    equipment().scaleArcsecPerPx().stream()
                            .mapToObj(s -> Texts.of("setup.scale", s))
                            .findFirst()
                            .orElse(""));
        } catch (IllegalArgumentException e) {
            Panel.say(scale, "");
        }
    }

    private void leave() {
        preferences.setAsked();
        setVisible(false);
    }

    private void save() {
        Optional<Site> site;
        Equipment equipment;
        try {
            site = site();
            equipment = equipment();
        } catch (IllegalArgumentException e) {
            Panel.say(wrong, e.getMessage());
            return;
        }
        boolean otherClock = !preferences.equipment().clock().equals(equipment.clock());
        preferences.answered(site, equipment);
        bench.setBeginning(preferences.beginning());
        setVisible(false);
        Optional.ofNullable(planet.isVisible() ? planet.getValue() : null).ifPresent(bench::name);
        if (lacksSite() && site.isPresent()) {
            bench.edit(Texts.of("step.site"), d -> d.recipe(r -> r.with(Place.at(site.get()))));
        }
        if (otherClock && !bench.draft().isEmpty()) {
            bench.setClock(equipment.clock());
        }
    }

    /** The site; empty if nothing is typed. A part of one is refused. */
    private Optional<Site> site() {
        boolean latitude = isTyped("latitude");
        boolean longitude = isTyped("longitude");
        if (!latitude && !longitude && !isTyped("height")) {
            return Optional.empty();
        }
        if (!latitude || !longitude) {
            throw new IllegalArgumentException(Texts.of("setup.halfSite"));
        }
        return Optional.of(new Site(
                read("latitude", TypedValues::latitude),
                read("longitude", TypedValues::longitude),
                isTyped("height") ? read("height", Numbers::number) : 0));
    }

    private Equipment equipment() {
        boolean timed = isTyped("length");
        if (timed && meaning.getValue() == null) {
            throw new IllegalArgumentException(Texts.of("setup.noMeaning"));
        }
        ZoneOffset offset = read("offset", TypedValues::offset);
        return new Equipment(
                meaning.getValue(),
                timed ? read("length", TypedValues::length).toMillis() / 1000.0 : null,
                offset.equals(ZoneOffset.UTC) ? null : offset.getId(),
                positive("aperture"),
                positive("focalLength"),
                positive("pixel"));
    }

    private Double positive(String name) {
        if (!isTyped(name)) {
            return null;
        }
        double value = read(name, Numbers::number);
        if (!(value > 0)) {
            throw new IllegalArgumentException(named(name, Texts.of("panel.field.notANumber")));
        }
        return value;
    }

    private boolean isTyped(String name) {
        return !fields.get(name).getText().isBlank();
    }

    private <T> T read(String name, Function<String, T> reading) {
        try {
            return reading.apply(fields.get(name).getText());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(named(name, Texts.of("panel.field.notANumber")), e);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(named(name, e.getMessage()), e);
        }
    }

    private String named(String name, String sentence) {
        return Texts.of("setup.wrong", titles.get(name), sentence);
    }
}
