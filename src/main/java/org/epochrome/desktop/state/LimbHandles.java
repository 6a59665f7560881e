package org.epochrome.desktop.state;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;

/**
 * Handles on a limb curve: the centre moves the disk, four on the limb change its size, one beyond the pole turns it.
 *
 * @param globe how the body stands
 * @param disk where its limb is drawn
 */
public record LimbHandles(Globe globe, Disk disk) {
    /** How far beyond the limb the pole's handle lies, radii. */
    private static final double POLE_REACH = 1.18;

    private static final double LEAST_RADIUS_PX = 4;

    /** What a handle does. */
    public enum Grip {
        CENTRE,
        EAST,
        WEST,
        NORTH,
        SOUTH,
        POLE
    }

    /**
     * A handle.
     *
     * @param x its place on the picture's pixels
     * @param y the same
     */
    public record Handle(Grip grip, double x, double y) {}

    public List<Handle> handles() {
        double flat = globe.apparentAxisRatio();
        List<Handle> handles = new ArrayList<>();
        handles.add(at(Grip.CENTRE, 0, 0));
        handles.add(at(Grip.EAST, 0, 1));
        handles.add(at(Grip.WEST, 0, -1));
        handles.add(at(Grip.NORTH, flat, 0));
        handles.add(at(Grip.SOUTH, -flat, 0));
        handles.add(at(Grip.POLE, POLE_REACH * flat, 0));
        return handles;
    }

    private Handle at(Grip grip, double pole, double side) {
        View view = new View(globe, disk);
        return new Handle(grip, view.column(pole, side), view.row(pole, side));
    }

    /** The handle within reach of a place. */
    public Optional<Grip> near(double x, double y, double reachPx) {
        return handles().stream()
                .filter(h -> Math.hypot(h.x - x, h.y - y) <= reachPx)
                .min((a, b) -> Double.compare(Math.hypot(a.x - x, a.y - y), Math.hypot(b.x - x, b.y - y)))
                .map(Handle::grip);
    }

    /** The disk as it lies when a handle is drawn to a place; a limb handle holds the limb opposite. */
    public Disk drawn(Grip grip, double x, double y) {
        View view = new View(globe, disk);
        double pole = view.pole(x, y);
        double side = view.side(x, y);
        double flat = globe.apparentAxisRatio();
        return switch (grip) {
            case CENTRE -> new Disk(x, y, disk.equatorialRadiusPx(), disk.northAngleDeg(), disk.mirrored());
            case EAST -> grown(side, 0, 1);
            case WEST -> grown(-side, 0, -1);
            case NORTH -> grown(pole / flat, flat, 0);
            case SOUTH -> grown(-pole / flat, -flat, 0);
            case POLE -> disk.withNorth(Math.toDegrees(Math.atan2(-(x - disk.x()), -(y - disk.y()))));
        };
    }

    /** With the limb reaching to a part of the radius in one direction, and as far as before in the other. */
    private Disk grown(double reach, double pole, double side) {
        double radius = Math.max(LEAST_RADIUS_PX, disk.equatorialRadiusPx() * (1 + reach) / 2);
        double shift = radius / disk.equatorialRadiusPx() - 1;
        View view = new View(globe, disk);
        double x = view.column(shift * pole, shift * side);
        double y = view.row(shift * pole, shift * side);
        return new Disk(x, y, radius, disk.northAngleDeg(), disk.mirrored());
    }
}
