package org.epochrome.desktop.state;

/**
 * How a picture lies in the viewer: pixel {@code (x, y)} of the picture, counted from the centre of its first, is seen at
 * {@code left + scale * (x + 0.5)} and {@code top + scale * (y + 0.5)}.
 *
 * @param scale units of the viewer that a pixel of the picture is wide
 * @param left where the picture's left edge is seen
 * @param top where its top edge is seen
 */
public record Zoom(double scale, double left, double top) {
    private static final double LEAST = 0.02;
    private static final double MOST = 64;

    public double viewX(double x) {
        return left + scale * (x + 0.5);
    }

    public double viewY(double y) {
        return top + scale * (y + 0.5);
    }

    public double imageX(double viewX) {
        return (viewX - left) / scale - 0.5;
    }

    public double imageY(double viewY) {
        return (viewY - top) / scale - 0.5;
    }

    /** Larger or smaller, while what is seen at a place stays there. */
    public Zoom by(double factor, double viewX, double viewY) {
        double next = Math.max(LEAST, Math.min(MOST, scale * factor));
        double ratio = next / scale;
        return new Zoom(next, viewX - ratio * (viewX - left), viewY - ratio * (viewY - top));
    }

    public Zoom movedBy(double dx, double dy) {
        return new Zoom(scale, left + dx, top + dy);
    }

    /** A square around a place of the picture, as large as the viewer allows. */
    public static Zoom around(double x, double y, double reach, double width, double height) {
        double scale = Math.max(LEAST, Math.min(MOST, Math.min(width, height) / (2 * reach)));
        return centred(x, y, scale, width, height);
    }

    /** A place of the picture in the middle of the viewer. */
    public static Zoom centred(double x, double y, double scale, double width, double height) {
        return new Zoom(scale, width / 2 - scale * (x + 0.5), height / 2 - scale * (y + 0.5));
    }
}
