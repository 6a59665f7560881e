package org.epochrome.desktop.panel;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.epochrome.choice.Choices;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Recipe;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** A part of a page whose controls are each declared by what of a recipe they show and what they change in it. */
class RecipeForm extends VBox {
    private final Panel panel;
    private final GridPane grid = Panel.grid();
    private final List<Consumer<Recipe>> shows = new ArrayList<>();

    /** @param title what stands above it; empty for nothing */
    RecipeForm(Panel panel, String title) {
        super(9);
        this.panel = panel;
        if (!title.isEmpty()) {
            getChildren().add(Panel.heading(title));
        }
        getChildren().add(grid);
    }

    /** Shows a recipe. */
    final void show(Recipe recipe) {
        shows.forEach(s -> s.accept(recipe));
    }

    /** What else is done when a recipe is shown. */
    final void shows(Consumer<Recipe> show) {
        shows.add(show);
    }

    /** A line of the form. */
    final void row(String name, Node control) {
        Panel.row(grid, name, control);
    }

    /** A field; what it changes is named as a step that can be undone. */
    final FormField text(
            Words words,
            String prompt,
            Function<Recipe, String> get,
            String step,
            BiFunction<Recipe, String, Recipe> set) {
        FormField entry = new FormField(words.id, prompt, words.teaches, t -> edit(step, r -> set.apply(r, t)));
        shows(r -> entry.show(get.apply(r)));
        row(words.name, entry);
        return entry;
    }

    /** A field for a number that may be left open. */
    final FormField number(
            Words words,
            String prompt,
            Function<Recipe, OptionalDouble> get,
            String step,
            BiFunction<Recipe, OptionalDouble, Recipe> set) {
        return text(words, prompt, r -> Numbers.plain(get.apply(r)), step, (r, t) -> set.apply(r, Numbers.optional(t)));
    }

    /** A choice among what is always the same. */
    final <T> void choice(
            Words words,
            List<T> values,
            Function<T, String> title,
            Function<Recipe, T> get,
            String step,
            BiFunction<Recipe, T, Recipe> set) {
        choice(words, r -> values, title, get, step, set);
    }

    /** A choice among what depends on the recipe, or on what was kept. */
    final <T> ComboBox<T> choice(
            Words words,
            Function<Recipe, List<T>> values,
            Function<T, String> title,
            Function<Recipe, T> get,
            String step,
            BiFunction<Recipe, T, Recipe> set) {
        ComboBox<T> box =
                panel.choice(words.id, words.teaches, List.of(), title, v -> edit(step, r -> set.apply(r, v)));
        shows(r -> {
            List<T> now = values.apply(r);
            if (!box.getItems().equals(now)) {
                box.getItems().setAll(now);
            }
            box.setValue(get.apply(r));
        });
        row(words.name, box);
        return box;
    }

    /** A switch for one of the corrections, below the table. */
    final void check(Words words, String step, Choices.Component<Corrections, Boolean> choice) {
        check(
                words,
                r -> choice.apply(r.corrections()),
                step,
                (r, on) -> r.with(r.corrections().with(choice, on)));
    }

    /** A switch, below the table. */
    final void check(Words words, Function<Recipe, Boolean> get, String step, BiFunction<Recipe, Boolean, Recipe> set) {
        CheckBox box = new CheckBox(words.name);
        box.setId(words.id);
        box.setTooltip(new Tooltip(words.teaches));
        box.selectedProperty().addListener((o, old, now) -> {
            if (panel.byUser()) {
                edit(step, r -> set.apply(r, now));
            }
        });
        shows(r -> box.setSelected(get.apply(r)));
        getChildren().add(box);
    }

    /**
     * A field for a name under which something is kept, and a button to forget it.
     *
     * @param box what is kept so far, the one in use chosen
     */
    final <T> void keep(String id, String teaches, Consumer<String> kept, ComboBox<T> box, Consumer<T> forgotten) {
        FormField[] entry = new FormField[1];
        entry[0] = new FormField(id, Texts.of("panel.keep.name"), teaches, name -> {
            if (!name.isBlank()) {
                kept.accept(name);
            }
            entry[0].show("");
            panel.refresh();
        });
        entry[0].setAccessibleText(teaches);
        Button forget = new Button("", new FontIcon(Feather.TRASH_2));
        forget.setId(id + "-forget");
        forget.setAccessibleText(Texts.of("panel.keep.delete"));
        forget.setTooltip(new Tooltip(Texts.of("panel.keep.delete.tip")));
        forget.disableProperty().bind(box.valueProperty().isNull());
        forget.setOnAction(e -> {
            forgotten.accept(box.getValue());
            panel.refresh();
        });
        row(Texts.of("panel.keep"), Panel.pair(entry[0], forget));
    }

    private void edit(String step, Function<Recipe, Recipe> change) {
        panel.bench.edit(step, d -> d.recipe(change::apply));
    }

    /**
     * How a control is called.
     *
     * @param id by which it is found
     * @param name that stands beside it
     * @param teaches what it is for
     */
    record Words(String id, String name, String teaches) {}
}
