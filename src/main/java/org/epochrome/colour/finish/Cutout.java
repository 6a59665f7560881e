package org.epochrome.colour.finish;

import org.epochrome.colour.ColourCube;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * The part of a picture that its planet lies in, with some of the sky around it.
 *
 * @param left first column
 * @param top first row
 * @param width pixels
 * @param height pixels
 */
record Cutout(int left, int top, int width, int height) {

    /** What lies no further than a margin from a globe and its rings; the whole picture if they lie beyond its edges. */
    static Cutout around(View view, int marginPx, int width, int height) {
        double[] half = halfSize(view.globe(), view.disk());
        int left = first(view.disk().x() - half[0] - marginPx);
        int top = first(view.disk().y() - half[1] - marginPx);
        int right = (int) Math.min(width, Math.ceil(view.disk().x() + half[0] + marginPx) + 1);
        int bottom = (int) Math.min(height, Math.ceil(view.disk().y() + half[1] + marginPx) + 1);
        return left < right && top < bottom
                ? new Cutout(left, top, right - left, bottom - top)
                : new Cutout(0, 0, width, height);
    }

    private static int first(double least) {
        return (int) Math.max(0, Math.floor(least));
    }

    /** Half the width and height of the box around globe and rings, pixels. */
    static double[] halfSize(Globe globe, Disk disk) {
        double along = globe.extent();
        double across =
                Math.max(globe.apparentAxisRatio(), globe.ringed() ? along * Math.abs(Math.sin(globe.tilt())) : 0);
        double sin = Math.sin(Math.toRadians(disk.northAngleDeg()));
        double cos = Math.cos(Math.toRadians(disk.northAngleDeg()));
        return new double[] {
            disk.equatorialRadiusPx() * Math.hypot(along * cos, across * sin),
            disk.equatorialRadiusPx() * Math.hypot(along * sin, across * cos)
        };
    }

    /** The globe as it stands in this part. */
    View of(View view) {
        return new View(view.globe(), view.disk().movedBy(-left, -top));
    }

    /** This part of the colours. */
    ColourCube of(ColourCube whole) {
        return new ColourCube(of(whole.red()), of(whole.green()), of(whole.blue()));
    }

    private Plane of(Plane whole) {
        Plane part = new Plane(width, height);
        for (int y = 0; y < height; y++) {
            System.arraycopy(whole.data(), (top + y) * whole.width() + left, part.data(), y * width, width);
        }
        return part;
    }

    /** The whole colours with this part exchanged. */
    ColourCube within(ColourCube whole, ColourCube part) {
        return new ColourCube(
                within(whole.red(), part.red()),
                within(whole.green(), part.green()),
                within(whole.blue(), part.blue()));
    }

    private Plane within(Plane whole, Plane part) {
        Plane result = whole.copy();
        for (int y = 0; y < height; y++) {
            System.arraycopy(part.data(), y * width, result.data(), (top + y) * whole.width() + left, width);
        }
        return result;
    }
}
