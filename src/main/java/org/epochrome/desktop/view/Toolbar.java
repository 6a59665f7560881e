package org.epochrome.desktop.view;

import java.util.EnumMap;
import java.util.Map;
import javafx.beans.value.ObservableStringValue;
import javafx.collections.FXCollections;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ListCell;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.RadioMenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.picture.Overlay;
import org.epochrome.desktop.render.Display;
import org.epochrome.desktop.style.Theme;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** The line at the top: files, steps back, and how the picture is looked at. */
final class Toolbar extends HBox {
    private static final PseudoClass NARROW = PseudoClass.getPseudoClass("narrow");
    /** From this width on buttons have their words beside their icons. */
    private static final double ROOM_FOR_WORDS = 880;

    private final Map<Overlay, CheckMenuItem> overlays = new EnumMap<>(Overlay.class);
    private final ToggleButton split = new ToggleButton("", new FontIcon(Feather.COLUMNS));
    private final ToggleButton blink = new ToggleButton("", new FontIcon(Feather.REPEAT));
    private final ToggleGroup themes = new ToggleGroup();

    Toolbar(Workspace bench, Actions actions, Viewer viewer) {
        widthProperty()
                .addListener((o, old, now) -> pseudoClassStateChanged(NARROW, now.doubleValue() < ROOM_FOR_WORDS));
        getStyleClass().add("tools");
        setAlignment(Pos.CENTER_LEFT);
        Button open = button("open", Feather.FOLDER_PLUS, "Add frames, a sheet or a session (Ctrl+O)", actions::open);
        open.setText("Add");
        open.getStyleClass().add("worded");
        MenuButton save = new MenuButton("Save", new FontIcon(Feather.SAVE));
        save.setId("save");
        save.getStyleClass().add("worded");
        save.setTooltip(new Tooltip("Save the session, pictures, the report or a map"));
        save.getItems()
                .addAll(
                        item("Session", "Ctrl+S", actions::save),
                        item("Session as...", "Ctrl+Shift+S", actions::saveAs),
                        new SeparatorMenuItem(),
                        item("Picture or linear cube...", "Ctrl+E", actions::savePicture),
                        item("Report...", "Ctrl+R", actions::saveReport),
                        item("Map...", "", actions::saveMap),
                        new SeparatorMenuItem(),
                        item("Copy as command line", "Ctrl+Shift+C", actions::copyCommand),
                        new SeparatorMenuItem(),
                        item("Close the session", "Ctrl+W", actions::close));
        Button undo = button("undo", Feather.CORNER_UP_LEFT, "Undo (Ctrl+Z)", bench::undo);
        Button redo = button("redo", Feather.CORNER_UP_RIGHT, "Redo (Ctrl+Y)", bench::redo);
        steps(undo, bench.undoableProperty(), "Undo", "Ctrl+Z");
        steps(redo, bench.redoableProperty(), "Redo", "Ctrl+Y");
        Button fit = button("fit", Feather.MAXIMIZE, "Fit the planet into the view (F)", () -> viewer.view()
                .fit());
        Button whole = button(
                "true-size", Feather.SQUARE, "A pixel of the picture on a pixel of the screen (1)", () -> viewer.view()
                        .trueSize());
        ComboBox<Display> display = display(bench);
        MenuButton lines = lines(viewer);
        split.setId("split");
        split.setAccessibleText("Before and after");
        split.setTooltip(new Tooltip("Before | after: what plain stacking gives, beside a line to pull (S)"));
        split.selectedProperty().addListener((o, old, now) -> viewer.setSplit(now));
        blink.setId("blink");
        blink.setAccessibleText("Blink");
        blink.setTooltip(new Tooltip("Show the bands in turn, to see what moves (B)"));
        blink.selectedProperty().addListener((o, old, now) -> viewer.blink(now));
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        MenuButton theme = theme(actions);
        Button keys = button("keys", Feather.HELP_CIRCLE, "Keys (F1)", actions::showKeys);
        getChildren()
                .addAll(
                        open, save, gap(), undo, redo, gap(), fit, whole, display, lines, split, blink, space, theme,
                        keys);
    }

    private static Region gap() {
        Region gap = new Region();
        gap.getStyleClass().add("gap");
        return gap;
    }

    private static Button button(String id, Feather icon, String teaches, Runnable action) {
        Button button = new Button("", new FontIcon(icon));
        button.setId(id);
        button.setAccessibleText(teaches);
        button.setTooltip(new Tooltip(teaches));
        button.setOnAction(e -> action.run());
        return button;
    }

    private static MenuItem item(String text, String keys, Runnable action) {
        MenuItem item = new MenuItem(keys.isEmpty() ? text : text + "   (" + keys + ")");
        item.setId("item-"
                + text.toLowerCase(java.util.Locale.ROOT)
                        .replaceAll("[^a-z]+", "-")
                        .replaceAll("-$", ""));
        item.setOnAction(e -> action.run());
        return item;
    }

    private static void steps(Button button, ObservableStringValue name, String verb, String keys) {
        button.setDisable(name.get().isEmpty());
        name.addListener((o, old, now) -> {
            button.setDisable(now.isEmpty());
            String text = now.isEmpty() ? verb : verb + ": " + now;
            button.getTooltip().setText(text + " (" + keys + ")");
            button.setAccessibleText(text);
        });
    }

    private static ComboBox<Display> display(Workspace bench) {
        ComboBox<Display> box = new ComboBox<>(FXCollections.observableArrayList(Display.values()));
        box.setId("display");
        box.setTooltip(new Tooltip("How the picture is shown; what is saved is always the finished one"));
        box.setCellFactory(list -> cell());
        box.setButtonCell(cell());
        box.valueProperty().bindBidirectional(bench.studio().displayProperty());
        return box;
    }

    private static ListCell<Display> cell() {
        return new ListCell<>() {
            @Override
            protected void updateItem(Display item, boolean empty) {
                super.updateItem(item, empty);
                setText(item == null || empty ? "" : item.title());
                setTooltip(item == null || empty ? null : new Tooltip(item.meaning()));
            }
        };
    }

    private MenuButton lines(Viewer viewer) {
        MenuButton menu = new MenuButton("Lines", new FontIcon(Feather.GRID));
        menu.setId("lines");
        menu.getStyleClass().add("worded");
        menu.setTooltip(new Tooltip("What is drawn over the picture"));
        for (Overlay overlay : Overlay.values()) {
            CheckMenuItem item = new CheckMenuItem(overlay.title() + "   (" + overlay.key() + ")");
            item.setId("line-" + overlay.name().toLowerCase(java.util.Locale.ROOT));
            item.selectedProperty().addListener((o, old, now) -> viewer.view().setOverlay(overlay, now));
            overlays.put(overlay, item);
            menu.getItems().add(item);
        }
        return menu;
    }

    private MenuButton theme(Actions actions) {
        MenuButton menu = new MenuButton("", new FontIcon(Feather.SUN));
        menu.setId("theme");
        menu.setAccessibleText("Theme");
        menu.setTooltip(new Tooltip("Dark, light, or red for use beside the telescope"));
        for (Theme theme : Theme.values()) {
            RadioMenuItem item = new RadioMenuItem(theme.title());
            item.setId("theme-" + theme.name().toLowerCase(java.util.Locale.ROOT));
            item.setToggleGroup(themes);
            item.setUserData(theme);
            item.setOnAction(e -> actions.setTheme(theme));
            menu.getItems().add(item);
        }
        return menu;
    }

    void showTheme(Theme theme) {
        themes.getToggles().stream().filter(t -> t.getUserData() == theme).forEach(themes::selectToggle);
    }

    void toggle(Overlay overlay) {
        CheckMenuItem item = overlays.get(overlay);
        item.setSelected(!item.isSelected());
    }

    void toggleSplit() {
        split.setSelected(!split.isSelected());
    }

    void toggleBlink() {
        blink.setSelected(!blink.isSelected());
    }
}
