package org.epochrome.desktop.render;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.epochrome.colour.finish.Look;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.preview.FinePreview;

/** A part of the picture at full resolution, where the user looks, while the rest follows on coarser pixels. */
public final class FinePart {
    /** What follows a hand at once. */
    private static final int MOST_PX = 400;

    private final LatestTaskRunner preparing;
    private final LatestTaskRunner making;
    private final Consumer<Throwable> refused;
    private final ReadOnlyObjectWrapper<Optional<Part>> part = new ReadOnlyObjectWrapper<>(Optional.empty());
    private Optional<FinePreview> preview = Optional.empty();
    private Look preparedFor;
    private double[] visible = {};

    /**
     * Pixels of the picture.
     *
     * @param region where they lie in it
     */
    public record Part(ScreenPicture picture, Region region) {}

    FinePart(Executor background, Executor quickly, Executor face, Consumer<Throwable> refused) {
        preparing = new LatestTaskRunner(background, face, true);
        making = new LatestTaskRunner(quickly, face, false);
        this.refused = refused;
    }

    /** The part, as long as the whole picture is not there. */
    public ReadOnlyObjectProperty<Optional<Part>> partProperty() {
        return part.getReadOnlyProperty();
    }

    /** Says what the user sees of the picture and looks at most, pixels of the picture. */
    public void look(double left, double top, double right, double bottom, double atX, double atY) {
        visible = new double[] {left, top, right, bottom, atX, atY};
    }

    /** Makes ready for a combination that is shown with a look. */
    void prepare(Combination c, Look look) {
        boolean known = preview.filter(p -> shows(p, c)).isPresent()
                && look.white().equals(preparedFor.white())
                && look.sharpening().equals(preparedFor.sharpening());
        if (!known) {
            preparing.submit(
                    progress -> new FinePreview(c, look),
                    made -> {
                        preview = Optional.of(made);
                        preparedFor = look;
                    },
                    refused,
                    (at, doing) -> {});
        }
    }

    void clear() {
        making.cancel();
        part.set(Optional.empty());
    }

    void forget() {
        clear();
        preparing.cancel();
        preview = Optional.empty();
    }

    private static boolean shows(FinePreview preview, Combination c) {
        return preview.combination().recipe().equals(c.recipe());
    }

    /** Makes the part with a look, if a combination is prepared. */
    void show(Combination c, Look look) {
        Optional<FinePreview> ready = preview.filter(p -> shows(p, c));
        if (ready.isEmpty()) {
            return;
        }
        Region region = region(c.cube().width(), c.cube().height());
        making.submit(
                progress -> new Part(picture(ready.get(), region, look), region),
                made -> part.set(Optional.of(made)),
                refused,
                (at, doing) -> {});
    }

    private static ScreenPicture picture(FinePreview preview, Region region, Look look) {
        List<Plane> planes = preview.part(region, look);
        Combination c = preview.combination();
        return ScreenPicture.of(planes, 1, c.disk().movedBy(-region.left(), -region.top()), c.aspect(), c.epoch());
    }

    /** What is visible, or as much of it as can follow, around the place that is looked at. */
    private Region region(int width, int height) {
        if (visible.length == 0) {
            return Region.around(0.5 * width, 0.5 * height, MOST_PX / 2 - 1, width, height);
        }
        double left = middle(visible[0], visible[2], visible[4], width);
        double top = middle(visible[1], visible[3], visible[5], height);
        return Region.between(
                Math.max(left, visible[0]),
                Math.max(top, visible[1]),
                Math.min(left + MOST_PX - 1, visible[2]),
                Math.min(top + MOST_PX - 1, visible[3]),
                width,
                height);
    }

    /** The first pixel of so many around a place, within what is visible and within the picture. */
    private static double middle(double from, double to, double at, int size) {
        double first = Math.max(0, from);
        double last = Math.max(first, Math.min(size, to) - MOST_PX);
        return Math.rint(Math.max(first, Math.min(last, at - MOST_PX / 2)));
    }
}
