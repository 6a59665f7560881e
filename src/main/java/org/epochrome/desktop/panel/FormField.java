package org.epochrome.desktop.panel;

import java.util.function.Consumer;
import javafx.css.PseudoClass;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import org.epochrome.desktop.style.Texts;

/** A field that takes what is typed when Enter is pressed or the field is left, and says beside itself what is wrong. */
public final class FormField extends TextField {
    private static final PseudoClass WRONG = PseudoClass.getPseudoClass("wrong");

    private final Consumer<String> taken;
    private final String teaches;
    private String shown = "";

    /**
     * @param teaches what the field is for
     * @param taken takes the text; throws IllegalArgumentException with a sentence if it cannot
     */
    public FormField(String id, String prompt, String teaches, Consumer<String> taken) {
        this.taken = taken;
        this.teaches = teaches;
        setId(id);
        setPromptText(prompt);
        setTooltip(new Tooltip(teaches));
        setOnAction(e -> commit());
        focusedProperty().addListener((o, old, now) -> {
            if (!now) {
                commit();
            }
        });
        setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                setText(shown);
                wrong("");
            }
        });
    }

    /** Shows a value, unless the user is typing another. */
    public void show(String value) {
        boolean typing = isFocused() && !getText().equals(shown);
        boolean there = value.equals(shown) && value.equals(getText());
        shown = value;
        if (!typing && !there) {
            setText(value);
            wrong("");
        }
    }

    private void commit() {
        if (getText().equals(shown)) {
            wrong("");
            return;
        }
        try {
            String text = getText().strip();
            shown = getText();
            taken.accept(text);
            wrong("");
        } catch (IllegalArgumentException e) {
            shown = "";
            wrong(e instanceof NumberFormatException ? Texts.of("panel.field.notANumber") : e.getMessage());
        }
    }

    private void wrong(String sentence) {
        pseudoClassStateChanged(WRONG, !sentence.isEmpty());
        getTooltip().setText(sentence.isEmpty() ? teaches : sentence);
    }
}
