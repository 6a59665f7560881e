package org.epochrome.colour.finish;

import java.util.Arrays;
import java.util.List;
import org.epochrome.image.Plane;

/** Linear pictures for a look at what they hold, by plain rules, no look of a finished picture: to judge, not to show. */
public final class Quicklook {
    /** Pixels brighter than this part of all are shown white. Common practice, no source. */
    private static final double WHITE_PART = 0.9995;
    /** How much more faint light is lifted than bright light. Common practice, no source. */
    private static final double LIFT = 60;

    private Quicklook() {}

    /** Proportional to light, black at 0, the brightest white; all planes by one scale. */
    public static List<Plane> linear(List<Plane> planes) {
        return shown(planes, false);
    }

    /** Faint light lifted, as far as the sky's noise: shows the sky, the limb and what lies beyond it. */
    public static List<Plane> stretched(List<Plane> planes) {
        return shown(planes, true);
    }

    private static List<Plane> shown(List<Plane> planes, boolean lifted) {
        float white = 0;
        for (Plane plane : planes) {
            white = Math.max(white, level(plane, WHITE_PART));
        }
        double scale = white > 0 ? 1 / white : 1;
        return planes.stream().map(p -> shown(p, scale, lifted)).toList();
    }

    private static float level(Plane plane, double part) {
        float[] sorted = plane.data().clone();
        Arrays.sort(sorted);
        int known = sorted.length;
        while (known > 0 && Float.isNaN(sorted[known - 1])) {
            known--;
        }
        return known == 0 ? 0 : sorted[(int) (part * (known - 1))];
    }

    private static Plane shown(Plane plane, double scale, boolean lifted) {
        Plane shown = new Plane(plane.width(), plane.height());
        double most = Math.log(1 + LIFT);
        for (int i = 0; i < shown.data().length; i++) {
            double light = Math.max(0, Math.min(1, scale * plane.data()[i]));
            shown.data()[i] = (float) (Double.isNaN(light) ? 0 : lifted ? Math.log(1 + LIFT * light) / most : light);
        }
        return shown;
    }
}
