package org.epochrome.disk.model;

import org.epochrome.disk.BilinearShare;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * The sharp picture of a disk, split among the rings of its markings.
 *
 * <p>It is made by walking over the disk in small steps of direction and of the surface's angle from the disk's centre,
 * in which a shading is smooth up to the limb, and sharing the light of each step bilinearly among four pixels. So the
 * picture changes smoothly with the disk's place and size, which samples at pixels would not do. The sharing blurs it by
 * a variance of {@link BilinearShare#VARIANCE}.
 */
final class Layers {
    /** Variance of a pixel's area. */
    static final double PIXEL = 1 / 12.0;
    /** Longest steps, pixels; the transform of the bilinear share vanishes at one and at two steps per pixel. */
    private static final double STEP = 0.5;

    private static final double COARSE_STEP = 1;

    /** Power by which the steps' angles widen towards the limb, where foreshortening makes them small. */
    private static final double THINNING = 0.75;

    private final View view;
    private final double minnaert;
    private final double brightening;
    private final Markings markings;
    private final double[] coefficients;
    private final int width;
    private final int height;
    private final float[][] layers;
    private final double[] along;
    private final double[] law = new double[4];

    private Layers(
            View view,
            double minnaert,
            double brightening,
            Markings markings,
            double[] coefficients,
            int width,
            int height) {
        this.view = view;
        this.minnaert = minnaert;
        this.brightening = brightening;
        this.markings = markings;
        this.coefficients = coefficients;
        this.width = width;
        this.height = height;
        layers = new float[markings.rings() + 3][width * height];
        along = new double[markings.rings()];
    }

    /**
     * The picture times each ring's weight, then the picture itself, then its derivatives by the exponent and by the
     * brightening of the limb.
     *
     * @param innermost elliptic radius within which all may stay dark
     */
    static Plane[] sharp(
            View view,
            double minnaert,
            double brightening,
            Markings markings,
            double[] coefficients,
            int width,
            int height,
            double innermost) {
        Layers made = new Layers(view, minnaert, brightening, markings, coefficients, width, height);
        made.walk(Math.asin(Math.max(0, innermost)));
        Plane[] planes = new Plane[made.layers.length];
        for (int i = 0; i < planes.length; i++) {
            planes[i] = new Plane(width, height, made.layers[i]);
        }
        return planes;
    }

    private void walk(double start) {
        double radius = view.disk().equatorialRadiusPx();
        double ratio = view.globe().apparentAxisRatio();
        double span = Math.PI / 2 - start;
        double step = markings.areCoarse() ? COARSE_STEP : STEP;
        int rings = (int) Math.ceil(THINNING * span * radius * Math.cos(start) / step);
        int spokes = (int) Math.ceil(2 * Math.PI * radius / step);
        Circle[] circles = new Circle[rings];
        for (int i = 0; i < rings; i++) {
            double part = (i + 0.5) / rings;
            double power = Math.pow(part, THINNING);
            double angle = Math.PI / 2 - span * power;
            double ringStep = span * THINNING * power / part / rings;
            double sine = Math.sin(angle);
            double area = sine * Math.cos(angle) * ringStep * (2 * Math.PI / spokes) * radius * radius * ratio;
            circles[i] = new Circle(angle, sine, area, markings);
        }
        for (int j = 0; j < spokes; j++) {
            double direction = 2 * Math.PI * (j + 0.5) / spokes - Math.PI;
            double pole = ratio * Math.sin(direction);
            double side = Math.cos(direction);
            markings.along(coefficients, direction, along);
            for (Circle circle : circles) {
                add(circle.sine * pole, circle.sine * side, circle);
            }
        }
    }

    /** What the steps at one angle of the surface have in common. */
    private static final class Circle {
        private final double sine;
        /** Of a step, square pixels. */
        private final double area;
        /** The first of the four rings that have weight there. */
        private final int first;

        private final double[] weights = new double[4];

        Circle(double angle, double sine, double area, Markings markings) {
            this.sine = sine;
            this.area = area;
            first = markings.ringWeights(angle, weights);
        }
    }

    private void add(double pole, double side, Circle circle) {
        double x = view.column(pole, side);
        double y = view.row(pole, side);
        int left = (int) Math.floor(x);
        int top = (int) Math.floor(y);
        if (left < 0 || top < 0 || left > width - 2 || top > height - 2) {
            return;
        }
        if (!Shading.law(view, pole, side, minnaert, brightening, law)) {
            return;
        }
        int rings = markings.rings();
        int first = circle.first;
        double[] weights = circle.weights;
        double logarithm = 0;
        for (int r = 0; r < 4; r++) {
            logarithm += along[first + r] * weights[r];
        }
        double light = circle.area * Math.exp(logarithm);
        int p = top * width + left;
        double fx = x - left;
        double fy = y - top;
        for (int r = 0; r < 4; r++) {
            BilinearShare.add(layers[first + r], width, p, fx, fy, light * law[0] * weights[r]);
        }
        BilinearShare.add(layers[rings], width, p, fx, fy, light * law[0]);
        BilinearShare.add(layers[rings + 1], width, p, fx, fy, light * law[1]);
        BilinearShare.add(layers[rings + 2], width, p, fx, fy, light * law[2]);
    }
}
