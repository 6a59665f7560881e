package org.epochrome.evidence;

import java.util.LinkedHashMap;
import java.util.Map;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Spline;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.register.LightCentre;

/**
 * The colour picture that frames give when they are only aligned by the centroid of their light: what the
 * result is compared with. Frames are added one by one.
 */
public final class PlainStack {
    private final Combination c;
    private final double x;
    private final double y;
    private final Map<String, Plane> sums = new LinkedHashMap<>();
    private final Map<String, Plane> weights = new LinkedHashMap<>();

    /** An empty stack on the pixels of the combination. */
    PlainStack(Combination c) {
        this.c = c;
        // The result's own disk, seen in the frames' light, shows where its centroid is to go.
        FrameResult reference = c.frames().get(reference(c));
        PixelOffset off = LightCentre.of(reference.exposure().load(), placed(reference));
        x = c.disk().x() + off.x();
        y = c.disk().y() + off.y();
    }

    /** The whole stack of a combination, its frames read once more. */
    public static ColourCube of(Combination c) {
        PlainStack stack = new PlainStack(c);
        c.frames().forEach(f -> stack.add(f, f.exposure().load()));
        return stack.cube();
    }

    /** Adds a frame with its weight, if its band is part of the picture. */
    void add(FrameResult f, Plane plane) {
        Assignment bands = c.recipe().assignment();
        String band = f.exposure().band().name();
        if (!band.equals(bands.red()) && !band.equals(bands.green()) && !band.equals(bands.blue())) {
            return;
        }
        Plane sum = sums.computeIfAbsent(
                band, b -> new Plane(c.cube().width(), c.cube().height()));
        Plane weight = weights.computeIfAbsent(
                band, b -> new Plane(c.cube().width(), c.cube().height()));
        FittedDisk fit = placed(f);
        PixelOffset own = LightCentre.of(plane, fit);
        double dx = fit.disk().x() + own.x() - x;
        double dy = fit.disk().y() + own.y() - y;
        Spline spline = new Spline(aboveSky(plane, fit));
        for (int row = 0; row < sum.height(); row++) {
            for (int column = 0; column < sum.width(); column++) {
                if (spline.contains(column + dx, row + dy)) {
                    int i = row * sum.width() + column;
                    sum.data()[i] += (float) f.weight() * spline.at(column + dx, row + dy);
                    weight.data()[i] += (float) f.weight();
                }
            }
        }
    }

    private static Plane aboveSky(Plane plane, FittedDisk fit) {
        Plane filled = plane.copy();
        for (int i = 0; i < filled.data().length; i++) {
            float value = filled.data()[i];
            filled.data()[i] = Float.isNaN(value) ? 0 : (float) (value - fit.background());
        }
        return filled;
    }

    /** What was stacked. */
    ColourCube cube() {
        Assignment bands = c.recipe().assignment();
        return new ColourCube(mean(bands.red()), mean(bands.green()), mean(bands.blue()));
    }

    private Plane mean(String band) {
        Plane mean = sums.get(band).copy();
        float[] weight = weights.get(band).data();
        for (int i = 0; i < weight.length; i++) {
            mean.data()[i] = weight[i] > 0 ? mean.data()[i] / weight[i] : Float.NaN;
        }
        return mean;
    }

    /** The frame on whose pixels the result lies: the one whose disk lies where the result's does. */
    static int reference(Combination c) {
        int best = 0;
        for (int i = 1; i < c.frames().size(); i++) {
            best = distance(c, i) < distance(c, best) ? i : best;
        }
        return best;
    }

    private static double distance(Combination c, int index) {
        var disk = c.frames().get(index).disk();
        return Math.hypot(disk.x() - c.disk().x(), disk.y() - c.disk().y());
    }

    private static FittedDisk placed(FrameResult f) {
        return f.limb().at(f.disk());
    }
}
