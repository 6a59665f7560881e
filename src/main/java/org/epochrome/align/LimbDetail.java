package org.epochrome.align;

import java.util.List;
import java.util.Optional;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Smear;
import org.epochrome.turn.Turned;

/**
 * The limb of a frame as detail: its light along the limb, band-passed, against that of the model of its disk. Gains of
 * their own in every neighbourhood leave little of the model's brightness and limb darkening in the answer.
 */
public final class LimbDetail {
    /** Softenings between which the band-pass lies, in blurs. */
    private static final double FINE = 0.35;

    private static final double COARSE = 2.8;
    /** The zone along the limb, in radii of its ellipse and in blurs inside and outside. */
    private static final double ZONE_BLURS = 4;

    private static final double ZONE = 0.06;
    /** Part of the brightest shading, just inside the limb, from which a limb is lit; a terminator has no edge. */
    private static final double LIT = 0.12;

    /** Pairs of opposite sectors of the limb. */
    private static final int PAIRS = 8;
    /** By how much the sectors understate the errors; found on rendered scenes. */
    private static final double UNSEEN = 1.7;
    /** Standard error that a shift has at least, pixels. */
    private static final double LEAST_PX = 1e-3;

    private LimbDetail() {}

    /**
     * By how much a frame lies off the model of its disk, along the limb.
     *
     * @param moved the frame, not turned, and its shading
     * @param view view of the globe on its pixels
     * @param blurPx its blur, standard deviation
     * @param smear what it is smeared by on top of that
     */
    public static Shift shift(Turned moved, View view, double blurPx, Smear smear) {
        double own = Math.max(1, blurPx);
        Plane zone = zone(moved, view, own);
        Detail model = detail(moved.shade(), zone, view, own, smear);
        Detail frame = detail(moved.picture(), zone, view, own, smear);
        double[] from = centre(moved.shade());
        double[] to = centre(moved.picture());
        ShiftSearch search = new ShiftSearch(
                List.of(frame), List.of(List.of(model)), new double[] {to[0] - from[0], to[1] - from[1]});
        Shift all = search.run().get(0);
        return all.known() ? withScatter(all, search, zone, view) : all;
    }

    /**
     * A shift with the standard errors of a jackknife: by how much it changes without one pair of opposite sectors (Tukey
     * 1958, Ann. Math. Stat. 29, 614), to first order. A model that is wrong all around the limb alike moves nothing, and the pairs
     * know.
     */
    private static Shift withScatter(Shift all, ShiftSearch search, Plane zone, View view) {
        byte[] pairs = pairs(zone, view);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int k = 0; k < PAIRS; k++) {
            Optional<Shift> change = search.changeOf(all, without(k, zone, pairs));
            if (change.isEmpty()) {
                return all;
            }
            double x = change.get().x();
            double y = change.get().y();
            xx += x * x;
            xy += x * y;
            yy += y * y;
        }
        double factor = UNSEEN * UNSEEN * (PAIRS - 1) / PAIRS;
        return new Shift(all.x(), all.y(), Math.sqrt(factor * xx), Math.sqrt(factor * yy), factor * xy)
                .withAddedSigma(LEAST_PX);
    }

    /** The centre of light: near enough for the search to begin with. */
    private static double[] centre(Plane picture) {
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        for (int y = 0; y < picture.height(); y++) {
            for (int x = 0; x < picture.width(); x++) {
                double light = Float.isNaN(picture.at(x, y)) ? 0 : picture.at(x, y);
                sum += light;
                sumX += light * x;
                sumY += light * y;
            }
        }
        return new double[] {sumX / sum, sumY / sum};
    }

    /** The number of the pair of sectors of each pixel of the zone. */
    private static byte[] pairs(Plane zone, View view) {
        byte[] pairs = new byte[zone.data().length];
        for (int i = 0; i < pairs.length; i++) {
            if (zone.data()[i] > 0) {
                int x = i % zone.width();
                int y = i / zone.width();
                double turn = Math.atan2(view.pole(x, y), view.side(x, y)) / Math.PI + 1;
                pairs[i] = (byte) (PAIRS * (turn - Math.floor(turn)));
            }
        }
        return pairs;
    }

    private static Plane without(int pair, Plane zone, byte[] pairs) {
        Plane rest = zone.copy();
        for (int i = 0; i < pairs.length; i++) {
            rest.data()[i] = pairs[i] == pair ? 0 : rest.data()[i];
        }
        return rest;
    }

    private static Detail detail(Plane picture, Plane zone, View view, double blur, Smear smear) {
        Plane light = picture.copy();
        for (int i = 0; i < light.data().length; i++) {
            light.data()[i] = Float.isNaN(light.data()[i]) ? 0 : light.data()[i];
        }
        Plane fine = Gaussian.blur(light, FINE * blur);
        Plane coarse = Gaussian.blur(light, COARSE * blur);
        for (int i = 0; i < fine.data().length; i++) {
            fine.data()[i] -= coarse.data()[i];
        }
        return new Detail(
                fine,
                zone,
                blur * Math.sqrt(1 + FINE * COARSE),
                smear.lengthPx(),
                view.disk().northAngleDeg());
    }

    /** 1 along the lit limb, fading to 0. */
    private static Plane zone(Turned moved, View view, double grain) {
        Plane shade = moved.shade();
        double radius = view.disk().equatorialRadiusPx();
        double half = ZONE + ZONE_BLURS * grain / radius;
        float brightest = 0;
        for (float s : shade.data()) {
            brightest = Math.max(brightest, s);
        }
        Plane zone = new Plane(shade.width(), shade.height());
        for (int y = 0; y < zone.height(); y++) {
            for (int x = 0; x < zone.width(); x++) {
                double pole = view.pole(x, y);
                double side = view.side(x, y);
                double from = view.ellipticRadius(pole, side);
                double inward = (1 - 1.5 * grain / radius) / Math.max(from, 0.1);
                float inside =
                        near(shade, view.column(pole * inward, side * inward), view.row(pole * inward, side * inward));
                double lit = Math.min(1, Math.max(0, inside / (LIT * brightest) - 1));
                double off = Math.abs(from - 1) / half;
                boolean seen = !Float.isNaN(moved.picture().at(x, y));
                zone.set(x, y, seen ? (float) (lit * Math.max(0, 1 - off * off)) : 0);
            }
        }
        return zone;
    }

    private static float near(Plane plane, double x, double y) {
        int column = (int) Math.max(0, Math.min(plane.width() - 1, Math.round(x)));
        int row = (int) Math.max(0, Math.min(plane.height() - 1, Math.round(y)));
        return plane.at(column, row);
    }
}
