package org.epochrome.desktop.panel;

import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The keys, over the picture. */
public final class KeyList extends ScrollPane {
    private static final String[][] ALL = {
        {"Ctrl+O", "add frames, a sheet or a session"},
        {"Ctrl+S, Ctrl+Shift+S", "save the session, under another name"},
        {"Ctrl+E, Ctrl+R", "save a picture, the report"},
        {"Ctrl+Shift+C", "copy the command line that does the same"},
        {"Ctrl+Z, Ctrl+Y", "undo, redo (Ctrl+Shift+Z too)"},
        {"Ctrl+W", "close the session"},
        {"Alt+1 to Alt+8", "pages of the side"},
        {"F, 1, +, -", "fit, true pixels; on the picture: larger, smaller"},
        {"Z, U", "the limb, large: north, then on around; all of it, unrolled"},
        {"S, B", "before | after (comma and period move the line), blink between bands"},
        {"L, G, T, R, P, D", "limb, graticule, terminator, rings, pole and zenith, dispersion"},
        {"Arrows on the picture", "move the view; on the page Shift a band, on Disk the disk, by 0.05 px"},
        {"Arrows on the ribbon", "choose a frame; with Ctrl move the epoch by a second, with Shift too by ten"},
        {"X, M on the ribbon", "leave a frame out or take it in, epoch midway"},
        {"Esc", "close this list; stop working at the full picture"},
        {"F1", "this list"},
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
        VBox list = new VBox(Panel.heading("Keys"), grid);
        list.getStyleClass().add("keys");
        setContent(list);
    }
}
