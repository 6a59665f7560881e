package org.epochrome.desktop.help;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.style.Texts;

/** The guides, to read and to search without leaving the window. */
public final class HelpPage extends BorderPane {
    /** The documents; the build puts them beside this class. */
    private static final List<String> DOCUMENTS = List.of("desktop.md", "guide.md");

    private final ComboBox<String> document = new ComboBox<>(FXCollections.observableArrayList(DOCUMENTS));
    private final TextField search = new TextField();
    private final VBox text = new VBox();
    private final ScrollPane page = new ScrollPane(text);
    private int found = -1;

    /** @param close hides the page */
    public HelpPage(Runnable close) {
        setId("help");
        getStyleClass().add("help");
        document.setId("help-document");
        document.setAccessibleText(Texts.of("help.document"));
        document.setTooltip(new Tooltip(Texts.of("help.document")));
        document.setConverter(new javafx.util.StringConverter<>() {
            @Override
            public String toString(String name) {
                return "guide.md".equals(name) ? Texts.of("help.guide") : Texts.of("help.window");
            }

            @Override
            public String fromString(String name) {
                throw new UnsupportedOperationException();
            }
        });
        document.valueProperty().addListener((o, old, now) -> show(now));
        search.setId("help-search");
        search.setPromptText(Texts.of("help.search"));
        search.setAccessibleText(Texts.of("help.search"));
        search.setTooltip(new Tooltip(Texts.of("help.search.tip")));
        search.setOnAction(e -> next());
        HBox.setHgrow(search, Priority.ALWAYS);
        Button end = new Button(Texts.of("help.close"));
        end.setId("help-close");
        end.setMinWidth(USE_PREF_SIZE);
        end.setOnAction(e -> close.run());
        HBox top = new HBox(8, document, search, end);
        top.setAlignment(Pos.CENTER_LEFT);
        top.getStyleClass().add("help-top");
        text.getStyleClass().add("help-text");
        page.setFitToWidth(true);
        page.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        setTop(top);
        setCenter(page);
        setVisible(false);
        managedProperty().bind(visibleProperty());
    }

    /** Shows the page; reads the document when it is first shown. */
    public void open() {
        setVisible(true);
        if (document.getValue() == null) {
            document.setValue(DOCUMENTS.get(0));
        }
        search.requestFocus();
    }

    private void show(String name) {
        text.getChildren()
                .setAll(Markdown.pieces(lines(name)).stream()
                        .map(HelpPage::node)
                        .toList());
        page.setVvalue(0);
        found = -1;
    }

    private static List<String> lines(String name) {
        try (InputStream in = Objects.requireNonNull(HelpPage.class.getResourceAsStream(name), name);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.lines().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Node node(Markdown.Piece piece) {
        if (piece.kind() == Markdown.Kind.ROW) {
            HBox row = new HBox(12);
            for (String cell : piece.cells()) {
                Label label = label(cell, "prose");
                label.setMaxWidth(Double.MAX_VALUE);
                label.setPrefWidth(120);
                HBox.setHgrow(label, Priority.ALWAYS);
                row.getChildren().add(label);
            }
            return row;
        }
        return switch (piece.kind()) {
            case TITLE -> label(piece.text(), "side-title");
            case HEADING -> label(piece.text(), "heading");
            case ITEM -> label("\u2022 " + piece.text(), "prose");
            case CODE -> label(piece.text(), "code");
            default -> label(piece.text(), "prose");
        };
    }

    private static Label label(String words, String style) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(USE_PREF_SIZE);
        label.getStyleClass().add(style);
        return label;
    }

    /** Scrolls to the next piece that contains what is searched for. */
    private void next() {
        String wanted = search.getText().strip().toLowerCase(java.util.Locale.ROOT);
        List<Node> pieces = text.getChildren();
        for (int i = 1; i <= pieces.size() && !wanted.isEmpty(); i++) {
            int at = (found + i) % pieces.size();
            if (words(pieces.get(at)).toLowerCase(java.util.Locale.ROOT).contains(wanted)) {
                found = at;
                double y = pieces.get(at).getBoundsInParent().getMinY();
                double room = text.getHeight() - page.getViewportBounds().getHeight();
                page.setVvalue(room > 0 ? Math.min(1, y / room) : 0);
                return;
            }
        }
    }

    private static String words(Node node) {
        if (node instanceof Label label) {
            return label.getText();
        }
        StringBuilder all = new StringBuilder();
        ((HBox) node).getChildrenUnmodifiable().forEach(child -> all.append(words(child))
                .append(' '));
        return all.toString();
    }
}
