package org.epochrome.session.locate;

import java.util.OptionalDouble;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Encoding;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;

/** The disk of a frame under a usual curve for screens, to compare with what it is if the frame is linear. */
public final class DecodedFit implements ProcessingCheck.Decoded {
    /** A power law needs no full scale, and that of sRGB is close to it. */
    private static final Encoding USUAL = Encoding.power(2.2);

    private final boolean belted;

    public DecodedFit(Body body) {
        belted = body.belted();
    }

    /**
     * Fits the disk, north and a given radius as they are.
     *
     * @param linear the disk if the frame is linear
     * @return that disk if no other is found
     */
    @Override
    public FittedDisk fit(Plane plane, Globe globe, FittedDisk linear) {
        Plane light = plane.copy();
        float[] data = light.data();
        for (int i = 0; i < data.length; i++) {
            data[i] = USUAL.light(data[i]);
        }
        Disk disk = linear.disk();
        OptionalDouble radiusPx =
                linear.radiusSigmaPx() > 0 ? OptionalDouble.empty() : OptionalDouble.of(disk.equatorialRadiusPx());
        DiskFit decoded = new DiskFit(
                globe,
                belted,
                disk.mirrored(),
                linear.shading().smear(),
                OptionalDouble.of(disk.northAngleDeg()),
                radiusPx);
        try {
            return decoded.fit(light, Progress.NONE);
        } catch (DiskNotFound e) {
            return linear;
        }
    }
}
