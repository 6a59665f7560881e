package org.epochrome.desktop.panel;

import java.util.function.DoubleConsumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** A slider with its number, which can be typed, and a button for the usual value. */
public final class SliderField extends HBox {
    private final Slider slider;
    private final FormField entry;
    private final Button reset = new Button("", new FontIcon(Feather.ROTATE_CCW));

    /**
     * @param slider what is moved
     * @param name of what is set, for readers of the screen
     * @param usual what the button resets to
     * @param taken takes what is typed
     */
    SliderField(Slider slider, String name, double usual, DoubleConsumer taken) {
        super(4);
        this.slider = slider;
        slider.setAccessibleText(name);
        HBox.setHgrow(slider, Priority.ALWAYS);
        entry = new FormField(slider.getId() + "-value", "", slider.getTooltip().getText(), t -> {
            double value = Numbers.number(t);
            if (!(value >= slider.getMin() && value <= slider.getMax())) {
                throw new IllegalArgumentException(
                        Texts.of("panel.slider.range", Numbers.plain(slider.getMin()), Numbers.plain(slider.getMax())));
            }
            taken.accept(value);
        });
        entry.setAccessibleText(name);
        entry.getStyleClass().add("slider-entry");
        reset.setId(slider.getId() + "-reset");
        reset.getStyleClass().addAll("flat", "reset");
        reset.setAccessibleText(Texts.of("panel.slider.reset", name, Numbers.plain(usual)));
        reset.setTooltip(new Tooltip(Texts.of("panel.slider.reset", name, Numbers.plain(usual))));
        reset.setOnAction(e -> taken.accept(usual));
        setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(slider, entry, reset);
    }

    /** Shows a value, unless it is being moved or typed. */
    public void show(double value) {
        if (!slider.isValueChanging()) {
            slider.setValue(value);
        }
        entry.show(Numbers.text("%.2f", value));
    }

    /** What the slider stands at. */
    public double value() {
        return slider.getValue();
    }
}
