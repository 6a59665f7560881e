package org.epochrome.desktop.products;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.style.Texts;

/** Saves several products at once, beside the frames unless another folder is typed. */
public final class ProductsPage extends VBox {
    private final Consumer<List<Path>> saved;
    private final TextField folder = new TextField();
    private final TextField name = new TextField();
    private final CheckBox replace = new CheckBox(Texts.of("products.replace"));
    private final Map<String, CheckBox> endings = new LinkedHashMap<>();
    private final Label wrong = Panel.prose("");

    /** @param saved takes the files that are wanted, whose names tell what they are */
    public ProductsPage(Consumer<List<Path>> saved) {
        this.saved = saved;
        setId("products");
        getStyleClass().add("setup");
        Label title = new Label(Texts.of("products"));
        title.getStyleClass().add("side-title");
        title.setMinWidth(USE_PREF_SIZE);
        folder.setId("products-folder");
        folder.setTooltip(new Tooltip(Texts.of("products.folder.tip")));
        name.setId("products-name");
        name.setTooltip(new Tooltip(Texts.of("products.name.tip")));
        GridPane grid = Panel.grid();
        Panel.row(grid, Texts.of("products.folder"), folder);
        Panel.row(grid, Texts.of("products.name"), name);
        VBox boxes = new VBox(6);
        add(boxes, ".png", Texts.of("products.png"), true);
        add(boxes, ".tif", Texts.of("products.tif"), false);
        add(boxes, ".jpg", Texts.of("products.jpg"), false);
        add(boxes, ".fits", Texts.of("products.fits"), true);
        add(boxes, "-map.png", Texts.of("products.map"), false);
        add(boxes, "-map.fits", Texts.of("products.mapFits"), false);
        add(boxes, "-turning.gif", Texts.of("products.turning"), false);
        add(boxes, ".html", Texts.of("products.report"), true);
        add(boxes, ".json", Texts.of("products.numbers"), false);
        replace.setMinWidth(USE_PREF_SIZE);
        replace.setId("products-replace");
        wrong.getStyleClass().add("doubt");
        wrong.setId("products-wrong");
        Button save = new Button(Texts.of("products.save"));
        save.setId("products-save");
        save.getStyleClass().add("accent");
        save.setOnAction(e -> save());
        Button cancel = new Button(Texts.of("question.cancel"));
        cancel.setId("products-cancel");
        cancel.setMinWidth(USE_PREF_SIZE);
        cancel.setOnAction(e -> setVisible(false));
        save.setMinWidth(USE_PREF_SIZE);
        HBox buttons = new HBox(8, save, cancel);
        buttons.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(title, grid, boxes, replace, wrong, buttons);
        setVisible(false);
    }

    private void add(VBox boxes, String ending, String text, boolean chosen) {
        CheckBox box = new CheckBox(text);
        box.setMinWidth(USE_PREF_SIZE);
        box.setId("product" + ending.replace('.', '-'));
        box.setSelected(chosen);
        endings.put(ending, box);
        boxes.getChildren().add(box);
    }

    /** With a bar to scroll by, where the window is small. */
    public ScrollPane scrolled() {
        return Panel.overPicture(this, 520);
    }

    /** Shows the page. */
    public void open(Path into, String called) {
        folder.setText(into.toString());
        name.setText(called);
        replace.setSelected(false);
        Panel.say(wrong, "");
        setVisible(true);
        name.requestFocus();
    }

    private void save() {
        Path into = Path.of(folder.getText().strip());
        List<Path> files = new ArrayList<>();
        endings.forEach((ending, box) -> {
            if (box.isSelected()) {
                files.add(into.resolve(name.getText().strip() + ending));
            }
        });
        List<String> there = files.stream()
                .filter(Files::exists)
                .map(f -> f.getFileName().toString())
                .toList();
        if (files.isEmpty() || name.getText().isBlank()) {
            Panel.say(wrong, Texts.of("products.nothing"));
        } else if (!there.isEmpty() && !replace.isSelected()) {
            Panel.say(wrong, Texts.of("products.there", String.join(", ", there)));
        } else {
            setVisible(false);
            saved.accept(files);
        }
    }
}
