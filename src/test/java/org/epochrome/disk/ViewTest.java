package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Properties of the view of many spheroids in many postures, and the same view worked out with vectors: rays against the
 * spheroid's equation, normals from its gradient.
 */
class ViewTest {
    private static final int PLACES = 60;

    static List<View> views() {
        Random random = new Random(20);
        List<View> views = new ArrayList<>();
        double[] ratios = {1, 0.994, 0.977, 0.935, 0.902, 0.7};
        for (int i = 0; i < 48; i++) {
            double tilt = Math.toRadians(i % 8 == 0 ? 0 : -88 + 176 * random.nextDouble());
            // The Sun anywhere within 150 degrees of the observer.
            Vector3D sun = new Rotation(
                            randomUnit(random),
                            Math.toRadians(150 * random.nextDouble()),
                            RotationConvention.VECTOR_OPERATOR)
                    .applyTo(observer(tilt));
            Globe globe = new Globe(ratios[i % ratios.length], tilt, sun.getX(), sun.getY(), sun.getZ());
            Disk disk = new Disk(
                    200 * random.nextDouble(),
                    200 * random.nextDouble(),
                    5 + 300 * random.nextDouble(),
                    -180 + 360 * random.nextDouble(),
                    random.nextBoolean());
            views.add(new View(globe, disk));
        }
        return views;
    }

    private static Vector3D randomUnit(Random random) {
        return new Vector3D(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).normalize();
    }

    private static Vector3D observer(double tilt) {
        return new Vector3D(Math.cos(tilt), 0, Math.sin(tilt));
    }

    /** Pixels within a part of the way to the limb, here found by the radius of the circle around it. */
    private static List<double[]> pixels(View view, double most) {
        Random random = new Random(7);
        Disk disk = view.disk();
        List<double[]> found = new ArrayList<>();
        while (found.size() < PLACES) {
            double x = disk.x() + disk.equatorialRadiusPx() * (2 * random.nextDouble() - 1);
            double y = disk.y() + disk.equatorialRadiusPx() * (2 * random.nextDouble() - 1);
            if (view.ellipticRadius(view.pole(x, y), view.side(x, y)) < most) {
                found.add(new double[] {x, y});
            }
        }
        return found;
    }

    private static Vector3D surface(View view, double x, double y) {
        double pole = view.pole(x, y);
        double side = view.side(x, y);
        double depth = view.depth(pole, side);
        return new Vector3D(view.bodyX(pole, depth), side, view.bodyZ(pole, depth));
    }

    @ParameterizedTest
    @MethodSource("views")
    void fromPixelToSurfaceAndBack(View view) {
        double radius = view.disk().equatorialRadiusPx();
        for (double[] pixel : pixels(view, 0.9999)) {
            Vector3D p = surface(view, pixel[0], pixel[1]);
            View.Place back = view.place(
                    view.graphicLatitude(p.getX(), p.getY(), p.getZ()), View.eastOfMeridian(p.getX(), p.getY()));
            assertEquals(pixel[0], back.x(), 1e-9 * radius);
            assertEquals(pixel[1], back.y(), 1e-9 * radius);
            assertTrue(back.visible());
        }
    }

    /** The point of the far side on the same line of sight falls on the same pixel, and is not visible. */
    @ParameterizedTest
    @MethodSource("views")
    void farSide(View view) {
        double radius = view.disk().equatorialRadiusPx();
        Vector3D observer = observer(view.globe().tilt());
        for (double[] pixel : pixels(view, 0.99)) {
            Vector3D back = hits(view, pixel[0], pixel[1])[0];
            double q = view.globe().axisRatio();
            double latitude = Math.atan2(back.getZ() / (q * q), Math.hypot(back.getX(), back.getY()));
            View.Place place = view.place(latitude, Math.atan2(back.getY(), back.getX()));
            assertFalse(place.visible());
            assertEquals(pixel[0], place.x(), 1e-9 * radius);
            assertEquals(pixel[1], place.y(), 1e-9 * radius);
            assertTrue(normal(view, back).dotProduct(observer) < 0);
        }
    }

    /** Points of the surface, angles of light and latitudes, against rays, gradients and scalar products. */
    @ParameterizedTest
    @MethodSource("views")
    void agreesWithVectors(View view) {
        Globe globe = view.globe();
        Vector3D observer = observer(globe.tilt());
        Vector3D sun = new Vector3D(globe.sunX(), globe.sunY(), globe.sunZ());
        assertEquals(observer.dotProduct(sun), globe.cosPhase(), 1e-14);
        for (double[] pixel : pixels(view, 0.999)) {
            Vector3D expected = hits(view, pixel[0], pixel[1])[1];
            Vector3D p = surface(view, pixel[0], pixel[1]);
            assertEquals(0, p.distance(expected), 1e-11);
            Vector3D normal = normal(view, expected);
            assertEquals(normal.dotProduct(observer), view.cosEmission(p.getX(), p.getY(), p.getZ()), 1e-11);
            assertEquals(normal.dotProduct(sun), view.cosIncidence(p.getX(), p.getY(), p.getZ()), 1e-11);
            // The planetographic latitude is that of the normal (Archinal et al. 2018, section 2).
            assertEquals(normal.getDelta(), view.graphicLatitude(p.getX(), p.getY(), p.getZ()), 1e-11);
            assertEquals(expected.getAlpha(), View.eastOfMeridian(p.getX(), p.getY()), 1e-9);
        }
    }

    /** In the plane of Sun and observer the angles of incidence and emission enclose the phase angle. */
    @ParameterizedTest
    @MethodSource("views")
    void phaseAtSpecialPoints(View view) {
        Globe globe = view.globe();
        Vector3D sun = new Vector3D(globe.sunX(), globe.sunY(), globe.sunZ());
        Vector3D below = pointWithNormal(view, observer(globe.tilt()));
        assertEquals(1, view.cosEmission(below.getX(), below.getY(), below.getZ()), 1e-12);
        assertEquals(globe.cosPhase(), view.cosIncidence(below.getX(), below.getY(), below.getZ()), 1e-12);
        Vector3D noon = pointWithNormal(view, sun);
        assertEquals(1, view.cosIncidence(noon.getX(), noon.getY(), noon.getZ()), 1e-12);
        assertEquals(globe.cosPhase(), view.cosEmission(noon.getX(), noon.getY(), noon.getZ()), 1e-12);
        Vector3D bright = pointWithNormal(view, sun.add(observer(globe.tilt())).normalize());
        double half = Math.cos(0.5 * Math.acos(globe.cosPhase()));
        assertEquals(half, view.cosIncidence(bright.getX(), bright.getY(), bright.getZ()), 1e-12);
        assertEquals(half, view.cosEmission(bright.getX(), bright.getY(), bright.getZ()), 1e-12);
    }

    /** tan(planetographic) = tan(planetocentric) / ratio^2 (Archinal et al. 2018; Explanatory Supplement). */
    @ParameterizedTest
    @MethodSource("views")
    void planetographicLatitude(View view) {
        double squared = view.globe().axisRatio() * view.globe().axisRatio();
        for (double[] pixel : pixels(view, 0.999)) {
            Vector3D p = surface(view, pixel[0], pixel[1]);
            double graphic = Math.tan(view.graphicLatitude(p.getX(), p.getY(), p.getZ()));
            assertEquals(1, graphic * squared / Math.tan(p.getDelta()), 1e-10);
        }
    }

    /**
     * On the Earth (flattening of WGS 84, NIMA TR8350.2) the two latitudes differ by 11.55' at most, the arc sine of
     * (1 - q^2) / (1 + q^2) for the axis ratio q, at 45.1 degrees.
     */
    @Test
    void latitudesOfTheEarth() {
        View view = new View(new Globe(1 - 1 / 298.257223563, 0, 1, 0, 0), new Disk(0, 0, 1000, 0, false));
        View.Place place = view.place(Math.toRadians(45.096), 0);
        Vector3D p = surface(view, place.x(), place.y());
        assertEquals(45.096 - 0.19242, Math.toDegrees(p.getDelta()), 1e-5);
    }

    /** The outline of a spheroid is an ellipse: support of the surface in every direction of the sky, by brute force. */
    @ParameterizedTest
    @MethodSource("views")
    void limb(View view) {
        double q = view.globe().axisRatio();
        double ratio = view.globe().apparentAxisRatio();
        Vector3D observer = observer(view.globe().tilt());
        Vector3D northward = Vector3D.PLUS_K
                .subtract(observer.scalarMultiply(observer.getZ()))
                .normalize();
        // The furthest point in a direction d of the spheroid x^2 + y^2 + (z/q)^2 = 1 lies |(dx, dy, q dz)| away.
        assertEquals(new Vector3D(northward.getX(), northward.getY(), q * northward.getZ()).getNorm(), ratio, 1e-14);
        for (int i = 0; i < 36; i++) {
            double angle = Math.toRadians(10 * i + 3);
            double pole = ratio * Math.sin(angle);
            double side = Math.cos(angle);
            assertEquals(1, view.ellipticRadius(pole, side), 1e-12);
            assertTrue(Double.isNaN(view.depth(pole * (1 + 1e-9), side * (1 + 1e-9))));
            double in = 1 - 1e-9;
            double depth = view.depth(pole * in, side * in);
            double emission = view.cosEmission(view.bodyX(pole * in, depth), side * in, view.bodyZ(pole * in, depth));
            // Emission goes as the square root of the distance from the limb: 5e-5 for 1e-9, more where it is flat.
            assertEquals(0, emission, 1e-4);
        }
    }

    /** The visible part of the sky's plane has the area of the ellipse. */
    @ParameterizedTest
    @MethodSource("views")
    void area(View view) {
        int steps = 400;
        int inside = 0;
        for (int i = 0; i < steps; i++) {
            double pole = 2 * (i + 0.5) / steps - 1;
            for (int j = 0; j < steps; j++) {
                inside += Double.isNaN(view.depth(pole, 2 * (j + 0.5) / steps - 1)) ? 0 : 1;
            }
        }
        // The count of lattice points in a circle of 200 is off by 100 of 125,664 at the very most in practice.
        assertEquals(Math.PI * view.globe().apparentAxisRatio(), 4.0 * inside / steps / steps, 3e-3);
    }

    /** Turning the image by half a turn reflects it at the disk's centre. */
    @ParameterizedTest
    @MethodSource("views")
    void halfATurn(View view) {
        Disk disk = view.disk();
        View turned = new View(view.globe(), disk.withNorth(disk.northAngleDeg() + 180));
        for (double[] pixel : pixels(view, 0.99)) {
            Vector3D p = surface(view, pixel[0], pixel[1]);
            Vector3D q = surface(turned, 2 * disk.x() - pixel[0], 2 * disk.y() - pixel[1]);
            assertEquals(0, p.distance(q), 1e-11);
        }
    }

    /** A mirror at the image's vertical reverses left and right and the sense of the north angle. */
    @ParameterizedTest
    @MethodSource("views")
    void mirror(View view) {
        Disk disk = view.disk();
        View mirrored = new View(
                view.globe(),
                new Disk(disk.x(), disk.y(), disk.equatorialRadiusPx(), -disk.northAngleDeg(), !disk.mirrored()));
        for (double[] pixel : pixels(view, 0.99)) {
            Vector3D p = surface(view, pixel[0], pixel[1]);
            Vector3D q = surface(mirrored, 2 * disk.x() - pixel[0], pixel[1]);
            assertEquals(0, p.distance(q), 1e-11);
        }
    }

    /** North up, unmirrored: north is up, and longitudes grow eastward to the right, as on a map of the Earth. */
    @Test
    void northUp() {
        View view = new View(new Globe(0.9, 0.1, 1, 0, 0), new Disk(50, 60, 40, 0, false));
        View.Place middle = view.place(0.2, 0);
        View.Place east = view.place(0.2, 0.5);
        View.Place north = view.place(0.6, 0);
        assertTrue(east.x() > middle.x() + 10);
        assertTrue(north.y() < middle.y() - 5);
        assertEquals(50, north.x(), 1e-12);
        View quarter = new View(view.globe(), view.disk().withNorth(90));
        assertTrue(quarter.place(0.6, 0).x() < middle.x() - 5, "a quarter counter-clockwise puts north to the left");
    }

    /** Both points where the line of sight through a pixel meets the spheroid, far one first. */
    private static Vector3D[] hits(View view, double x, double y) {
        Disk disk = view.disk();
        double q = view.globe().axisRatio();
        Vector3D observer = observer(view.globe().tilt());
        Vector3D northward = Vector3D.PLUS_K
                .subtract(observer.scalarMultiply(observer.getZ()))
                .normalize();
        // With north up the observer sees east longitudes to the right: up x towards the observer.
        Vector3D eastward = Vector3D.crossProduct(northward, observer);
        Vector3D right = disk.mirrored() ? eastward.negate() : eastward;
        // Displayed counter-clockwise by the north angle: an image's up lies clockwise of north by it.
        double north = Math.toRadians(disk.northAngleDeg());
        Vector3D up = new Vector3D(Math.cos(north), northward, Math.sin(north), right);
        Vector3D rightward = new Vector3D(-Math.sin(north), northward, Math.cos(north), right);
        Vector3D start = new Vector3D(
                (x - disk.x()) / disk.equatorialRadiusPx(), rightward, -(y - disk.y()) / disk.equatorialRadiusPx(), up);
        Vector3D s = new Vector3D(start.getX(), start.getY(), start.getZ() / q);
        Vector3D d = new Vector3D(observer.getX(), observer.getY(), observer.getZ() / q);
        double a = d.dotProduct(d);
        double b = d.dotProduct(s);
        double root = Math.sqrt(b * b - a * (s.dotProduct(s) - 1));
        return new Vector3D[] {
            start.add((-b - root) / a, observer), start.add((-b + root) / a, observer),
        };
    }

    /** The gradient of the spheroid's equation. */
    private static Vector3D normal(View view, Vector3D p) {
        double q = view.globe().axisRatio();
        return new Vector3D(p.getX(), p.getY(), p.getZ() / (q * q)).normalize();
    }

    private static Vector3D pointWithNormal(View view, Vector3D n) {
        double q = view.globe().axisRatio();
        Vector3D p = new Vector3D(n.getX(), n.getY(), q * q * n.getZ());
        return p.scalarMultiply(1 / Math.sqrt(p.dotProduct(n)));
    }
}
