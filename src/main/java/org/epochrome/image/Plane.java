package org.epochrome.image;

import java.util.Arrays;

/**
 * One grey image: linear brightness as floats, row 0 on top, (0, 0) the centre of the top-left pixel. NaN means "no
 * data". The pixels are the one thing in Epochrome that can change in place.
 */
public final class Plane {
    private final int width;
    private final int height;
    private final float[] data;

    /** A plane of zeros. */
    public Plane(int width, int height) {
        this(width, height, new float[Math.multiplyExact(width, height)]);
    }

    /**
     * A plane over the given pixels, which are not copied.
     *
     * @param data row after row, {@code width * height} long
     */
    public Plane(int width, int height, float[] data) {
        if (width <= 0 || height <= 0 || data.length != Math.multiplyExact(width, height)) {
            throw new IllegalArgumentException(
                    "A plane of " + width + "x" + height + " does not fit " + data.length + " pixels.");
        }
        this.width = width;
        this.height = height;
        this.data = data;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** The pixels themselves, row after row; changing them changes the plane. */
    public float[] data() {
        return data;
    }

    public float at(int x, int y) {
        return data[y * width + x];
    }

    public void set(int x, int y, float value) {
        data[y * width + x] = value;
    }

    public Plane copy() {
        return new Plane(width, height, data.clone());
    }

    public boolean sameSize(Plane other) {
        return width == other.width && height == other.height;
    }

    public static Plane filled(int width, int height, float value) {
        Plane plane = new Plane(width, height);
        Arrays.fill(plane.data, value);
        return plane;
    }

    @Override
    public String toString() {
        return "Plane " + width + "x" + height;
    }
}
