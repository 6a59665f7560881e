package org.epochrome.desktop.verdict;

import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.state.UserMessages;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.verdict.Remedy;
import org.epochrome.session.verdict.Verdict;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Whether the result can be trusted, in a line that leads to the evidence, with a button that mends what is wrong. */
public final class VerdictLine extends HBox {
    private static final PseudoClass DOUBTFUL = PseudoClass.getPseudoClass("doubtful");

    private final Workspace bench;
    private final FontIcon icon = new FontIcon(Feather.CHECK_CIRCLE);
    private final Hyperlink words = new Hyperlink();
    private final Button remedy = new Button(Texts.of("verdict.apply"));
    private Optional<Remedy> offered = Optional.empty();

    public VerdictLine(Workspace bench) {
        this.bench = bench;
        setId("verdict");
        getStyleClass().add("verdict");
        setAlignment(Pos.CENTER_LEFT);
        words.setId("verdict-words");
        words.setGraphic(icon);
        words.setTooltip(new Tooltip(Texts.of("verdict.tip")));
        words.setOnAction(e -> {
            words.setVisited(false);
            bench.select(Topic.EVIDENCE);
        });
        words.setWrapText(true);
        remedy.setId("verdict-remedy");
        remedy.setTooltip(new Tooltip(Texts.of("verdict.apply.tip")));
        remedy.setMinWidth(Region.USE_PREF_SIZE);
        remedy.setOnAction(e -> offered.ifPresent(this::apply));
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        getChildren().addAll(words, space, remedy);
        bench.renderer().combinationProperty().addListener((o, old, now) -> renew());
        bench.draftProperty().addListener((o, old, now) -> renew());
        renew();
    }

    private void renew() {
        Optional<Verdict> verdict = bench.combination().map(Combination::verdict);
        setVisible(verdict.isPresent());
        setManaged(verdict.isPresent());
        offered = verdict.flatMap(
                v -> v.diagnoses().stream().flatMap(d -> d.remedy().stream()).findFirst());
        verdict.ifPresent(v -> {
            boolean doubtful = v.level() != Verdict.Level.GOOD;
            pseudoClassStateChanged(DOUBTFUL, doubtful);
            icon.setIconCode(doubtful ? Feather.ALERT_TRIANGLE : Feather.CHECK_CIRCLE);
            words.setText(UserMessages.inWords(v.words()));
        });
        offered.ifPresent(r -> remedy.getTooltip().setText(UserMessages.inWords(r.words())));
        remedy.setVisible(offered.isPresent());
        remedy.setManaged(offered.isPresent());
    }

    private void apply(Remedy chosen) {
        bench.edit(Texts.of("step.remedy"), d -> d.recipe(chosen::appliedTo));
    }
}
