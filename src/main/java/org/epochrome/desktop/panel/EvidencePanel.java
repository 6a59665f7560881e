package org.epochrome.desktop.panel;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.state.UserMessages;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.schedule.Timetable;
import org.epochrome.session.verdict.Remarks;

/** Why to trust the result, and what to look at. */
public final class EvidencePanel extends Panel {
    private final Label numbers = prose("");
    private final VBox frames = new VBox(4);
    private final VBox doubts = new VBox(6);
    private final Label noted = heading(Texts.of("panel.evidence.information"));
    private final VBox information = new VBox(6);
    private final Label verdict = prose("");

    /** @param report saves the report for people */
    public EvidencePanel(Workspace bench, Runnable report) {
        super(bench);
        Button save = new Button(Texts.of("panel.evidence.save"));
        save.setId("save-report");
        save.setTooltip(new Tooltip(Texts.of("panel.evidence.save.tip")));
        save.setOnAction(e -> report.run());
        getChildren()
                .addAll(
                        verdict,
                        numbers,
                        heading(Texts.of("panel.evidence.warnings")),
                        doubts,
                        noted,
                        information,
                        save,
                        heading(Texts.of("panel.evidence.frames")),
                        frames);
    }

    @Override
    protected void renew() {
        setDisable(bench.draft().session().isEmpty());
        var made = bench.combination();
        numbers.setText(made.map(EvidencePanel::described).orElse(Texts.of("panel.evidence.making")));
        frames.getChildren().clear();
        doubts.getChildren().clear();
        information.getChildren().clear();
        say(verdict, made.map(c -> UserMessages.inWords(c.verdict().words())).orElse(""));
        made.ifPresent(c -> {
            c.frames().forEach(f -> frames.getChildren().add(line(f)));
            Remarks remarks = Remarks.of(c.warnings());
            c.verdict().diagnoses().forEach(d -> {
                doubts.getChildren().add(doubt(UserMessages.inWords(d.words())));
                d.remedy().ifPresent(r -> doubts.getChildren().add(prose(UserMessages.inWords(r.words()))));
            });
            remarks.warnings().forEach(w -> doubts.getChildren().add(doubt(UserMessages.inWords(w))));
            remarks.information().forEach(i -> information.getChildren().add(prose(UserMessages.inWords(i))));
            c.frames().stream().map(f -> f.exposure().frame()).distinct().forEach(f -> f.notes()
                    .forEach(n -> doubts.getChildren()
                            .add(doubt(Texts.of(
                                    "panel.evidence.warning",
                                    f.head().file().getFileName(),
                                    UserMessages.inWords(n))))));
        });
        noted.setVisible(!information.getChildren().isEmpty());
        noted.setManaged(!information.getChildren().isEmpty());
        bench.timetableProperty().get().ifPresent(this::sayReference);
        if (doubts.getChildren().isEmpty()) {
            doubts.getChildren().add(prose(made.isPresent() ? Texts.of("panel.evidence.noWarnings") : ""));
        }
    }

    private void sayReference(Timetable t) {
        frames.getChildren()
                .add(prose(Texts.of(
                        "panel.evidence.reference",
                        t.rows()
                                .get(t.reference())
                                .exposure()
                                .frame()
                                .head()
                                .file()
                                .getFileName())));
    }

    private static String described(Combination c) {
        return Texts.of(
                "panel.evidence.result",
                c.quality().before().text(),
                c.quality().after().text(),
                c.disk().northAngleDeg(),
                c.disk().equatorialRadiusPx());
    }

    private static Label line(Combination.FrameResult f) {
        return prose(Texts.of(
                "panel.evidence.frame",
                f.exposure().band().name(),
                f.exposure().mid().toString().substring(11, 19),
                f.rotationDeg() + 0.0,
                f.limb().centreSigmaPx(),
                UserMessages.inWords(f.exposure().frame().timing().source())));
    }

    private static Label doubt(String sentence) {
        Label label = prose(sentence);
        label.getStyleClass().add("doubt");
        return label;
    }
}
