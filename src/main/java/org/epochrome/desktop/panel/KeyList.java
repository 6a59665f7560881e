package org.epochrome.desktop.panel;

import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.help.AboutPane;
import org.epochrome.desktop.style.Texts;

/** The keys, over the picture. */
public final class KeyList extends ScrollPane {
    private static final String[][] ALL = {
        {Texts.of("keys.add.key"), Texts.of("keys.add")},
        {Texts.of("keys.save.key"), Texts.of("keys.save")},
        {Texts.of("keys.export.key"), Texts.of("keys.export")},
        {Texts.of("keys.plan.key"), Texts.of("keys.plan")},
        {Texts.of("keys.command.key"), Texts.of("keys.command")},
        {Texts.of("keys.undo.key"), Texts.of("keys.undo")},
        {Texts.of("keys.close.key"), Texts.of("keys.close")},
        {Texts.of("keys.pages.key"), Texts.of("keys.pages")},
        {Texts.of("keys.zoom.key"), Texts.of("keys.zoom")},
        {Texts.of("keys.limb.key"), Texts.of("keys.limb")},
        {Texts.of("keys.compare.key"), Texts.of("keys.compare")},
        {Texts.of("keys.overlays.key"), Texts.of("keys.overlays")},
        {Texts.of("keys.picture.key"), Texts.of("keys.picture")},
        {Texts.of("keys.ribbon.key"), Texts.of("keys.ribbon")},
        {Texts.of("keys.frame.key"), Texts.of("keys.frame")},
        {Texts.of("keys.stop.key"), Texts.of("keys.stop")},
        {Texts.of("keys.help.key"), Texts.of("keys.help")},
        {Texts.of("keys.list.key"), Texts.of("keys.list")},
    };

    public KeyList() {
        getStyleClass().add("key-list");
        setId("key-list");
        setFitToWidth(true);
        setFocusTraversable(false);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        GridPane grid = new GridPane();
        grid.getStyleClass().add("grid");
        for (String[] row : ALL) {
            Label key = new Label(row[0]);
            key.getStyleClass().add("key");
            key.setMinWidth(Region.USE_PREF_SIZE);
            Label meaning = new Label(row[1]);
            meaning.setWrapText(true);
            meaning.setMinHeight(Region.USE_PREF_SIZE);
            grid.addRow(grid.getRowCount(), key, meaning);
        }
        VBox list = new VBox(Panel.heading(Texts.of("keys")), grid, new AboutPane());
        list.getStyleClass().add("keys");
        setContent(list);
    }
}
