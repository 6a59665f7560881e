package org.epochrome.turn;

import java.util.Optional;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.disk.ZonalDarkening;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.image.blur.Spline;
import org.epochrome.job.Progress;
import org.epochrome.job.Rows;

/**
 * Turns one plane of a frame to the epoch in a single resampling.
 *
 * <p>Shading belongs to the viewing geometry and not to the clouds. So the plane is divided by its fitted, blurred
 * shading, the ratio is carried along with the surface, and multiplied by the shading at the epoch. Where that shading
 * is too dark to divide by (at the limb and beyond it, near the terminator), and where a point was out of sight, the
 * plane is only moved: there foreshortening leaves little to turn. What lies beyond the edge of what the frame saw stays without
 * data, and so does the limb in front of it. On bodies with belts the limb darkening of each parallel is measured in the frame itself
 * ({@link ZonalDarkening}), and turns with it.
 *
 * <p>Saturn's rings do not turn. Their light is taken out by the fitted model before the globe is turned and laid on
 * again after it; where they or their shadow dim the globe the plane is only moved. Shading, rings and shadows are the
 * same in both, so no seam shows between them.
 */
public final class Turner {
    /** Parts of the brightest shading between which trust in the ratio grows from none to full. */
    static final double DARK = 0.06;

    static final double BRIGHT = 0.14;
    /** Emission cosines between which trust grows: nearer the limb a turn is an extrapolation. */
    private static final double GRAZING = 0.05;

    static final double CLEAR = 0.15;
    /** Parts of the globe's light that get through the rings between which trust grows: optical depths are doubtful. */
    private static final double DIMMED = 0.85;

    static final double UNDIMMED = 0.97;

    /** Trust in light that was only moved. */
    static final double MOVED = 0.002;

    /** A place this far from the disk's centre, in radii, tells whether the frame saw the clouds at the limb beside it. */
    private static final double INSIDE_LIMB = 0.985;
    /** Radius up to which a disk has too few pixels to tell the limb's own profile from noise and clouds, pixels. */
    private static final double LEAST_TELLING_PX = 50;
    /** How far beyond the limb its light reaches, blurs. */
    private static final double LIMB_BLURS = 6;

    /** Planes of the frame's size that are held: itself, the spline through it and, of a quarter's size each, its gaps. */
    private static final int PLANES_OF_FRAME = 3;
    /** Planes that the light of globe and rings is held in. */
    private static final int PLANES_OF_LIGHT = 3;

    private final Plane frame;
    private final FittedDisk fitted;
    private final View from;
    private final boolean belted;
    private Prepared prepared;
    private Target target;

    /** What does not depend on the epoch. */
    private record Prepared(
            Spline moved, Spline ratio, GlobeLight globe, Gaps gaps, Optional<LightCalibration> calibration) {
        /** Whether the frame shows a place. */
        boolean shows(double column, double row) {
            return moved.contains(column, row)
                    && !gaps.isBeyond(pixel(column, moved.width()), pixel(row, moved.height()));
        }

        /** By how much more than by the shading a place's light changes on the way, by the cosines there. */
        double correction(double toIncidence, double toEmission, double incidence, double emission, double latitude) {
            return calibration.isEmpty()
                    ? 1
                    : calibration.get().change(toIncidence, toEmission, incidence, emission, latitude);
        }

        /** The light of the globe alone against its shading, at a place on the globe. */
        float ratio(double column, double row) {
            return ratio.at(column - globe.part().left(), row - globe.part().top());
        }

        /** Whether it holds data there. */
        boolean holds(double column, double row) {
            return !gaps.isEmpty(pixel(column, moved.width()), pixel(row, moved.height()));
        }
    }

    /** What depends only on how the body stands at the epoch, not on how far its surface turns. */
    private record Target(Globe globe, Disk disk, int width, int height, GlobeLight light) {
        boolean is(View to, int columns, int lines) {
            return globe.equals(to.globe()) && disk.equals(to.disk()) && width == columns && height == lines;
        }
    }

    /**
     * @param frame the plane, linear
     * @param fitted its disk
     * @param globe the body's aspect at the middle of the recording
     */
    public Turner(Plane frame, FittedDisk fitted, Globe globe) {
        this(frame, fitted, globe, false);
    }

    /** @param belted whether limb darkening may differ from parallel to parallel, as on bodies with belts */
    public Turner(Plane frame, FittedDisk fitted, Globe globe, boolean belted) {
        this.frame = frame;
        this.belted = belted;
        this.fitted = fitted;
        this.from = new View(globe, fitted.disk());
    }

    /**
     * Turns the plane.
     *
     * @param to the view at the epoch on the output's pixels
     * @param rotation how far the surface turns
     */
    public Turned turn(View to, int width, int height, Rotation rotation, Progress progress) {
        return turn(to, width, height, 0, height, rotation, progress);
    }

    /**
     * Turns the plane to some rows of the output.
     *
     * @param top number of the first row
     * @param rows how many
     */
    public Turned turn(View to, int width, int height, int top, int rows, Rotation rotation, Progress progress) {
        Prepared then = prepared(progress);
        GlobeLight now = light(to, width, height);
        progress.check();
        Plane picture = new Plane(width, rows);
        Plane trust = new Plane(width, rows);
        Rows.each(rows, (rowFrom, rowTo) -> {
            for (int row = rowFrom; row < rowTo; row++) {
                turnRow(row, top, to, rotation, then, now, picture, trust);
            }
        });
        return new Turned(picture, trust, now.light(width, top, rows));
    }

    /** Memory that it holds once it has turned its frame to an image of some size, with the frame. */
    public long heldBytes(View to, int width, int height) {
        Shading shading = fitted.shading();
        Region there = shading.region(from, from.globe().extent(), frame.width(), frame.height());
        Region here =
                shading.carried(from.disk(), to.disk()).region(to, to.globe().extent(), width, height);
        long floats = (long) PLANES_OF_FRAME * frame.width() * frame.height()
                + (long) (PLANES_OF_LIGHT + 1) * there.width() * there.height()
                + (long) PLANES_OF_LIGHT * here.width() * here.height();
        return Float.BYTES * floats;
    }

    /** Made once: whoever turns to many epochs keeps the turner. */
    private synchronized Prepared prepared(Progress progress) {
        if (prepared == null) {
            Plane light = lightAboveSky();
            GlobeLight globe = GlobeLight.of(from, fitted.rings(), fitted.shading(), frame.width(), frame.height());
            progress.check();
            Gaps gaps = Gaps.of(light);
            Plane near = globe.part().of(light);
            Plane ratio = ratio(near, globe.attenuation());
            boolean tells = belted && from.disk().equatorialRadiusPx() > LEAST_TELLING_PX;
            Optional<LightCalibration> calibration = tells
                    ? Optional.of(LightCalibration.of(ratio, globe.attenuation(), from.on(globe.part())))
                    : Optional.empty();
            Gaps.of(near).fill(ratio);
            gaps.fill(light);
            prepared = new Prepared(new Spline(light), new Spline(ratio), globe, gaps, calibration);
        }
        return prepared;
    }

    private synchronized GlobeLight light(View to, int width, int height) {
        if (target == null || !target.is(to, width, height)) {
            Shading shading = fitted.shading().carried(from.disk(), to.disk());
            target = new Target(
                    to.globe(), to.disk(), width, height, GlobeLight.of(to, fitted.rings(), shading, width, height));
        }
        return target.light;
    }

    private Plane lightAboveSky() {
        Plane light = frame.copy();
        float[] data = light.data();
        for (int i = 0; i < data.length; i++) {
            data[i] = (float) ((data[i] - fitted.background()) / fitted.brightness());
        }
        return light;
    }

    /** The light of the globe alone against its shading. */
    private static Plane ratio(Plane light, RingAttenuation attenuation) {
        Plane ratio = new Plane(light.width(), light.height());
        for (int i = 0; i < ratio.data().length; i++) {
            float globe = light.data()[i] - attenuation.rings().data()[i];
            ratio.data()[i] = globe / Math.max(attenuation.shade().data()[i], 0.5f * (float) DARK);
        }
        return ratio;
    }

    private void turnRow(
            int outputRow,
            int top,
            View to,
            Rotation rotation,
            Prepared then,
            GlobeLight now,
            Plane picture,
            Plane trust) {
        int y = top + outputRow;
        double rigidBack = rotation.rigid() ? rotation.backRad(0) : 0;
        double rigidCos = Math.cos(rigidBack);
        double rigidSin = Math.sin(rigidBack);
        for (int x = 0; x < picture.width(); x++) {
            double pole = to.pole(x, y);
            double side = to.side(x, y);
            double depth = to.depth(pole, side);
            double column = from.column(pole, side);
            double row = from.row(pole, side);
            double carried = 0;
            double carriedTrust = 0;
            boolean held = true;
            boolean cutOff = false;
            if (!Double.isNaN(depth)) {
                double bodyX = to.bodyX(pole, depth);
                double bodyZ = to.bodyZ(pole, depth);
                double cos = rigidCos;
                double sin = rigidSin;
                double latitude =
                        rotation.rigid() && then.calibration.isEmpty() ? 0 : to.graphicLatitude(bodyX, side, bodyZ);
                if (!rotation.rigid()) {
                    double back = rotation.backRad(latitude);
                    cos = Math.cos(back);
                    sin = Math.sin(back);
                }
                double thenX = bodyX * cos - side * sin;
                double thenY = bodyX * sin + side * cos;
                double thenEmission = from.cosEmission(thenX, thenY, bodyZ);
                double nowEmission = to.cosEmission(bodyX, side, bodyZ);
                double emission = Math.min(thenEmission, nowEmission);
                if (emission > GRAZING) {
                    double thenPole = from.poleOf(thenX, bodyZ);
                    double thenColumn = from.column(thenPole, thenY);
                    double thenRow = from.row(thenPole, thenY);
                    float shade = now.shade(x, y);
                    if (then.shows(thenColumn, thenRow)) {
                        int nearestX = pixel(thenColumn, then.moved.width());
                        int nearestY = pixel(thenRow, then.moved.height());
                        double darker = Math.min(shade, then.globe.shade(nearestX, nearestY));
                        double clear = Math.min(now.clear(x, y), then.globe.clear(nearestX, nearestY));
                        carriedTrust = step(emission, GRAZING, CLEAR)
                                * step(darker, DARK, BRIGHT)
                                * step(clear, DIMMED, UNDIMMED);
                        carried = carriedTrust > 0
                                ? then.ratio(thenColumn, thenRow)
                                                * shade
                                                * then.correction(
                                                        to.cosIncidence(bodyX, side, bodyZ),
                                                        nowEmission,
                                                        from.cosIncidence(thenX, thenY, bodyZ),
                                                        thenEmission,
                                                        latitude)
                                        + now.rings(x, y)
                                : 0;
                        held = then.holds(thenColumn, thenRow);
                    } else {
                        cutOff = shade > DARK;
                    }
                }
            }
            double value = carriedTrust * carried;
            if (carriedTrust < 1) {
                boolean shown = !cutOff && then.shows(column, row) && !isBesideCut(to, rotation, then, pole, side);
                value = shown ? value + (1 - carriedTrust) * then.moved.at(column, row) : Double.NaN;
                held &= shown && then.holds(column, row);
            }
            picture.set(x, outputRow, (float) value);
            trust.set(x, outputRow, held ? (float) Math.max(MOVED, carriedTrust) : 0);
        }
    }

    /** Whether a place at the limb or just beyond it lies beside clouds that the frame's edge cut off. */
    private boolean isBesideCut(View to, Rotation rotation, Prepared then, double pole, double side) {
        double radius = to.ellipticRadius(pole, side);
        double reach = LIMB_BLURS * fitted.shading().blurPx() / from.disk().equatorialRadiusPx();
        if (radius < INSIDE_LIMB || radius > 1 + reach) {
            return false;
        }
        double inPole = pole * INSIDE_LIMB / radius;
        double inSide = side * INSIDE_LIMB / radius;
        double depth = to.depth(inPole, inSide);
        double bodyX = to.bodyX(inPole, depth);
        double bodyZ = to.bodyZ(inPole, depth);
        double back = rotation.backRad(rotation.rigid() ? 0 : to.graphicLatitude(bodyX, inSide, bodyZ));
        double thenX = bodyX * Math.cos(back) - inSide * Math.sin(back);
        double thenY = bodyX * Math.sin(back) + inSide * Math.cos(back);
        double thenPole = from.poleOf(thenX, bodyZ);
        return from.cosEmission(thenX, thenY, bodyZ) > GRAZING
                && !then.shows(from.column(thenPole, thenY), from.row(thenPole, thenY));
    }

    private static int pixel(double place, int size) {
        return Math.max(0, Math.min(size - 1, (int) Math.round(place)));
    }

    private static double step(double value, double from, double to) {
        double t = Math.max(0, Math.min(1, (value - from) / (to - from)));
        return t * t * (3 - 2 * t);
    }
}
