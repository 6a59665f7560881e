package org.epochrome.desktop.plan;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.DatePicker;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.epochrome.desktop.control.KeptPreferences;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.TypedValues;
import org.epochrome.desktop.state.PlanInputs;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;

/** What a plan is made for: planet, date, site, telescope, seeing. */
final class PlanForm extends VBox {
    private final Preferences preferences;
    private final Runnable changed;
    private final ComboBox<Body> planet;
    private final DatePicker date = new DatePicker();
    private final Map<String, TextField> fields = new LinkedHashMap<>();
    private final ComboBox<Preferences.NamedSite> sites;
    private final ComboBox<KeptPreferences.NamedOptics> optics;
    private boolean filling;

    PlanForm(Preferences preferences, Runnable changed) {
        this.preferences = preferences;
        this.changed = changed;
        getStyleClass().add("plan-form");
        planet = Panel.comboBox("plan-planet", Texts.of("plan.planet.tip"), Body::displayName);
        planet.getItems().setAll(Body.values());
        planet.valueProperty().addListener((o, old, now) -> edited());
        date.setId("plan-date");
        date.setTooltip(new Tooltip(Texts.of("plan.date.tip")));
        date.setMaxWidth(Double.MAX_VALUE);
        date.setConverter(new IsoDate());
        date.valueProperty().addListener((o, old, now) -> edited());
        sites = Panel.comboBox("plan-sites", Texts.of("plan.sites.tip"), Preferences.NamedSite::name);
        sites.valueProperty().addListener((o, old, now) -> useSite(now));
        optics = Panel.comboBox("plan-optics", Texts.of("plan.optics.tip"), KeptPreferences.NamedOptics::name);
        optics.valueProperty().addListener((o, old, now) -> useOptics(now));
        GridPane what = Panel.grid();
        Panel.row(what, Texts.of("plan.planet"), planet);
        Panel.row(what, Texts.of("plan.date"), date);
        field(what, "offset", Texts.of("plan.offset"), Texts.of("plan.offset.tip"));
        GridPane where = Panel.grid();
        Panel.row(where, Texts.of("plan.sites"), sites);
        field(where, "latitude", Texts.of("plan.latitude"), Texts.of("plan.latitude.tip"));
        field(where, "longitude", Texts.of("plan.longitude"), Texts.of("plan.longitude.tip"));
        field(where, "height", Texts.of("plan.height"), Texts.of("plan.height.tip"));
        field(where, "horizon", Texts.of("plan.horizon"), Texts.of("plan.horizon.tip"));
        GridPane with = Panel.grid();
        Panel.row(with, Texts.of("plan.optics"), optics);
        field(with, "aperture", Texts.of("plan.aperture"), Texts.of("plan.aperture.tip"));
        field(with, "obstruction", Texts.of("plan.obstruction"), Texts.of("plan.obstruction.tip"));
        field(with, "focalLength", Texts.of("plan.focalLength"), Texts.of("plan.focalLength.tip"));
        field(with, "pixel", Texts.of("plan.pixel"), Texts.of("plan.pixel.tip"));
        field(with, "seeing", Texts.of("plan.seeing"), Texts.of("plan.seeing.tip"));
        field(with, "bands", Texts.of("plan.bands"), Texts.of("plan.bands.tip"));
        field(with, "feature", Texts.of("plan.feature"), Texts.of("plan.feature.tip"));
        getChildren()
                .addAll(
                        what,
                        Panel.heading(Texts.of("plan.site")),
                        where,
                        keep("plan-keep-site", Texts.of("plan.keepSite.tip"), this::keepSite),
                        Panel.heading(Texts.of("plan.telescope")),
                        with,
                        keep("plan-keep-optics", Texts.of("plan.keepOptics.tip"), this::keepOptics));
    }

    /** Shows what was typed last. */
    void fill(PlanInputs in, LocalDate night) {
        filling = true;
        planet.setValue(Body.named(in.planet()).orElse(null));
        date.setValue(night);
        set("latitude", in.latitude());
        set("longitude", in.longitude());
        set("height", in.height());
        set("offset", in.offset());
        set("aperture", in.aperture());
        set("obstruction", in.obstruction());
        set("focalLength", in.focalLength());
        set("pixel", in.pixel());
        set("seeing", in.seeing());
        set("bands", in.bands());
        set("horizon", in.horizon());
        set("feature", in.feature());
        sites.getItems().setAll(preferences.sites());
        optics.getItems().setAll(preferences.optics());
        filling = false;
    }

    PlanInputs inputs() {
        return new PlanInputs(
                planet.getValue() == null ? "" : planet.getValue().displayName(),
                text("latitude"),
                text("longitude"),
                text("height"),
                text("offset"),
                text("aperture"),
                text("obstruction"),
                text("focalLength"),
                text("pixel"),
                text("seeing"),
                text("bands"),
                text("horizon"),
                text("feature"));
    }

    LocalDate date() {
        return date.getValue();
    }

    private void edited() {
        if (!filling) {
            changed.run();
        }
    }

    private void set(String name, String value) {
        fields.get(name).setText(value);
    }

    private String text(String name) {
        return fields.get(name).getText();
    }

    private void field(GridPane grid, String name, String title, String teaches) {
        TextField field = new TextField();
        field.setId("plan-" + name);
        field.setTooltip(new Tooltip(teaches));
        field.textProperty().addListener((o, old, now) -> edited());
        fields.put(name, field);
        Panel.row(grid, title, field);
    }

    private void useSite(Preferences.NamedSite site) {
        if (site != null && !filling) {
            filling = true;
            set("latitude", Numbers.plain(site.site().latitudeDeg()));
            set("longitude", Numbers.plain(site.site().longitudeDeg()));
            set("height", Numbers.plain(site.site().heightM()));
            filling = false;
            changed.run();
        }
    }

    private void useOptics(KeptPreferences.NamedOptics o) {
        if (o != null && !filling) {
            filling = true;
            set("aperture", o.aperture());
            set("obstruction", o.obstruction());
            set("focalLength", o.focalLength());
            set("pixel", o.pixel());
            filling = false;
            changed.run();
        }
    }

    /** Takes the name under which something is kept. */
    private interface Keeping {
        void keep(String name);
    }

    private static HBox keep(String id, String teaches, Keeping keeping) {
        TextField name = new TextField();
        name.setId(id + "-name");
        name.setPromptText(Texts.of("plan.keep.name"));
        name.setTooltip(new Tooltip(teaches));
        name.setAccessibleText(teaches);
        HBox.setHgrow(name, Priority.ALWAYS);
        Button button = new Button(Texts.of("plan.keep"));
        button.setId(id);
        button.setTooltip(new Tooltip(teaches));
        button.setMinWidth(USE_PREF_SIZE);
        button.disableProperty().bind(name.textProperty().isEmpty());
        button.setOnAction(e -> {
            keeping.keep(name.getText().strip());
            name.clear();
        });
        name.setOnAction(e -> button.fire());
        return new HBox(6, name, button);
    }

    private void keepSite(String name) {
        try {
            Site site = new Site(
                    TypedValues.latitude(text("latitude")),
                    TypedValues.longitude(text("longitude")),
                    text("height").isBlank() ? 0 : Numbers.number(text("height")));
            preferences.keep(name, site);
            refill(() -> sites.getItems().setAll(preferences.sites()));
        } catch (IllegalArgumentException e) {
            // the page already says what is wrong with the fields
            edited();
        }
    }

    private void keepOptics(String name) {
        preferences.keep(new KeptPreferences.NamedOptics(
                name, text("aperture"), text("obstruction"), text("focalLength"), text("pixel")));
        refill(() -> optics.getItems().setAll(preferences.optics()));
    }

    private void refill(Runnable items) {
        filling = true;
        items.run();
        filling = false;
    }

    /** Dates as 2026-12-05, whatever the locale. */
    private static final class IsoDate extends StringConverter<LocalDate> {
        @Override
        public String toString(LocalDate value) {
            return value == null ? "" : value.toString();
        }

        @Override
        public LocalDate fromString(String text) {
            return text == null || text.isBlank() ? null : LocalDate.parse(text.strip());
        }
    }
}
