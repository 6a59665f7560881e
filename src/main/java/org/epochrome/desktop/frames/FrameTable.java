package org.epochrome.desktop.frames;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.control.Tooltip;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.render.MipMap;
import org.epochrome.desktop.state.TimeBars;
import org.epochrome.desktop.style.CoalescedUpdate;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;

/** All frames of the session, a row each, to sort and to select several. */
final class FrameTable extends TableView<FrameTable.Row> {
    private static final double ROW_PX = 30;

    private final Workspace bench;
    private final CoalescedUpdate redrawing = new CoalescedUpdate(this::refresh);
    private boolean showing;

    /**
     * A frame and what was found about it.
     *
     * @param index number of the frame in the session
     * @param result of its plane, or of the green one; empty until it is combined
     */
    record Row(int index, DatedFrame frame, Optional<Combination.FrameResult> result, boolean used) {
        double blurPx() {
            return result.map(r -> r.limb().shading().blurPx()).orElse(Double.NaN);
        }

        double weight() {
            return result.map(r -> 100 * r.weight()).orElse(Double.NaN);
        }

        double radiusPx() {
            return result.map(r -> r.disk().equatorialRadiusPx()).orElse(Double.NaN);
        }

        double lengthS() {
            return frame.timing().span().duration().toMillis() / 1000.0;
        }

        String band() {
            return frame.band().band().map(b -> b.name()).orElse(Texts.of("panel.frame.image.colour"));
        }
    }

    FrameTable(Workspace bench) {
        this.bench = bench;
        setId("frame-table");
        setAccessibleText(Texts.of("frames.table"));
        setTooltip(new Tooltip(Texts.of("frames.table.tip")));
        setFixedCellSize(ROW_PX);
        getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
        setPlaceholder(new Label(Texts.of("frames.none")));
        getColumns().add(thumbnails());
        getColumns().add(column(Texts.of("frames.band"), Texts.of("frames.band.tip"), 40, Row::band, Row::band));
        getColumns()
                .add(column(
                        Texts.of("frames.time"),
                        Texts.of("frames.time.tip"),
                        58,
                        r -> r.frame.timing().span().start(),
                        r -> TimeBars.clock(r.frame.timing().span().start())));
        getColumns().add(number(Texts.of("frames.length"), Texts.of("frames.length.tip"), 36, Row::lengthS, "%.0f"));
        getColumns().add(number(Texts.of("frames.blur"), Texts.of("frames.blur.tip"), 40, Row::blurPx, "%.2f"));
        getColumns().add(number(Texts.of("frames.weight"), Texts.of("frames.weight.tip"), 36, Row::weight, "%.0f"));
        getColumns().add(number(Texts.of("frames.radius"), Texts.of("frames.radius.tip"), 48, Row::radiusPx, "%.1f"));
        setRowFactory(table -> row());
        getSelectionModel().getSelectedIndices().addListener((ListChangeListener<Integer>) c -> chosen());
    }

    private static TableRow<Row> row() {
        return new TableRow<>() {
            @Override
            protected void updateItem(Row item, boolean empty) {
                super.updateItem(item, empty);
                boolean out = item != null && !empty && !item.used;
                getStyleClass().remove("left-out");
                if (out) {
                    getStyleClass().add("left-out");
                }
                setTooltip(
                        item == null || empty
                                ? null
                                : new Tooltip(item.frame.head().file().getFileName()
                                        + (out ? "\n" + Texts.of("ribbon.leftOut") : "")));
            }
        };
    }

    private static TableColumn<Row, Row> sized(String title, String teaches, double width) {
        TableColumn<Row, Row> column = new TableColumn<>();
        Label head = new Label(title);
        head.setTooltip(new Tooltip(teaches));
        column.setGraphic(head);
        column.setMinWidth(width);
        column.setPrefWidth(width);
        column.setCellValueFactory(v -> new ReadOnlyObjectWrapper<>(v.getValue()));
        return column;
    }

    private static <V extends Comparable<? super V>> TableColumn<Row, Row> column(
            String title, String teaches, double width, Function<Row, V> order, Function<Row, String> text) {
        TableColumn<Row, Row> column = sized(title, teaches, width);
        column.setComparator(Comparator.comparing(order));
        column.setCellFactory(c -> new TableCell<>() {
            @Override
            protected void updateItem(Row item, boolean empty) {
                super.updateItem(item, empty);
                setText(item == null || empty ? null : text.apply(item));
            }
        });
        return column;
    }

    private static TableColumn<Row, Row> number(
            String title, String teaches, double width, Function<Row, Double> value, String format) {
        TableColumn<Row, Row> column = column(
                title, teaches, width, value, r -> value.apply(r).isNaN() ? "" : Numbers.text(format, value.apply(r)));
        column.getStyleClass().add("number");
        return column;
    }

    private TableColumn<Row, Row> thumbnails() {
        TableColumn<Row, Row> column = sized(Texts.of("frames.picture"), Texts.of("frames.picture.tip"), 32);
        column.setSortable(false);
        column.setCellFactory(c -> new TableCell<>() {
            private final ImageView view = new ImageView();

            @Override
            protected void updateItem(Row item, boolean empty) {
                super.updateItem(item, empty);
                Optional<MipMap.Level> level = item == null || empty
                        ? Optional.empty()
                        : bench.renderer().thumbnails().of(item.frame, redrawing::ask);
                view.setImage(level.map(FrameTable::image).orElse(null));
                setGraphic(level.isPresent() ? view : null);
            }
        });
        return column;
    }

    private static WritableImage image(MipMap.Level l) {
        return new WritableImage(
                new PixelBuffer<>(l.width(), l.height(), l.argb(), PixelFormat.getIntArgbPreInstance()));
    }

    /** Shows the frames as they are now; the order and the selection stay as far as they can. */
    void renew() {
        List<DatedFrame> frames = bench.draft().frames();
        List<Row> rows = IntStream.range(0, frames.size())
                .mapToObj(i -> row(i, frames.get(i)))
                .toList();
        showing = true;
        try {
            if (!rows.equals(getItems().stream()
                    .sorted(Comparator.comparingInt(Row::index))
                    .toList())) {
                List<Integer> selected = getSelectionModel().getSelectedItems().stream()
                        .map(Row::index)
                        .toList();
                getItems().setAll(rows);
                sort();
                getSelectionModel().clearSelection();
                IntStream.range(0, getItems().size())
                        .filter(i -> selected.contains(getItems().get(i).index))
                        .forEach(getSelectionModel()::select);
                setPrefHeight(Math.min(9, Math.max(2, rows.size())) * ROW_PX + 40);
            }
            int chosen = bench.selectionProperty().get().frame();
            if (selected().stream().noneMatch(r -> r.index == chosen)) {
                getItems().stream().filter(r -> r.index == chosen).findFirst().ifPresent(r -> {
                    getSelectionModel().clearSelection();
                    getSelectionModel().select(r);
                });
            }
        } finally {
            showing = false;
        }
    }

    private Row row(int index, DatedFrame frame) {
        boolean used = bench.draft().recipe().map(r -> Numbers.isUsed(r, frame)).orElse(true);
        return new Row(index, frame, used ? FrameResults.of(bench, frame) : Optional.empty(), used);
    }

    /** The rows that are selected. */
    List<Row> selected() {
        return getSelectionModel().getSelectedItems().stream()
                .filter(r -> r != null)
                .toList();
    }

    private void chosen() {
        Row row = getSelectionModel().getSelectedItem();
        if (!showing && row != null && bench.selectionProperty().get().frame() != row.index) {
            bench.selectFrame(row.index);
        }
    }
}
