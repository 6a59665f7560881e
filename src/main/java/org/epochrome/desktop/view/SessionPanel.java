package org.epochrome.desktop.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import org.epochrome.atmosphere.Air;
import org.epochrome.desktop.bench.Bench;
import org.epochrome.desktop.bench.Remembered;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.Corrections;
import org.epochrome.session.Mirroring;
import org.epochrome.session.Mount;
import org.epochrome.session.Place;
import org.epochrome.session.Recipe;
import org.epochrome.session.Setup;
import org.epochrome.time.UtcText;

/** What holds for the session as a whole: planet, place, epoch, how the camera looked at the sky, which laws count. */
final class SessionPanel extends Panel {
    private static final String ZONAL = "zonal";

    private final Remembered remembered;
    private final ComboBox<Body> body;
    private final ComboBox<Remembered.NamedSite> sites;
    private final Entry latitude;
    private final Entry longitude;
    private final Entry height;
    private final Entry siteName;
    private final Entry epoch;
    private final Entry north;
    private final ComboBox<Mirroring> mirroring;
    private final ComboBox<Mount> mount;
    private final Entry scale;
    private final Entry telescopeName;
    private final ComboBox<Remembered.NamedTelescope> telescopes;
    private final Entry pressure;
    private final Entry temperature;
    private final Entry humidity;
    private final ComboBox<String> system;
    private final CheckBox turn;
    private final CheckBox dispersion;
    private final CheckBox unsmear;
    private final CheckBox moons;
    private final Label aspect = prose("");

    SessionPanel(Bench bench, Remembered remembered) {
        super(bench);
        this.remembered = remembered;
        body = choice(
                "body",
                "The planet",
                Arrays.asList(Body.values()),
                Body::displayName,
                b -> recipe(
                        "name the planet",
                        r -> new Recipe(
                                r.frames(),
                                b,
                                r.place(),
                                r.epoch(),
                                r.setup(),
                                Corrections.usual(b),
                                r.alignment(),
                                r.assignment())));
        epoch = new Entry(
                "epoch",
                "midway",
                "The instant that the picture shows, UTC. Empty: midway between the first and the last middle.",
                t -> recipe(
                        "set the epoch", r -> r.at(t.isBlank() ? Optional.empty() : Optional.of(UtcText.parse(t)))));
        Button midway = new Button("Midway");
        midway.setId("midway");
        midway.setMinWidth(USE_PREF_SIZE);
        midway.setTooltip(
                new Tooltip("Midway between the middles of the first and the last recording (M on the ribbon)"));
        midway.setOnAction(e -> recipe("put the epoch midway", r -> r.at(Optional.empty())));
        sites = choice(
                "sites",
                "Sites that you used before; the last one counts for new sessions",
                List.of(),
                Remembered.NamedSite::name,
                s -> setSite(s.site()));
        latitude = new Entry("latitude", "46.2", "Degrees, north positive", t -> site(t, 0));
        longitude = new Entry("longitude", "8.5", "Degrees, east positive; 70 degrees west is -70", t -> site(t, 1));
        height = new Entry("height", "480", "Metres above sea level", t -> site(t, 2));
        siteName = new Entry("site-name", "name it to keep it", "A name under which the site is kept", this::keepSite);
        north = new Entry(
                "north",
                "by the frames",
                "North angle of the reference frame: from image up to the planet's north pole, counter-clockwise positive."
                        + " Empty: found from the disk, rings or the motion of detail.",
                t -> recipe(
                        "set north",
                        r -> r.with(new Setup(
                                Numbers.optional(t),
                                r.setup().mirroring(),
                                r.setup().scaleArcsecPerPx(),
                                r.setup().mount()))));
        mirroring = choice(
                "mirrored",
                "Whether the frames have an odd number of reflections, as with a star diagonal",
                Arrays.asList(Mirroring.values()),
                m -> m == Mirroring.AUTO ? "by the frames" : m == Mirroring.YES ? "yes" : "no",
                m -> recipe(
                        "set the mirroring",
                        r -> r.with(new Setup(
                                r.setup().northDeg(),
                                m,
                                r.setup().scaleArcsecPerPx(),
                                r.setup().mount()))));
        mount = choice(
                "mount",
                "Equatorial: all frames are turned alike. Alt-azimuth: the field turns from frame to frame.",
                Arrays.asList(Mount.values()),
                m -> m == Mount.ALTAZ ? "alt-azimuth" : "equatorial",
                m -> recipe(
                        "set the mount",
                        r -> r.with(new Setup(
                                r.setup().northDeg(),
                                r.setup().mirroring(),
                                r.setup().scaleArcsecPerPx(),
                                m))));
        scale = new Entry(
                "scale",
                "by the disk",
                "Plate scale, arcsec per pixel, if you know it better than the disk shows it",
                t -> recipe(
                        "set the scale",
                        r -> r.with(new Setup(
                                r.setup().northDeg(),
                                r.setup().mirroring(),
                                Numbers.optional(t),
                                r.setup().mount()))));
        telescopes = choice(
                "telescopes",
                "Telescopes that you kept: mirroring, mount and plate scale at once",
                List.of(),
                Remembered.NamedTelescope::name,
                t -> recipe("choose the telescope", r -> r.with(t.on(r.setup()))));
        telescopeName = new Entry(
                "telescope-name",
                "name it to keep it",
                "A name under which mirroring, mount and plate scale are kept",
                this::keepTelescope);
        pressure = air(
                "pressure",
                "Air pressure at the site itself, not at sea level, hPa",
                (a, v) -> new Air(v, a.temperatureC(), a.relativeHumidity()));
        temperature = air(
                "temperature",
                "Air temperature, degrees Celsius",
                (a, v) -> new Air(a.pressureHpa(), v, a.relativeHumidity()));
        humidity = air(
                "humidity",
                "Relative humidity, per cent",
                (a, v) -> new Air(a.pressureHpa(), a.temperatureC(), v / 100));
        system = choice(
                "system",
                "The longitude system that the surface turns with; zonal: each latitude at its own rate",
                List.of(),
                s -> s,
                s -> corrections(
                        "set the rotation",
                        c -> new Corrections(
                                s.equals(ZONAL) ? Optional.empty() : Optional.of(RotationSystem.valueOf(s)),
                                c.turn(),
                                c.dispersion(),
                                c.unsmear(),
                                c.moons(),
                                c.spectrum())));
        turn = check(
                "turn",
                "Turn to the epoch",
                "Off: frames are only laid on each other, to see the difference",
                (c, on) -> new Corrections(c.system(), on, c.dispersion(), c.unsmear(), c.moons(), c.spectrum()));
        dispersion = check(
                "dispersion",
                "Reckon with dispersion",
                "How the air shifts and smears each band",
                (c, on) -> new Corrections(c.system(), c.turn(), on, c.unsmear(), c.moons(), c.spectrum()));
        unsmear = check(
                "unsmear",
                "Undo smear within bands",
                "Sharper blue low in the sky, at the price of more noise",
                (c, on) -> new Corrections(c.system(), c.turn(), c.dispersion(), on, c.moons(), c.spectrum()));
        moons = check(
                "moons",
                "Keep moons round",
                "Off: moons and their shadows turn with the globe, as if they lay on it",
                (c, on) -> new Corrections(c.system(), c.turn(), c.dispersion(), c.unsmear(), on, c.spectrum()));
        GridPane what = grid();
        row(what, "Planet", body);
        row(what, "Epoch (UTC)", epoch);
        row(what, "", midway);
        GridPane where = grid();
        row(where, "Site", sites);
        row(where, "Latitude", latitude);
        row(where, "Longitude", longitude);
        row(where, "Height (m)", height);
        row(where, "Keep as", siteName);
        row(where, "Pressure (hPa)", pressure);
        row(where, "Temperature (°C)", temperature);
        row(where, "Humidity (%)", humidity);
        GridPane how = grid();
        row(how, "North (°)", north);
        row(how, "Mirrored", mirroring);
        row(how, "Mount", mount);
        row(how, "Scale (\"/px)", scale);
        row(how, "Telescope", telescopes);
        row(how, "Keep as", telescopeName);
        row(how, "Rotation", system);
        getChildren()
                .addAll(
                        what,
                        aspect,
                        heading("Where the telescope stood"),
                        where,
                        heading("How the frames lie"),
                        how,
                        heading("What is corrected"),
                        turn,
                        dispersion,
                        unsmear,
                        moons);
    }

    private interface Switch {
        Corrections set(Corrections c, boolean on);
    }

    private CheckBox check(String id, String text, String teaches, Switch change) {
        CheckBox box = new CheckBox(text);
        box.setId(id);
        box.setTooltip(new Tooltip(teaches));
        box.selectedProperty().addListener((o, old, now) -> {
            if (byUser()) {
                corrections(text.toLowerCase(java.util.Locale.ROOT), c -> change.set(c, now));
            }
        });
        return box;
    }

    private interface AirChange {
        Air set(Air air, double value);
    }

    private Entry air(String id, String teaches, AirChange change) {
        return new Entry(id, "usual", teaches + "; empty: usual at the site's height", t -> {
            Air before = bench.draft()
                    .recipe()
                    .flatMap(r -> r.place().air())
                    .orElseGet(() -> Air.standardAt(bench.draft()
                            .recipe()
                            .flatMap(r -> r.place().site())
                            .map(Site::heightM)
                            .orElse(0.0)));
            Optional<Air> next = t.isBlank() ? Optional.empty() : Optional.of(change.set(before, Numbers.number(t)));
            recipe("set the air", r -> r.with(new Place(r.place().site(), next)));
        });
    }

    private void keepTelescope(String name) {
        bench.draft().recipe().ifPresent(r -> {
            remembered.keep(Remembered.NamedTelescope.of(name, r.setup()));
            refresh();
        });
        telescopeName.show("");
    }

    private void recipe(String name, UnaryOperator<Recipe> change) {
        bench.edit(name, d -> d.recipe(change));
    }

    private void corrections(String name, UnaryOperator<Corrections> change) {
        recipe(name, r -> r.with(change.apply(r.corrections())));
    }

    private void site(String text, int which) {
        double[] all = bench.draft()
                .recipe()
                .flatMap(r -> r.place().site())
                .map(s -> new double[] {s.latitudeDeg(), s.longitudeDeg(), s.heightM()})
                .orElseGet(() -> new double[] {typed(latitude), typed(longitude), typed(height)});
        all[which] = Numbers.number(text);
        boolean whole = Arrays.stream(all).limit(2).noneMatch(Double::isNaN);
        Site site = new Site(
                Double.isNaN(all[0]) ? 0 : all[0],
                Double.isNaN(all[1]) ? 0 : all[1],
                Double.isNaN(all[2]) ? 0 : all[2]);
        if (whole) {
            setSite(site);
        }
    }

    private static double typed(Entry entry) {
        return entry.getText().isBlank() ? Double.NaN : Numbers.number(entry.getText());
    }

    private void setSite(Site site) {
        bench.setUsualPlace(Place.at(site));
        remembered.use(site);
        recipe(
                "set the site",
                r -> r.with(new Place(Optional.of(site), r.place().air())));
    }

    private void keepSite(String name) {
        bench.draft().recipe().flatMap(r -> r.place().site()).ifPresent(site -> {
            remembered.keep(name, site);
            refresh();
        });
        siteName.show("");
    }

    @Override
    void renew() {
        Optional<Recipe> recipe = bench.draft().recipe();
        setDisable(recipe.isEmpty());
        recipe.ifPresent(this::show);
    }

    private void show(Recipe r) {
        body.setValue(r.body());
        epoch.show(
                bench.timetableProperty().get().map(t -> t.epoch().toString()).orElse(""));
        List<Remembered.NamedSite> known = remembered.sites();
        sites.getItems().setAll(known);
        Optional<Site> site = r.place().site();
        sites.setValue(
                site.flatMap(s -> known.stream().filter(k -> k.site().equals(s)).findFirst())
                        .orElse(null));
        sites.setPromptText(site.isPresent() ? "not kept yet" : known.isEmpty() ? "unknown" : "choose");
        latitude.show(site.map(s -> Numbers.plain(s.latitudeDeg())).orElse(""));
        longitude.show(site.map(s -> Numbers.plain(s.longitudeDeg())).orElse(""));
        height.show(site.map(s -> Numbers.plain(s.heightM())).orElse(""));
        north.show(Numbers.plain(r.setup().northDeg()));
        bench.combination()
                .ifPresent(c ->
                        north.setPromptText(Numbers.text("found: %.2f", c.disk().northAngleDeg())));
        mirroring.setValue(r.setup().mirroring());
        mount.setValue(r.setup().mount());
        scale.show(Numbers.plain(r.setup().scaleArcsecPerPx()));
        List<Remembered.NamedTelescope> kept = remembered.telescopes();
        telescopes.getItems().setAll(kept);
        telescopes.setValue(kept.stream()
                .filter(t -> t.on(r.setup()).equals(r.setup()))
                .findFirst()
                .orElse(null));
        telescopes.setPromptText(kept.isEmpty() ? "none kept" : "choose");
        Optional<Air> air = r.place().air();
        pressure.show(air.map(a -> Numbers.plain(a.pressureHpa())).orElse(""));
        temperature.show(air.map(a -> Numbers.plain(a.temperatureC())).orElse(""));
        humidity.show(air.map(a -> Numbers.plain(100 * a.relativeHumidity())).orElse(""));
        List<String> systems = new ArrayList<>();
        r.body().systems().forEach(s -> systems.add(s.name()));
        if (r.body() == Body.JUPITER || r.body() == Body.SATURN) {
            systems.add(ZONAL);
        }
        system.getItems().setAll(systems);
        system.setValue(r.corrections().system().map(Enum::name).orElse(ZONAL));
        turn.setSelected(r.corrections().turn());
        dispersion.setSelected(r.corrections().dispersion());
        unsmear.setSelected(r.corrections().unsmear());
        moons.setSelected(r.corrections().moons());
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
