package org.epochrome.desktop.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.FormField;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.TypedValues;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.state.Lacking;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Setup;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** The lines over the picture: what went wrong, with fields for what is missing; sessions kept apart; questions. */
final class MessageBars extends VBox {
    private static final String OTHERS = "other-session";
    private static final int MOST_OTHERS = 3;

    private final Workspace bench;
    private final Workbench workbench;
    private String latitude = "";
    private String longitude = "";

    MessageBars(Workspace bench, Workbench workbench) {
        this.bench = bench;
        this.workbench = workbench;
        bench.problemProperty().addListener((o, old, now) -> showProblem(now));
        bench.draftProperty().addListener((o, old, now) -> {
            if (!bench.unsaved()) {
                remove("unsaved");
            }
            if (!old.others().equals(now.others())) {
                showOthers(now.others());
            }
        });
    }

    void remove(String id) {
        getChildren().removeIf(n -> id.equals(n.getId()));
    }

    /** A sentence and what can be done about it. */
    HBox add(String id, String sentence, List<? extends Node> controls) {
        Label text = Panel.prose(sentence);
        HBox.setHgrow(text, Priority.ALWAYS);
        text.setMaxWidth(Double.MAX_VALUE);
        HBox bar = new HBox(10, text);
        for (Node control : controls) {
            ((Region) control).setMinWidth(USE_PREF_SIZE);
            bar.getChildren().add(control);
        }
        bar.setAlignment(Pos.CENTER_LEFT);
        bar.setId(id);
        bar.getStyleClass().add("message");
        getChildren().add(bar);
        return bar;
    }

    private void showProblem(String sentence) {
        remove("problem");
        if (sentence.isEmpty()) {
            return;
        }
        List<Node> controls = new ArrayList<>();
        bench.problem().lack().ifPresent(lack -> controls.addAll(fields(lack)));
        OptionalInt frame = bench.problem().frame(bench.draft().frames());
        frame.ifPresent(i -> controls.add(button("show-frame", Texts.of("message.showFrame"), () -> {
            bench.select(Topic.FRAME);
            bench.selectFrame(i);
        })));
        Button close = new Button("", new FontIcon(Feather.X));
        close.getStyleClass().add("flat");
        close.setAccessibleText(Texts.of("message.close"));
        close.setTooltip(new Tooltip(Texts.of("message.close")));
        close.setOnAction(e -> bench.dismissProblem());
        controls.add(close);
        add("problem", sentence, controls);
    }

    private List<Node> fields(Lacking lack) {
        if (lack == Lacking.NORTH) {
            return List.of(
                    field("message-north", Texts.of("panel.session.north"), Texts.of("panel.session.north.tip"), t -> {
                        double north = Numbers.number(t);
                        bench.edit(
                                Texts.of("step.north"),
                                d -> d.recipe(r ->
                                        r.with(r.setup().with(Setup::northDeg, java.util.OptionalDouble.of(north)))));
                    }));
        }
        return List.of(
                field(
                        "message-latitude",
                        Texts.of("panel.site.latitude"),
                        Texts.of("panel.site.latitude.tip"),
                        t -> site(t, longitude)),
                field(
                        "message-longitude",
                        Texts.of("panel.site.longitude"),
                        Texts.of("panel.site.longitude.tip"),
                        t -> site(latitude, t)));
    }

    private static FormField field(
            String id, String prompt, String teaches, java.util.function.Consumer<String> taken) {
        FormField field = new FormField(id, prompt, teaches, taken);
        field.setPrefColumnCount(9);
        return field;
    }

    /** Half of a site starts nothing. */
    private void site(String newLatitude, String newLongitude) {
        double lat = newLatitude.isBlank() ? 0 : TypedValues.latitude(newLatitude);
        double lon = newLongitude.isBlank() ? 0 : TypedValues.longitude(newLongitude);
        latitude = newLatitude;
        longitude = newLongitude;
        if (!latitude.isBlank() && !longitude.isBlank()) {
            bench.edit(Texts.of("step.site"), d -> d.recipe(r -> r.with(Place.at(new Site(lat, lon, 0)))));
        }
    }

    private static Button button(String id, String text, Runnable action) {
        Button button = new Button(text);
        button.setId(id);
        button.setOnAction(e -> action.run());
        return button;
    }

    private void showOthers(List<Draft> others) {
        remove(OTHERS);
        others.stream()
                .limit(MOST_OTHERS)
                .forEach(other -> add(
                        OTHERS,
                        Texts.of("others", described(other)),
                        List.of(
                                button(
                                        "other-open",
                                        Texts.of("others.open"),
                                        () -> workbench.guarded(
                                                Texts.of("others.open"), () -> bench.exchangeFor(other))),
                                button("other-merge", Texts.of("others.merge"), () -> bench.merge(other)),
                                button(
                                        "other-discard",
                                        Texts.of("others.discard"),
                                        () -> bench.edit(Texts.of("step.discardOther"), d -> d.withoutOther(other))))));
    }

    /** The planet, the night and how many frames. */
    private static String described(Draft d) {
        String planet = d.recipe().map(r -> r.body()).map(Body::displayName).orElse("");
        String dates = d.dates().stream().map(Objects::toString).collect(Collectors.joining(", "));
        int count = d.frames().size();
        String frames = count == 1 ? Texts.of("others.frame") : Texts.of("others.frames", count);
        return Stream.of(frames, planet, dates).filter(t -> !t.isEmpty()).collect(Collectors.joining(", "));
    }
}
