package org.epochrome.desktop.panel;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.state.UserMessages;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.schedule.Timetable;

/** Why to trust the result, and what to look at. */
public final class EvidencePanel extends Panel {
    private final Label numbers = prose("");
    private final VBox frames = new VBox(4);
    private final VBox doubts = new VBox(6);

    /** @param report saves the report for people */
    public EvidencePanel(Workspace bench, Runnable report) {
        super(bench);
        Button save = new Button("Save the report...");
        save.setId("save-report");
        save.setTooltip(new Tooltip("All numbers with pictures, to keep or print (.html), or for programs (.json)"));
        save.setOnAction(e -> report.run());
        getChildren().addAll(numbers, heading("To be looked at"), doubts, save, heading("Times and disks"), frames);
    }

    @Override
    void renew() {
        setDisable(bench.draft().session().isEmpty());
        var made = bench.combination();
        numbers.setText(made.map(EvidencePanel::described).orElse("The picture is being made."));
        frames.getChildren().clear();
        doubts.getChildren().clear();
        made.ifPresent(c -> {
            c.frames().forEach(f -> frames.getChildren().add(line(f)));
            c.warnings().forEach(w -> doubts.getChildren().add(doubt(w)));
            c.frames().stream().map(f -> f.exposure().frame()).distinct().forEach(f -> f.notes()
                    .forEach(n -> doubts.getChildren().add(doubt(f.head().file().getFileName() + ": " + n))));
        });
        bench.timetableProperty().get().ifPresent(this::sayReference);
        if (doubts.getChildren().isEmpty()) {
            doubts.getChildren().add(prose(made.isPresent() ? "Nothing." : ""));
        }
    }

    private void sayReference(Timetable t) {
        frames.getChildren()
                .add(prose("The picture lies on the pixels of "
                        + t.rows()
                                .get(t.reference())
                                .exposure()
                                .frame()
                                .head()
                                .file()
                                .getFileName() + "."));
    }

    private static String described(Combination c) {
        return Numbers.text(
                "Colours misaligned by %s in a simple stack, %s in the result.%nNorth angle %.2f°, equatorial radius %.2f px.",
                c.quality().before().text(),
                c.quality().after().text(),
                c.disk().northAngleDeg(),
                c.disk().equatorialRadiusPx());
    }

    private static Label line(Combination.FrameResult f) {
        return prose(Numbers.text(
                "%s  %s  turned %+.2f°, centre ± %.3f px; times from %s",
                f.exposure().band().name(),
                f.exposure().mid().toString().substring(11, 19),
                f.rotationDeg() + 0.0,
                f.limb().centreSigmaPx(),
                f.exposure().frame().timing().source()));
    }

    private static Label doubt(String sentence) {
        Label label = prose(UserMessages.inWords(sentence));
        label.getStyleClass().add("doubt");
        return label;
    }
}
