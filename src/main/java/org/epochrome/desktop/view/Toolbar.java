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
import org.epochrome.desktop.render.ComparedPicture;
import org.epochrome.desktop.render.Display;
import org.epochrome.desktop.style.Texts;
import org.epochrome.desktop.style.Theme;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** The line at the top: files, steps back, and how the picture is looked at. */
final class Toolbar extends HBox {
    private static final PseudoClass NARROW = PseudoClass.getPseudoClass("narrow");
    /** From this width on buttons have their words beside their icons. */
    private static final double ROOM_FOR_WORDS = 1000;

    private final Map<Overlay, CheckMenuItem> overlays = new EnumMap<>(Overlay.class);
    private final ToggleButton split = new ToggleButton("", new FontIcon(Feather.COLUMNS));
    private final ToggleButton processing = new ToggleButton("", new FontIcon(Feather.SLIDERS));
    private final ToggleButton blink = new ToggleButton("", new FontIcon(Feather.REPEAT));
    private final ToggleGroup themes = new ToggleGroup();

    Toolbar(Workspace bench, Actions actions, Viewer viewer) {
        widthProperty()
                .addListener((o, old, now) -> pseudoClassStateChanged(NARROW, now.doubleValue() < ROOM_FOR_WORDS));
        getStyleClass().add("tools");
        // A narrow window does not become as wide as all words would be.
        setMinWidth(0);
        setAlignment(Pos.CENTER_LEFT);
        Button open = button("open", Feather.FOLDER_PLUS, Texts.of("toolbar.add.tip"), actions::open);
        open.setText(Texts.of("toolbar.add"));
        open.getStyleClass().add("worded");
        MenuButton save = new MenuButton(Texts.of("toolbar.save"), new FontIcon(Feather.SAVE));
        save.setId("save");
        save.getStyleClass().add("worded");
        save.setTooltip(new Tooltip(Texts.of("toolbar.save.tip")));
        save.getItems()
                .addAll(
                        item("session", Texts.of("toolbar.save.session"), "Ctrl+S", actions::save),
                        item("session-as", Texts.of("toolbar.save.sessionAs"), "Ctrl+Shift+S", actions::saveAs),
                        new SeparatorMenuItem(),
                        item(
                                "picture-or-linear-cube",
                                Texts.of("toolbar.save.picture"),
                                "Ctrl+E",
                                actions::savePicture),
                        item("report", Texts.of("toolbar.save.report"), "Ctrl+R", actions::saveReport),
                        item("map", Texts.of("toolbar.save.map"), "", actions::saveMap),
                        item("map-graticule", Texts.of("toolbar.save.mapGraticule"), "", actions::saveMapWithGraticule),
                        item("turning", Texts.of("toolbar.save.turning"), "", actions::saveTurning),
                        item("several", Texts.of("toolbar.save.several"), "Ctrl+Shift+E", actions::saveSeveral),
                        new SeparatorMenuItem(),
                        item(
                                "copy-as-command-line",
                                Texts.of("toolbar.save.command"),
                                "Ctrl+Shift+C",
                                actions::copyCommand),
                        new SeparatorMenuItem(),
                        item("close-the-session", Texts.of("toolbar.save.close"), "Ctrl+W", actions::close));
        Button undo = button("undo", Feather.CORNER_UP_LEFT, Texts.of("toolbar.undo.tip"), bench::undo);
        Button redo = button("redo", Feather.CORNER_UP_RIGHT, Texts.of("toolbar.redo.tip"), bench::redo);
        steps(undo, bench.undoableProperty(), Texts.of("toolbar.undo"), "Ctrl+Z");
        steps(redo, bench.redoableProperty(), Texts.of("toolbar.redo"), "Ctrl+Y");
        Button fit = button("fit", Feather.MAXIMIZE, Texts.of("toolbar.fit.tip"), () -> viewer.view()
                .fit());
        Button whole = button("true-size", Feather.SQUARE, Texts.of("toolbar.actualPixels.tip"), () -> viewer.view()
                .trueSize());
        ComboBox<Display> display = display(bench);
        MenuButton lines = lines(viewer);
        split.setId("split");
        split.setAccessibleText(Texts.of("toolbar.split"));
        split.setTooltip(new Tooltip(Texts.of("toolbar.split.tip")));
        split.selectedProperty().addListener((o, old, now) -> {
            if (now) {
                processing.setSelected(false);
            }
            compare(viewer);
        });
        processing.setId("split-processing");
        processing.setAccessibleText(Texts.of("toolbar.processing"));
        processing.setTooltip(new Tooltip(Texts.of("toolbar.processing.tip")));
        processing.selectedProperty().addListener((o, old, now) -> {
            if (now) {
                split.setSelected(false);
            }
            compare(viewer);
        });
        blink.setId("blink");
        blink.setAccessibleText(Texts.of("toolbar.blink"));
        blink.setTooltip(new Tooltip(Texts.of("toolbar.blink.tip")));
        blink.selectedProperty().addListener((o, old, now) -> viewer.blink(now));
        Button plan = button("plan-button", Feather.MOON, Texts.of("toolbar.plan.tip"), actions::showPlan);
        plan.setText(Texts.of("toolbar.plan"));
        plan.getStyleClass().add("worded");
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        MenuButton theme = theme(actions);
        Button setup = button("preferences", Feather.SETTINGS, Texts.of("toolbar.setup.tip"), actions::showSetup);
        Button help = button("open-help", Feather.BOOK_OPEN, Texts.of("toolbar.help.tip"), actions::showHelp);
        Button keys = button("keys", Feather.HELP_CIRCLE, Texts.of("toolbar.keys.tip"), actions::showKeys);
        getChildren()
                .addAll(
                        open,
                        save,
                        plan,
                        gap(),
                        undo,
                        redo,
                        gap(),
                        fit,
                        whole,
                        display,
                        lines,
                        split,
                        processing,
                        blink,
                        space,
                        setup,
                        theme,
                        help,
                        keys);
    }

    private void compare(Viewer viewer) {
        viewer.compare(
                split.isSelected()
                        ? ComparedPicture.Kind.SIMPLE_STACK
                        : processing.isSelected() ? ComparedPicture.Kind.UNPROCESSED : ComparedPicture.Kind.NONE);
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

    private static MenuItem item(String id, String text, String keys, Runnable action) {
        MenuItem item = new MenuItem(keys.isEmpty() ? text : Texts.of("toolbar.item", text, keys));
        item.setId("item-" + id);
        item.setOnAction(e -> action.run());
        return item;
    }

    private static void steps(Button button, ObservableStringValue name, String verb, String keys) {
        button.setDisable(name.get().isEmpty());
        name.addListener((o, old, now) -> {
            button.setDisable(now.isEmpty());
            String text = now.isEmpty() ? verb : Texts.of("toolbar.step", verb, now);
            button.getTooltip().setText(Texts.of("toolbar.step.tip", text, keys));
            button.setAccessibleText(text);
        });
    }

    private static ComboBox<Display> display(Workspace bench) {
        ComboBox<Display> box = new ComboBox<>(FXCollections.observableArrayList(Display.values()));
        box.setId("display");
        box.setAccessibleText(Texts.of("toolbar.display"));
        box.setTooltip(new Tooltip(Texts.of("toolbar.display.tip")));
        box.setCellFactory(list -> cell());
        box.setButtonCell(cell());
        box.valueProperty().bindBidirectional(bench.renderer().displayProperty());
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
        MenuButton menu = new MenuButton(Texts.of("toolbar.overlays"), new FontIcon(Feather.GRID));
        menu.setId("lines");
        menu.getStyleClass().add("worded");
        menu.setTooltip(new Tooltip(Texts.of("toolbar.overlays.tip")));
        for (Overlay overlay : Overlay.values()) {
            CheckMenuItem item = new CheckMenuItem(Texts.of("toolbar.item", overlay.title(), overlay.key()));
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
        menu.setAccessibleText(Texts.of("toolbar.theme"));
        menu.setTooltip(new Tooltip(Texts.of("toolbar.theme.tip")));
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

    void toggleProcessing() {
        processing.setSelected(!processing.isSelected());
    }

    void toggleBlink() {
        blink.setSelected(!blink.isSelected());
    }
}
