package org.epochrome.session.locate;

import java.util.List;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;

/** What the fine fits of disks shall not see, as far as it can be told before them. */
public interface MoonMasks {
    /**
     * The exposures' pixels, without data where something else than the disk would mislead a fit.
     *
     * @param rough the disks in broad strokes, in the orientation that they have
     */
    List<Plane> masked(List<FittedDisk> rough);
}
