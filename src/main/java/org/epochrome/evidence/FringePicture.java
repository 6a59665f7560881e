package org.epochrome.evidence;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * Where colours part at the limb, amplified: each band as a part of its own mean, less the mean of the three, on grey. A
 * rim without fringes shows the planet's own soft colours only.
 */
public final class FringePicture {
    static final int AMPLIFIED = 2;
    private static final double INNER = 0.92;
    private static final double OUTER = 1.07;
    private static final double EDGE = 0.02;
    private static final double PAPER = 0.5;

    private FringePicture() {}

    /** The amplified fringes of a linear picture, display-encoded. */
    public static List<Plane> of(ColourCube cube, View view) {
        List<Plane> planes = cube.planes();
        double[] means = planes.stream().mapToDouble(p -> mean(p, view)).toArray();
        List<Plane> shown = new ArrayList<>();
        planes.forEach(p -> shown.add(new Plane(p.width(), p.height())));
        for (int y = 0; y < cube.height(); y++) {
            for (int x = 0; x < cube.width(); x++) {
                double radius = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                double part = Math.min(ramp((radius - INNER) / EDGE), ramp((OUTER - radius) / EDGE));
                double middle = 0;
                for (int k = 0; k < 3; k++) {
                    middle += planes.get(k).at(x, y) / means[k] / 3;
                }
                for (int k = 0; k < 3; k++) {
                    double apart = planes.get(k).at(x, y) / means[k] - middle;
                    shown.get(k).set(x, y, (float) (PAPER + part * AMPLIFIED * (Double.isNaN(apart) ? 0 : apart)));
                }
            }
        }
        return shown;
    }

    /** Mean near the limb, so that the rim as a whole is grey. */
    private static double mean(Plane plane, View view) {
        double sum = 0;
        int count = 0;
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double radius = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                float value = plane.at(x, y);
                if (radius > INNER && radius < 1 && !Float.isNaN(value)) {
                    sum += value;
                    count++;
                }
            }
        }
        return sum > 0 ? sum / count : 1;
    }

    private static double ramp(double t) {
        return Math.max(0, Math.min(1, t));
    }
}
