package org.epochrome.colour;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;
import org.epochrome.text.Message;

/** Factors for linear red, green and blue, each more than 0. */
public record Gains(double red, double green, double blue) {
    /** Leaves colours as they are. */
    public static final Gains NONE = new Gains(1, 1, 1);

    public Gains {
        if (!(red > 0 && green > 0 && blue > 0) || Double.isInfinite(red + green + blue)) {
            throw new IllegalArgumentException(Message.text("value.gains", red, green, blue));
        }
    }

    /** These gains scaled so that green is 1. */
    Gains relativeToGreen() {
        return new Gains(red / green, 1, blue / green);
    }

    /** A cube with its planes multiplied; NaN stays. */
    public ColourCube on(ColourCube cube) {
        double[] factors = {red, green, blue};
        List<Plane> planes = new ArrayList<>();
        for (int c = 0; c < 3; c++) {
            planes.add(times(cube.planes().get(c), (float) factors[c]));
        }
        return new ColourCube(planes.get(0), planes.get(1), planes.get(2));
    }

    private static Plane times(Plane plane, float factor) {
        Plane result = plane.copy();
        float[] data = result.data();
        Rows.each(plane.height(), (from, to) -> {
            for (int i = from * plane.width(); i < to * plane.width(); i++) {
                data[i] *= factor;
            }
        });
        return result;
    }
}
