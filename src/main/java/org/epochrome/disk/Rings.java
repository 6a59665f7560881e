package org.epochrome.disk;

import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * Where Saturn's main rings (C, B, Cassini Division, A) and their shadow lie over a {@link View}, so that these pixels can
 * be kept out of what belongs to the globe alone. Edges: inner C 74 658 km, inner B 91 975 km, outer A 136 780 km (French
 * et al. 2017; Colwell et al. 2009), in equatorial radii of 60 268 km.
 */
public final class Rings {
    private static final double INNER = 74_658 / 60_268.0;
    private static final double BRIGHT = 91_975 / 60_268.0;
    private static final double OUTER = 136_780 / 60_268.0;
    /** A ring seen closer to edge-on than this is drawn as thick as this. */
    private static final double LEAST_OPENING = 0.004;

    private Rings() {}

    /**
     * 1 where ring or ring shadow cover the globe or the sky, 0 elsewhere, with a soft edge around them.
     *
     * @param softPx standard deviation of the edge; what lies within twice that of a ring is covered too
     */
    public static Plane cover(View view, int width, int height, double softPx) {
        Plane plane = new Plane(width, height);
        double edge = 2 * softPx / view.disk().equatorialRadiusPx();
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    double pole = view.pole(x, y);
                    double side = view.side(x, y);
                    if (seen(view, pole, side, INNER, edge) || shadowed(view, pole, side, edge)) {
                        plane.set(x, y, 1);
                    }
                }
            }
        });
        return Gaussian.blur(plane, softPx);
    }

    /** Rough brightness of the rings as a part of the globe's, for the size of the whole patch in a frame. */
    static void draw(View view, Plane picture, float brightness) {
        for (int y = 0; y < picture.height(); y++) {
            for (int x = 0; x < picture.width(); x++) {
                if (seen(view, view.pole(x, y), view.side(x, y), BRIGHT, 0)) {
                    picture.set(x, y, Math.max(brightness, picture.at(x, y)));
                }
            }
        }
    }

    /** Whether a ring is seen at a place: within its edges and not behind the globe. */
    private static boolean seen(View view, double pole, double side, double inner, double edge) {
        double opening = Math.sin(view.globe().tilt());
        double held = Math.copySign(Math.max(Math.abs(opening), LEAST_OPENING), opening);
        double towards = -pole / held;
        double slack = edge * Math.min(8, Math.max(1, Math.abs(towards / held) / Math.hypot(side, towards)));
        double radius = Math.hypot(side, towards);
        if (radius < inner - slack || radius > OUTER + slack) {
            return false;
        }
        double globe = view.depth(pole, side);
        double ring = Math.cos(view.globe().tilt()) * towards;
        return Double.isNaN(globe) || ring > globe - edge;
    }

    /** Whether the ring stands between the surface seen at a place and the Sun. */
    private static boolean shadowed(View view, double pole, double side, double edge) {
        double depth = view.depth(pole, side);
        if (Double.isNaN(depth) || Math.abs(view.globe().sunZ()) < 1e-4) {
            return false;
        }
        double bodyX = view.bodyX(pole, depth);
        double bodyZ = view.bodyZ(pole, depth);
        double way = -bodyZ / view.globe().sunZ();
        if (way <= 0) {
            return false;
        }
        double radius = Math.hypot(
                bodyX + way * view.globe().sunX(), side + way * view.globe().sunY());
        double slack = edge * Math.min(8, 1 / Math.abs(view.globe().sunZ()));
        return radius > INNER - slack && radius < OUTER + slack;
    }
}
