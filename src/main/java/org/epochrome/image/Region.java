package org.epochrome.image;

/**
 * A rectangle of pixels within a plane.
 *
 * @param left number of its first column
 * @param top number of its first row
 * @param width pixels, at least 1
 * @param height pixels, at least 1
 */
public record Region(int left, int top, int width, int height) {
    /**
     * The pixels no farther than a reach from a place, right or left and up or down, as far as an image has them.
     *
     * @param width of the image, pixels
     * @param height of the image, pixels
     */
    public static Region around(double x, double y, double reachPx, int width, int height) {
        return between(x - reachPx, y - reachPx, x + reachPx, y + reachPx, width, height);
    }

    /** The pixels between two places, as far as an image has them; the nearest one if it has none. */
    public static Region between(double left, double top, double right, double bottom, int width, int height) {
        int firstColumn = inside(Math.floor(left), width);
        int firstRow = inside(Math.floor(top), height);
        return new Region(
                firstColumn,
                firstRow,
                inside(Math.ceil(right), width) - firstColumn + 1,
                inside(Math.ceil(bottom), height) - firstRow + 1);
    }

    private static int inside(double place, int size) {
        return (int) Math.max(0, Math.min(size - 1, place));
    }

    /** The least region that holds this one and another. */
    public Region with(Region other) {
        int firstColumn = Math.min(left, other.left);
        int firstRow = Math.min(top, other.top);
        return new Region(
                firstColumn,
                firstRow,
                Math.max(left + width, other.left + other.width) - firstColumn,
                Math.max(top + height, other.top + other.height) - firstRow);
    }

    /** A copy of these pixels; the plane itself if they are all it has. */
    public Plane of(Plane plane) {
        if (isAllOf(plane.width(), plane.height())) {
            return plane;
        }
        Plane part = new Plane(width, height);
        for (int y = 0; y < height; y++) {
            System.arraycopy(plane.data(), (top + y) * plane.width() + left, part.data(), y * width, width);
        }
        return part;
    }

    /** Puts pixels back to where they were. */
    public void put(Plane part, Plane plane) {
        for (int y = 0; y < height; y++) {
            System.arraycopy(part.data(), y * width, plane.data(), (top + y) * plane.width() + left, width);
        }
    }

    /** A plane with these pixels and zeros around them; the part itself if nothing is around them. */
    public Plane amongZeros(Plane part, int wholeWidth, int wholeHeight) {
        if (isAllOf(wholeWidth, wholeHeight)) {
            return part;
        }
        Plane plane = new Plane(wholeWidth, wholeHeight);
        put(part, plane);
        return plane;
    }

    private boolean isAllOf(int wholeWidth, int wholeHeight) {
        return width == wholeWidth && height == wholeHeight;
    }
}
