package org.epochrome.disk;

import org.epochrome.image.Plane;
import org.epochrome.image.Region;

/**
 * How bright rings are by their distance from the planet: linear between evenly spaced places of each region,
 * with jumps at the regions' edges. In the unit in which the even globe is 1 where Sun and observer stand overhead.
 */
public final class RingLight {
    /** No rings. */
    public static final RingLight NONE = new RingLight(new int[0], new double[0]);

    private static final double STEP_PX = 0.5;

    private final int[] first;
    private final double[] values;

    /**
     * @param first number of each region's first value, and the number of all values at the end
     * @param values region after region
     */
    public RingLight(int[] first, double[] values) {
        this.first = first;
        this.values = values;
    }

    /** Places for the values: how many lie before each region's, if they shall be no further apart than a step. */
    public static int[] places(Rings rings, double step) {
        int[] first = new int[rings.regions() + 1];
        for (int region = 0; region < rings.regions(); region++) {
            int intervals = (int) Math.max(1, Math.ceil((rings.outer(region) - rings.inner(region)) / step));
            first[region + 1] = first[region] + intervals + 1;
        }
        return first;
    }

    /** Whether there are no rings. */
    public boolean isNone() {
        return values.length == 0;
    }

    /** Brightness at a place within a region, 0 at its inner edge, 1 at its outer one. */
    double at(int region, double part) {
        double place = part * (first[region + 1] - first[region] - 1);
        int below = (int) Math.min(place, first[region + 1] - first[region] - 2);
        double above = place - below;
        int i = first[region] + below;
        return values[i] + above * (values[i + 1] - values[i]);
    }

    /** The blurred picture of the rings as they are seen around the globe and lit beyond its shadow. */
    public Plane picture(View view, Shading shading, int width, int height) {
        if (isNone()) {
            return new Plane(width, height);
        }
        Region lit = shading.region(view, view.globe().extent(), width, height);
        return lit.amongZeros(blurred(view.on(lit), shading, lit.width(), lit.height()), width, height);
    }

    private Plane blurred(View view, Shading shading, int width, int height) {
        Plane sharp = new Plane(width, height);
        double radius = view.disk().equatorialRadiusPx();
        Rings.walk(view.globe(), STEP_PX / radius, (region, part, pole, side, area) -> {
            double x = view.column(pole, side);
            double y = view.row(pole, side);
            int left = (int) Math.floor(x);
            int top = (int) Math.floor(y);
            if (left >= 0 && top >= 0 && left < width - 1 && top < height - 1) {
                double light = area * radius * radius * at(region, part);
                BilinearShare.add(sharp.data(), width, top * width + left, x - left, y - top, light);
            }
        });
        double blur = shading.blurPx();
        double left = Math.sqrt(Math.max(0, blur * blur + 1 / 12.0 - BilinearShare.VARIANCE));
        return shading.wings().of(shading.smear().of(sharp), left);
    }
}
