package org.epochrome.session;

import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Finish;
import org.epochrome.colour.Look;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.Smear;

/** From a combination to the finished picture: the linear cube stays as it is. */
final class Finishing {
    private static final double DISK_PART = 0.97;
    private static final double LIT = 0.15;

    private Finishing() {}

    /** The finished picture: display-encoded red, green and blue. */
    static List<Plane> picture(Combination c, Look look) {
        View view = new View(Globe.of(c.aspect()), c.disk());
        Plane disk = litDisk(view, c.cube().width(), c.cube().height());
        ColourCube balanced = Finish.balanced(c.cube(), disk, c.recipe().body(), look.white());
        return Finish.shown(balanced, disk, look.tone());
    }

    /** 1 on the lit part of the disk at the epoch. */
    private static Plane litDisk(View view, int width, int height) {
        Plane shade = new Shading(1, 1, Smear.NONE).picture(view, width, height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                boolean inside = view.ellipticRadius(view.pole(x, y), view.side(x, y)) < DISK_PART;
                shade.set(x, y, inside && shade.at(x, y) > LIT ? 1 : 0);
            }
        }
        return shade;
    }
}
