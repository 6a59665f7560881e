package org.epochrome.desktop.frames;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javafx.beans.property.BooleanProperty;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.FrameChanges;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.FormField;
import org.epochrome.desktop.panel.FrameEdits;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.state.UnidentifiedFile;
import org.epochrome.desktop.state.UserMessages;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.image.Band;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;
import org.epochrome.io.file.VisibleText;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.recipe.AbsentFrame;
import org.epochrome.session.schedule.Timetable;
import org.epochrome.time.RecordingSpan;
import org.epochrome.time.UtcText;

/** One frame: its band and times with their sources, whether it takes part; and files that must be asked about. */
public final class FramePanel extends Panel {
    static final List<String> BANDS = Band.KNOWN.stream().map(Band::name).toList();

    private final Label name = heading("");
    private final Tooltip path = new Tooltip();
    private final Label what = prose("");
    private final CheckBox used = new CheckBox(Texts.of("panel.frame.use"));
    private final ComboBox<String> band;
    private final ComboBox<Optional<Boolean>> mirrored;
    private final FormField encoding;
    private final Label bandSource = prose("");
    private final FormField passband;
    private final FormField start;
    private final FormField end;
    private final Label timeSource = prose("");
    private final Label numbers = prose("");
    private final Label notes = prose("");
    private final VBox known = new VBox(8);
    private final VBox open = new VBox(10);
    private List<UnidentifiedFile> asked = List.of();
    private List<AbsentFrame> missed = List.of();

    private final FrameList list;

    /** @param preview whether the picture shows the selected frame */
    public FramePanel(Workspace bench, BooleanProperty preview) {
        super(bench);
        list = new FrameList(bench, preview);
        name.setTooltip(path);
        used.setId("used");
        used.setTooltip(new Tooltip(Texts.of("panel.frame.use.tip")));
        used.setOnAction(e -> bench.selectedFrame().ifPresent(f -> FrameEdits.toggle(bench, f)));
        band = choice("band", Texts.of("panel.frame.band.tip"), BANDS, b -> b, this::setBand);
        start = new FormField("start", "", Texts.of("panel.frame.start.tip"), t -> setTimes(UtcText.parse(t), null));
        end = new FormField("end", "", Texts.of("panel.frame.end.tip"), t -> setTimes(null, UtcText.parse(t)));
        passband = new FormField("passband", "", Texts.of("panel.frame.passband.tip"), this::setPassband);
        mirrored = choice(
                "frame-mirrored",
                Texts.of("panel.frame.mirrored.tip"),
                List.of(Optional.empty(), Optional.of(true), Optional.of(false)),
                m -> m.map(yes -> yes ? Texts.of("panel.session.mirrored.yes") : Texts.of("panel.session.mirrored.no"))
                        .orElse(Texts.of("panel.frame.asSession")),
                this::setMirrored);
        encoding = new FormField(
                "frame-encoding",
                Texts.of("panel.frame.asSession"),
                Texts.of("panel.frame.encoding.tip"),
                this::setEncoding);
        GridPane grid = grid();
        row(grid, Texts.of("panel.frame.band"), band);
        row(grid, Texts.of("panel.frame.passband"), passband);
        row(grid, Texts.of("panel.frame.start"), start);
        row(grid, Texts.of("panel.frame.end"), end);
        row(grid, Texts.of("panel.frame.mirrored"), mirrored);
        row(grid, Texts.of("panel.frame.encoding"), encoding);
        bandSource.getStyleClass().add("source");
        timeSource.getStyleClass().add("source");
        notes.getStyleClass().add("doubt");
        known.getChildren().addAll(name, what, used, grid, bandSource, timeSource, numbers, notes);
        open.setManaged(false);
        getChildren().addAll(open, list, known);
    }

    @Override
    protected void renew() {
        list.renew();
        Draft draft = bench.draft();
        if (!asked.equals(draft.unsettled()) || !missed.equals(draft.absent())) {
            asked = draft.unsettled();
            missed = draft.absent();
            open.getChildren()
                    .setAll(Stream.<Node>concat(
                                    asked.stream().map(u -> new FrameQuestion(bench, u)),
                                    missed.stream().map(this::missing))
                            .toList());
            open.setManaged(!open.getChildren().isEmpty());
        }
        Optional<DatedFrame> frame = bench.selectedFrame();
        known.setVisible(frame.isPresent());
        known.setManaged(frame.isPresent());
        frame.ifPresent(this::show);
    }

    private Node missing(AbsentFrame absent) {
        Label problem = prose(UserMessages.inWords(absent.problem()));
        problem.getStyleClass().add("doubt");
        Button forget = new Button(Texts.of("panel.frame.discard"));
        forget.setId("forget-missing");
        forget.setTooltip(new Tooltip(Texts.of("panel.frame.discard.tip")));
        forget.setOnAction(e -> bench.edit(
                Texts.of("step.discardFile"),
                d -> d.without(Set.of(absent.request().file()))));
        VBox box = new VBox(6, heading(absent.name()), problem, prose(Texts.of("panel.frame.missing")), forget);
        box.getStyleClass().add("question");
        return box;
    }

    private void show(DatedFrame f) {
        name.setText(VisibleText.of(f.head().file().getFileName().toString()));
        path.setText(f.head().file().toString());
        what.setText(Texts.of(
                "panel.frame.image",
                f.head().width(),
                f.head().height(),
                f.head().planeCount() == 1 ? Texts.of("panel.frame.image.mono") : Texts.of("panel.frame.image.colour"),
                f.head().depth()));
        used.setSelected(
                bench.draft().recipe().filter(r -> Numbers.isUsed(r, f)).isPresent());
        used.setDisable(bench.draft().session().isEmpty());
        boolean mono = f.band().band().isPresent();
        String word = f.band().band().map(Band::name).orElse(Texts.of("panel.frame.image.colour"));
        List<String> words = new ArrayList<>(BANDS);
        if (!BANDS.contains(word)) {
            words.add(word);
        }
        // A list that is set anew is drawn anew, sixty times a second while a hand drags.
        if (!band.getItems().equals(words)) {
            band.getItems().setAll(words);
        }
        band.setValue(word);
        band.setDisable(!mono);
        bandSource.setText(Texts.of("panel.frame.band.source", f.band().source()));
        passband.setDisable(!mono);
        passband.show(f.band()
                .band()
                .map(b -> Numbers.plain(b.passband().fromNm()) + "-"
                        + Numbers.plain(b.passband().toNm()))
                .orElse(""));
        RecordingSpan span = f.timing().span();
        start.show(UtcText.format(span.start()));
        end.show(UtcText.format(span.end()));
        mirrored.setValue(f.givenMirrored());
        encoding.show(f.givenEncoding().map(Encoding::word).orElse(""));
        timeSource.setText(Texts.of(
                "panel.frame.times.source", UserMessages.inWords(f.timing().source())));
        say(numbers, numbers(f));
        String doubt = UserMessages.lines(f.notes());
        say(notes, doubt);
    }

    private String numbers(DatedFrame f) {
        StringBuilder text = new StringBuilder();
        Optional<Timetable> t = bench.timetableProperty().get();
        Optional<Timetable.Row> row = t.flatMap(all ->
                all.rows().stream().filter(r -> r.exposure().frame().equals(f)).findFirst());
        row.ifPresent(r -> describe(text, t.get(), r));
        row.ifPresent(r -> bench.combination()
                .flatMap(c -> c.frames().stream()
                        .filter(found -> found.exposure().frame().equals(f))
                        .findFirst())
                .ifPresent(found -> describe(text, r, found)));
        return text.toString();
    }

    private static void describe(StringBuilder text, Timetable t, Timetable.Row r) {
        text.append(Texts.of("panel.frame.turned", r.turnedDeg() + 0.0, Math.abs(r.sweptDeg())));
        if (Numbers.isReference(t, r.exposure().frame())) {
            text.append(Texts.of("panel.frame.reference"));
        }
    }

    private static void describe(StringBuilder text, Timetable.Row row, Combination.FrameResult r) {
        double radius = r.disk().equatorialRadiusPx();
        double blur = r.limb().shading().blurPx();
        text.append(Texts.of(
                "panel.frame.smear",
                row.sweptPx(radius),
                blur,
                row.smeared(radius, blur) ? Texts.of("panel.frame.smear.shorter") : "",
                100 * r.weight()));
    }

    private void setBand(String word) {
        bench.selectedFrame().ifPresent(f -> ask(f, Optional.of(word), span(f), f.givenMirrored()));
    }

    private void setMirrored(Optional<Boolean> said) {
        bench.selectedFrame().ifPresent(f -> ask(f, word(f), span(f), said));
    }

    private void setEncoding(String text) {
        Optional<Encoding> said = text.isBlank() ? Optional.empty() : Optional.of(Encoding.of(text));
        bench.selectedFrame().ifPresent(f -> {
            SheetRow row = new SheetRow(f.head().file(), word(f), span(f), f.givenMirrored(), said, FrameChanges.TYPED);
            bench.settle(new FrameRequest(row.file(), f.request().band(), Optional.of(row)));
        });
    }

    private static Optional<String> word(DatedFrame f) {
        return f.request().row().flatMap(SheetRow::band);
    }

    private static Optional<RecordingSpan> span(DatedFrame f) {
        return f.request().row().flatMap(SheetRow::span);
    }

    private void setPassband(String text) {
        String[] edges = text.split("-", -1);
        if (edges.length != 2) {
            throw new IllegalArgumentException(Texts.of("panel.frame.passband.wrong"));
        }
        Passband passes = new Passband(Numbers.number(edges[0]), Numbers.number(edges[1]));
        bench.selectedFrame().flatMap(f -> f.band().band()).ifPresent(b -> bench.setPassband(b.name(), passes));
    }

    private void setTimes(Instant newStart, Instant newEnd) {
        bench.selectedFrame().ifPresent(f -> {
            RecordingSpan old = f.timing().span();
            RecordingSpan span =
                    new RecordingSpan(newStart == null ? old.start() : newStart, newEnd == null ? old.end() : newEnd);
            ask(f, word(f), Optional.of(span), f.givenMirrored());
        });
    }

    private void ask(DatedFrame f, Optional<String> band, Optional<RecordingSpan> span, Optional<Boolean> mirrored) {
        SheetRow row = new SheetRow(f.head().file(), band, span, mirrored, f.givenEncoding(), FrameChanges.TYPED);
        bench.settle(new FrameRequest(row.file(), f.request().band(), Optional.of(row)));
    }
}
