package org.epochrome.evidence;

import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Layer;
import org.epochrome.colour.Merge;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.image.Spline;
import org.epochrome.session.Assignment;
import org.epochrome.session.Combination;
import org.epochrome.session.Combination.FrameResult;
import org.epochrome.session.LightCentre;
import org.epochrome.session.PixelOffset;

/**
 * The colour picture that frames give when they are only laid on top of each other by the centroid of their light: what the
 * result is compared with.
 */
public final class PlainStack {
    private PlainStack() {}

    /** The stack on the pixels of the combination. */
    public static ColourCube of(Combination c, List<Plane> planes) {
        // The result's own disk, seen in the frames' light, tells where its centre of light is to go.
        int reference = reference(c);
        PixelOffset off =
                LightCentre.of(planes.get(reference), placed(c.frames().get(reference)));
        double x = c.disk().x() + off.x();
        double y = c.disk().y() + off.y();
        Assignment bands = c.recipe().assignment();
        return new ColourCube(
                band(bands.red(), c, planes, x, y),
                band(bands.green(), c, planes, x, y),
                band(bands.blue(), c, planes, x, y));
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

    private static Plane band(String band, Combination c, List<Plane> planes, double x, double y) {
        List<Integer> members = java.util.stream.IntStream.range(0, planes.size())
                .filter(i -> c.frames().get(i).exposure().band().name().equals(band))
                .boxed()
                .toList();
        List<Layer> layers = members.stream()
                .map(i -> {
                    FrameResult f = c.frames().get(i);
                    Plane weight = Plane.filled(c.cube().width(), c.cube().height(), (float) f.weight());
                    return new Layer(moved(planes.get(i), placed(f), c.cube(), x, y), weight, (float)
                            f.limb().noise());
                })
                .toList();
        return Merge.of(layers).mean();
    }

    /** A plane's light above the sky, moved so that its centre comes to lie at a place. */
    private static Plane moved(Plane plane, FittedDisk fit, ColourCube like, double x, double y) {
        PixelOffset own = LightCentre.of(plane, fit);
        double dx = fit.disk().x() + own.x() - x;
        double dy = fit.disk().y() + own.y() - y;
        Plane filled = plane.copy();
        for (int i = 0; i < filled.data().length; i++) {
            float value = filled.data()[i];
            filled.data()[i] = Float.isNaN(value) ? 0 : (float) (value - fit.background());
        }
        Spline spline = new Spline(filled);
        Plane out = new Plane(like.width(), like.height());
        for (int row = 0; row < out.height(); row++) {
            for (int column = 0; column < out.width(); column++) {
                out.set(
                        column,
                        row,
                        spline.contains(column + dx, row + dy) ? spline.at(column + dx, row + dy) : Float.NaN);
            }
        }
        return out;
    }
}
