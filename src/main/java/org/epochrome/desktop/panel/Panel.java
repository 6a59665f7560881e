package org.epochrome.desktop.panel;

import javafx.geometry.HPos;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.epochrome.desktop.control.Workspace;

/** A page of the side: what belongs to one topic. */
public abstract class Panel extends VBox {
    protected final Workspace bench;
    /** Whether values are being shown, so that controls must not take them for the user's. */
    private boolean showing;

    protected Panel(Workspace bench) {
        this.bench = bench;
        getStyleClass().add("panel");
        setFillWidth(true);
    }

    /** Shows the bench as it is now. */
    public final void refresh() {
        showing = true;
        try {
            renew();
        } finally {
            showing = false;
        }
    }

    protected abstract void renew();

    protected final boolean byUser() {
        return !showing;
    }

    public static Label heading(String text) {
        Label label = new Label(text);
        label.getStyleClass().add("heading");
        return label;
    }

    public static Label prose(String text) {
        Label label = new Label(text);
        label.getStyleClass().add("prose");
        label.setWrapText(true);
        label.setMinHeight(USE_PREF_SIZE);
        return label;
    }

    /** Says something, or takes no room where there is nothing to say. */
    public static void say(Label label, String text) {
        label.setText(text);
        label.setVisible(!text.isEmpty());
        label.setManaged(!text.isEmpty());
    }

    public static Label value(String id) {
        Label label = new Label();
        label.setId(id);
        label.getStyleClass().add("value");
        return label;
    }

    /** A table of labelled controls. */
    public static GridPane grid() {
        GridPane grid = new GridPane();
        grid.getStyleClass().add("grid");
        ColumnConstraints name = new ColumnConstraints();
        name.setMinWidth(118);
        ColumnConstraints control = new ColumnConstraints();
        control.setHgrow(Priority.ALWAYS);
        control.setFillWidth(true);
        control.setHalignment(HPos.LEFT);
        grid.getColumnConstraints().addAll(name, control);
        return grid;
    }

    public static void row(GridPane grid, String name, Node control) {
        Label label = new Label(name);
        label.getStyleClass().add("name");
        label.setMinWidth(USE_PREF_SIZE);
        label.setLabelFor(control);
        if (control.getAccessibleText() == null) {
            control.setAccessibleText(name);
        }
        grid.addRow(grid.getRowCount(), label, control);
    }

    public static HBox pair(Node... nodes) {
        HBox box = new HBox(6, nodes);
        for (Node node : nodes) {
            if (node instanceof FormField || node instanceof ComboBox || node instanceof Slider) {
                HBox.setHgrow(node, Priority.ALWAYS);
            }
        }
        box.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
        return box;
    }

    /** An empty list of values to choose from, which are shown by their names. */
    public static <T> ComboBox<T> comboBox(String id, String teaches, java.util.function.Function<T, String> name) {
        ComboBox<T> box = new ComboBox<>();
        box.setId(id);
        box.setTooltip(new Tooltip(teaches));
        box.setMaxWidth(Double.MAX_VALUE);
        box.setConverter(new StringConverter<>() {
            @Override
            public String toString(T value) {
                return value == null ? "" : name.apply(value);
            }

            @Override
            public T fromString(String text) {
                throw new UnsupportedOperationException();
            }
        });
        return box;
    }

    /** A page that lies over the picture while it is visible, with a bar to scroll by, where the window is small. */
    public static ScrollPane overPicture(Region page, double width) {
        ScrollPane pane = new ScrollPane(page);
        pane.getStyleClass().add("setup-over");
        pane.setFitToWidth(true);
        pane.setFocusTraversable(false);
        pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        pane.setMaxSize(width, USE_PREF_SIZE);
        pane.visibleProperty().bind(page.visibleProperty());
        pane.managedProperty().bind(page.visibleProperty());
        return pane;
    }

    /** A choice among few. */
    protected <T> ComboBox<T> choice(
            String id,
            String teaches,
            java.util.List<T> values,
            java.util.function.Function<T, String> name,
            java.util.function.Consumer<T> chosen) {
        ComboBox<T> box = comboBox(id, teaches, name);
        box.getItems().setAll(values);
        box.valueProperty().addListener((o, old, now) -> {
            if (byUser() && now != null) {
                chosen.accept(now);
            }
        });
        return box;
    }

    /** A slider that shows what it would do while it is drawn and counts when it is let go. */
    protected Slider slider(
            String id,
            String teaches,
            double from,
            double to,
            java.util.function.DoubleConsumer tried,
            java.util.function.DoubleConsumer taken) {
        Slider slider = new Slider(from, to, from);
        slider.setId(id);
        slider.setTooltip(new Tooltip(teaches));
        slider.setBlockIncrement((to - from) / 50);
        slider.valueProperty().addListener((o, old, now) -> {
            if (byUser()) {
                if (slider.isValueChanging()) {
                    tried.accept(rounded(now.doubleValue()));
                } else {
                    taken.accept(rounded(now.doubleValue()));
                }
            }
        });
        slider.valueChangingProperty().addListener((o, old, now) -> {
            if (byUser() && !now) {
                taken.accept(rounded(slider.getValue()));
            }
        });
        return slider;
    }

    /** A slider as {@link #slider} makes it, with its number and a button for the usual value. */
    protected SliderField sliderField(
            String id,
            String name,
            String teaches,
            double[] range,
            double usual,
            java.util.function.DoubleConsumer tried,
            java.util.function.DoubleConsumer taken) {
        return new SliderField(slider(id, teaches, range[0], range[1], tried, taken), name, usual, taken);
    }

    /** Values that people can read and the command line can say. */
    private static double rounded(double value) {
        return Math.rint(value * 100) / 100;
    }
}
