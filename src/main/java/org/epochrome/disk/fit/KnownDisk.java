package org.epochrome.disk.fit;

import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.disk.Disk;

/**
 * What is known of a disk before it is fitted.
 *
 * @param northDeg north angle; else it is fitted where the disk shows it
 * @param radiusPx equatorial radius; else it is fitted
 * @param place centre; else it is fitted
 */
record KnownDisk(OptionalDouble northDeg, OptionalDouble radiusPx, Optional<Place> place) {

    /** A centre, pixels. */
    record Place(double x, double y) {}

    /** The disk at the known centre. */
    Disk placed(Disk disk) {
        return place.map(p -> new Disk(p.x(), p.y(), disk.equatorialRadiusPx(), disk.northAngleDeg(), disk.mirrored()))
                .orElse(disk);
    }

    /** The disk with all that is known of it. */
    Disk applied(Disk disk) {
        Disk known = placed(disk);
        if (northDeg.isPresent()) {
            known = known.withNorth(northDeg.getAsDouble());
        }
        return radiusPx.isPresent() ? known.withRadius(radiusPx.getAsDouble()) : known;
    }
}
