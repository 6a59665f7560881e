package org.epochrome.moon.removal;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Spline;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.fit.MoonField;
import org.epochrome.turn.Rotation;

/**
 * Which frames saw the clouds that a companion hides in one, and what they saw. A companion goes its own way, so that at
 * another time it stands before other clouds.
 */
final class Sightings {
    /** Frames that are asked about the clouds below a companion in a frame. */
    private static final int MOST_WITNESSES = 4;
    /** Light of an even globe between which what is seen on it grows from useless to good. */
    private static final double DARK = 0.2;

    private static final double BRIGHT = 0.3;
    /** Part of what is hidden that is as good as all of it. */
    private static final double CLEAR = 0.9;
    /** Places along each axis at which it is asked what hides what. */
    private static final int PROBES = 7;

    private static final double MARGIN_BLURS = 8;

    private final List<MoonFrame> frames;
    private final List<Rotation> rotations;

    /** @param rotations how far the globe turns from the epoch to each frame */
    Sightings(List<MoonFrame> frames, List<Rotation> rotations) {
        this.frames = frames;
        this.rotations = rotations;
    }

    /** The frames that saw most of what a companion hides in one: of those that saw nearly all, the nearest in time. */
    List<Integer> witnesses(int index, MoonOrShadow companion) {
        MoonFrame frame = frames.get(index);
        if (!frame.fit().rings().isNone()) {
            return List.of();
        }
        double[] clear = IntStream.range(0, frames.size())
                .mapToDouble(j -> j == index ? 0 : Math.min(CLEAR, clear(index, companion, j)))
                .toArray();
        return IntStream.range(0, frames.size())
                .filter(j -> clear[j] > 0)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(j -> -clear[j])
                        .thenComparingDouble(j -> Math.abs(MoonOrShadow.secondsSince(
                                frame.mid(), frames.get(j).mid()))))
                .limit(MOST_WITNESSES)
                .toList();
    }

    /** Part of what a companion hides in a frame that it does not hide in another. */
    private double clear(int index, MoonOrShadow companion, int other) {
        MoonFrame frame = frames.get(index);
        MoonFrame then = frames.get(other);
        SkyPoint here = companion.at(frame.mid());
        SkyPoint there = companion.at(then.mid());
        double reach = companion.radius() * frame.radiusPx() + frame.blurPx();
        double hiding = companion.radius() * then.radiusPx() + then.blurPx();
        int seen = 0;
        int all = 0;
        for (int j = 0; j < PROBES; j++) {
            for (int i = 0; i < PROBES; i++) {
                double dx = reach * (2.0 * i / (PROBES - 1) - 1);
                double dy = reach * (2.0 * j / (PROBES - 1) - 1);
                if (Math.hypot(dx, dy) <= reach) {
                    View.Place place = place(index, frame.x(here) + dx, frame.y(here) + dy, other);
                    all++;
                    seen += place.visible() && Math.hypot(place.x() - then.x(there), place.y() - then.y(there)) > hiding
                            ? 1
                            : 0;
                }
            }
        }
        return (double) seen / all;
    }

    /** Where a frame shows the clouds at a pixel of another. */
    private View.Place place(int index, double x, double y, int other) {
        View from = frames.get(index).view();
        double pole = from.pole(x, y);
        double side = from.side(x, y);
        double depth = from.depth(pole, side);
        if (Double.isNaN(depth)) {
            return new View.Place(Double.NaN, Double.NaN, false);
        }
        double bodyX = from.bodyX(pole, depth);
        double latitude = from.graphicLatitude(bodyX, side, from.bodyZ(pole, depth));
        double turned =
                rotations.get(other).backRad(latitude) - rotations.get(index).backRad(latitude);
        return frames.get(other).view().place(latitude, View.eastOfMeridian(bodyX, side) + turned);
    }

    /**
     * What a frame saw in a window of another, no sharper than the other is.
     *
     * @param field the frame that is asked, without companions
     * @param doubt standard error of its light where it was covered
     */
    SurfaceSighting seen(int index, Region window, int other, MoonField field, Plane doubt) {
        SurfaceSighting sight = new SurfaceSighting(
                new Plane(window.width(), window.height()), new Plane(window.width(), window.height()));
        MoonFrame frame = frames.get(index);
        MoonFrame then = field.frame();
        View.Place middle =
                place(index, window.left() + 0.5 * window.width(), window.top() + 0.5 * window.height(), other);
        boolean held = middle.visible() && then.has(middle.x(), middle.y());
        double scale = then.radiusPx() / frame.radiusPx();
        double reach = scale * Math.max(window.width(), window.height()) + MARGIN_BLURS * frame.blurPx();
        MoonField near = held ? field.around(middle.x(), middle.y(), reach) : field;
        double offX = near.frame().fit().disk().x() - then.fit().disk().x();
        double offY = near.frame().fit().disk().y() - then.fit().disk().y();
        double lacking = Math.pow(scale * frame.blurPx(), 2) - Math.pow(then.blurPx(), 2);
        Spline clouds = new Spline(Gaussian.blur(clouds(near), Math.sqrt(Math.max(0, lacking))));
        for (int y = 0; y < window.height(); y++) {
            for (int x = 0; x < window.width(); x++) {
                View.Place place = place(index, window.left() + x, window.top() + y, other);
                boolean visible = held
                        && place.visible()
                        && then.has(place.x(), place.y())
                        && clouds.contains(place.x() + offX, place.y() + offY);
                int column = (int) Math.round(place.x());
                int row = (int) Math.round(place.y());
                if (visible && field.even().at(column, row) > DARK) {
                    sight.clouds().set(x, y, clouds.at(place.x() + offX, place.y() + offY));
                    sight.doubt().set(x, y, doubt.at(column, row) / field.even().at(column, row));
                } else {
                    sight.doubt().set(x, y, SurfaceSighting.NOTHING);
                }
            }
        }
        return sight;
    }

    private static Plane clouds(MoonField field) {
        Plane clouds = field.light().copy();
        for (int i = 0; i < clouds.data().length; i++) {
            float even = field.even().data()[i];
            float trust = (float) Math.max(0, Math.min(1, (even - DARK) / (BRIGHT - DARK)));
            float value = trust * (clouds.data()[i] / even - 1);
            clouds.data()[i] = trust == 0 || Float.isNaN(value) ? 0 : value;
        }
        return clouds;
    }
}
