package org.epochrome.disk;

import java.util.OptionalDouble;
import org.epochrome.image.Plane;
import org.epochrome.image.Smear;

/**
 * Where a fit starts: the disk whose model makes a patch of the size, place and direction that was found in the frame.
 *
 * @param disk place, size and orientation
 * @param blurPx a usual blur for that size
 */
record FirstGuess(Disk disk, double blurPx) {
    private static final int MODEL_SIZE = 128;
    private static final double MODEL_RADIUS = 50;
    /** With rings the globe is a smaller part of the patch. */
    private static final double RINGED_RADIUS = 26;
    /** Brightness of the rings as a part of the globe's, roughly. */
    private static final float RINGS = 0.7f;

    /** Above this flattening the long axis of the patch tells the equator, if the phase does not disturb. */
    private static final double CLEAR_FLATTENING = 0.03;

    static FirstGuess of(
            DiskStart start, Globe globe, boolean mirrored, OptionalDouble northDeg, OptionalDouble radiusPx) {
        double north = northDeg.orElseGet(() -> northOf(start, globe, mirrored));
        Disk unit = modelDisk(globe, north, mirrored);
        DiskStart model = patchOf(globe, unit);
        double scale = Math.sqrt(start.areaPx() / (double) model.areaPx());
        double radius = radiusPx.orElse(unit.equatorialRadiusPx() * scale);
        Disk disk = new Disk(
                start.x() - scale * (model.x() - unit.x()),
                start.y() - scale * (model.y() - unit.y()),
                radius,
                north,
                mirrored);
        return new FirstGuess(disk, Math.max(1.0, radius / 110));
    }

    private static Disk modelDisk(Globe globe, double north, boolean mirrored) {
        double middle = 0.5 * (MODEL_SIZE - 1);
        return new Disk(middle, middle, globe.ringed() ? RINGED_RADIUS : MODEL_RADIUS, north, mirrored);
    }

    private static DiskStart patchOf(Globe globe, Disk disk) {
        View view = new View(globe, disk);
        Plane picture = new Shading(0.8, 1.0, Smear.NONE).picture(view, MODEL_SIZE, MODEL_SIZE);
        if (globe.ringed()) {
            Rings.draw(view, picture, RINGS);
        }
        return DiskStart.of(picture);
    }

    /** North by the direction of the patch's long axis; which end is north stays open. */
    private static double northOf(DiskStart start, Globe globe, boolean mirrored) {
        if (1 - globe.apparentAxisRatio() < CLEAR_FLATTENING && globe.cosPhase() > 0.98) {
            return 0;
        }
        Disk upright = modelDisk(globe, 0, mirrored);
        return Disk.wrapDeg(start.longAxisDeg() - patchOf(globe, upright).longAxisDeg());
    }
}
