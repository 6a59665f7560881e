package org.epochrome.disk.fit;

import java.util.OptionalDouble;
import org.epochrome.disk.AirFlattening;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.disk.model.LimbLawPrior;
import org.epochrome.disk.start.DiskStart;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;

/**
 * Where a fit starts: the disk whose model makes a patch of the size, place and direction that was found in the frame.
 *
 * @param disk place, size and orientation
 * @param blurPx a usual blur for that size
 */
record FirstGuess(Disk disk, double blurPx) {
    private static final int MODEL_SIZE = 128;
    private static final double MODEL_CENTRE = 0.5 * (MODEL_SIZE - 1);
    private static final double MODEL_RADIUS = 50;
    /** With rings the globe is a smaller part of the patch. */
    private static final double RINGED_RADIUS = 26;
    /** Brightness of the rings as a part of the globe's, roughly. */
    private static final float RINGS = 0.7f;

    /** Above this flattening the long axis of the patch tells the equator, if the phase does not disturb. */
    private static final double CLEAR_FLATTENING = 0.03;

    /**
     * @param turned whether north is to be at the other end of the axis than it would be
     * @param blurPart blur as a part of the radius
     */
    static FirstGuess of(
            DiskStart start,
            Globe globe,
            boolean mirrored,
            OptionalDouble northDeg,
            boolean turned,
            OptionalDouble radiusPx,
            double blurPart) {
        double north = northDeg.orElseGet(() -> northOf(start, globe, mirrored) + (turned ? 180 : 0));
        DiskStart model = patchOf(globe, unit(globe, north, mirrored), blurPart, start.level());
        double scale = Math.sqrt(start.areaPx() / model.areaPx());
        double radius = radiusPx.orElse(unitRadius(globe) * scale);
        Disk disk = new Disk(
                start.x() - scale * (model.x() - MODEL_CENTRE),
                start.y() - scale * (model.y() - MODEL_CENTRE),
                radius,
                Disk.wrapDeg(north),
                mirrored);
        return new FirstGuess(disk, Math.max(1.0, radius * blurPart));
    }

    private static double unitRadius(Globe globe) {
        return globe.ringed() ? RINGED_RADIUS : MODEL_RADIUS;
    }

    private static Disk unit(Globe globe, double north, boolean mirrored) {
        return new Disk(MODEL_CENTRE, MODEL_CENTRE, unitRadius(globe), north, mirrored);
    }

    private static DiskStart patchOf(Globe globe, Disk disk, double blurPart, double level) {
        Shading shading = new Shading(LimbLawPrior.USUAL.minnaert(), blurPart * disk.equatorialRadiusPx(), Smear.NONE);
        View view = new View(globe, disk);
        Plane picture = shading.picture(view, MODEL_SIZE, MODEL_SIZE);
        globe.rings().ifPresent(rings -> rings.draw(view, picture, RINGS));
        return DiskStart.ofModel(picture, level);
    }

    /** North by the direction of the patch's long axis; which end is north stays open. */
    private static double northOf(DiskStart start, Globe globe, boolean mirrored) {
        if (1 - globe.apparentAxisRatio() < CLEAR_FLATTENING && globe.cosPhase() > 0.98) {
            return 0;
        }
        // Without the air, which would only decide by chance from which end the long axis is counted.
        Globe bare = globe.through(AirFlattening.NONE);
        return start.longAxisDeg()
                - patchOf(bare, unit(bare, 0, mirrored), 1 / MODEL_RADIUS, start.level())
                        .longAxisDeg();
    }
}
