package org.epochrome.colour.finish;

import java.util.List;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Spline;
import org.epochrome.job.Rows;

/**
 * A finished picture turned, scaled and cropped.
 *
 * @param planes display-encoded
 * @param disk where the disk lies in it
 */
public record Framed(List<Plane> planes, Disk disk) {

    /** Size of a picture, and where its disk lies. */
    private record Layout(int width, int height, Disk disk) {}

    /**
     * Frames a picture: at most one resampling, by the cubic B-spline, for turn, scale and mirror together; none at all if
     * it is only cropped. What lies beyond the frame is black.
     *
     * @param planes display-encoded, 0 to 1, without NaN
     * @param globe what stands in it
     * @param disk where it stands
     * @param below height that the canvas keeps free at its lower edge, pixels
     */
    public static Framed of(List<Plane> planes, Globe globe, Disk disk, Framing framing, int below) {
        Layout layout = layout(planes.get(0), globe, disk, framing, below);
        Disk to = layout.disk();
        boolean onlyMoved = to.mirrored() == disk.mirrored()
                && to.northAngleDeg() == disk.northAngleDeg()
                && to.equatorialRadiusPx() == disk.equatorialRadiusPx();
        if (!onlyMoved) {
            View in = new View(globe, disk);
            View out = new View(globe, to);
            return new Framed(
                    planes.stream().map(p -> resampled(p, in, out, layout)).toList(), to);
        }
        int left = (int) Math.round(disk.x() - to.x());
        int top = (int) Math.round(disk.y() - to.y());
        return new Framed(
                planes.stream().map(p -> cropped(p, left, top, layout)).toList(), disk.movedBy(-left, -top));
    }

    /** How wide a picture becomes, pixels; what its canvas keeps free below does not change that. */
    public static int widthPx(Plane plane, Globe globe, Disk disk, Framing framing) {
        return layout(plane, globe, disk, framing, 0).width();
    }

    private static Layout layout(Plane plane, Globe globe, Disk disk, Framing framing, int below) {
        boolean asShot = framing.orientation() == Framing.Orientation.AS_SHOT;
        double north = framing.orientation() == Framing.Orientation.SOUTH_UP ? -180 : 0;
        double radius = disk.equatorialRadiusPx();
        Disk posed = asShot
                ? new Disk(0, 0, radius, rotated(disk.northAngleDeg(), framing), disk.mirrored())
                : new Disk(0, 0, radius, rotated(north, framing), false);
        boolean crops = framing.margin().isPresent();
        double scale = framing.enlarge().orElse(1);
        double width = plane.width();
        double height = plane.height();
        if (crops) {
            double[] half = new View(globe, posed).halfSizePx();
            width = 2 * (half[0] + framing.margin().getAsDouble() * radius);
            height = 2 * (half[1] + framing.margin().getAsDouble() * radius);
            if (framing.canvas().isPresent() && framing.enlarge().isEmpty()) {
                scale = Math.min(
                        framing.canvas().get().width() / width,
                        (framing.canvas().get().height() - below) / height);
            }
        }
        int wide = framing.canvas().map(Framing.Canvas::width).orElse((int) Math.max(1, Math.rint(scale * width)));
        int high = framing.canvas().map(c -> c.height() - below).orElse((int) Math.max(1, Math.rint(scale * height)));
        // In the middle lies the disk, or the middle of the whole frame.
        boolean whole = !crops && framing.canvas().isEmpty();
        View from = new View(globe, disk);
        double x = whole ? 0.5 * (plane.width() - 1) : disk.x();
        double y = whole ? 0.5 * (plane.height() - 1) : disk.y();
        View to = new View(globe, posed.withRadius(scale * radius));
        return new Layout(
                wide,
                high,
                to.disk()
                        .movedBy(
                                0.5 * (wide - 1)
                                        - to.column(from.pole(x, y), from.side(x, y))
                                        - scale
                                                * radius
                                                * framing.centre()
                                                        .map(Framing.Centre::right)
                                                        .orElse(0.0),
                                0.5 * (high - 1)
                                        - to.row(from.pole(x, y), from.side(x, y))
                                        - scale
                                                * radius
                                                * framing.centre()
                                                        .map(Framing.Centre::down)
                                                        .orElse(0.0)));
    }

    private static double rotated(double northDeg, Framing framing) {
        return framing.rotate().isPresent()
                ? Disk.wrapDeg(northDeg + framing.rotate().getAsDouble())
                : northDeg;
    }

    private static Plane cropped(Plane plane, int left, int top, Layout layout) {
        Plane result = new Plane(layout.width(), layout.height());
        int from = Math.max(0, -left);
        int to = Math.min(layout.width(), plane.width() - left);
        for (int y = 0; y < layout.height() && from < to; y++) {
            if (y + top >= 0 && y + top < plane.height()) {
                System.arraycopy(
                        plane.data(),
                        (y + top) * plane.width() + from + left,
                        result.data(),
                        y * layout.width() + from,
                        to - from);
            }
        }
        return result;
    }

    private static Plane resampled(Plane plane, View in, View out, Layout layout) {
        double scale = out.disk().equatorialRadiusPx() / in.disk().equatorialRadiusPx();
        // Detail finer than the new pixels would come back as a pattern.
        double soften = scale < 1 ? 0.5 * Math.sqrt(1 / (scale * scale) - 1) : 0;
        Spline spline = new Spline(Gaussian.blur(plane, soften));
        Plane result = new Plane(layout.width(), layout.height());
        Rows.each(layout.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < layout.width(); x++) {
                    double pole = out.pole(x, y);
                    double side = out.side(x, y);
                    double column = in.column(pole, side);
                    double row = in.row(pole, side);
                    if (spline.contains(column, row)) {
                        result.set(x, y, Math.max(0, Math.min(1, spline.at(column, row))));
                    }
                }
            }
        });
        return result;
    }
}
