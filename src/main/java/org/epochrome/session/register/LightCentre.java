package org.epochrome.session.register;

import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.session.recipe.PixelOffset;

/** Centre of a disk's light against its fitted centre: by this plain stacks are aligned. */
public final class LightCentre {
    private LightCentre() {}

    /** The centre of light of a plane. */
    public static PixelOffset of(Plane plane, FittedDisk fit) {
        double reach = 1.15 * fit.disk().equatorialRadiusPx() + 8;
        double sum = 0;
        double sx = 0;
        double sy = 0;
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double dx = x - fit.disk().x();
                double dy = y - fit.disk().y();
                double light = plane.at(x, y) - fit.background();
                if (dx * dx + dy * dy < reach * reach && light > 0.1 * fit.brightness()) {
                    sum += light;
                    sx += light * dx;
                    sy += light * dy;
                }
            }
        }
        return sum > 0 ? new PixelOffset(sx / sum, sy / sum) : new PixelOffset(0, 0);
    }
}
