package org.epochrome.disk;

import org.epochrome.image.Region;

/**
 * Orthographic view geometry of a {@link Globe} whose {@link Disk} lies in an image: pixel to surface and back, exact
 * both ways. The distance of a planet is so many times its radius that perspective moves no point of the disk by more
 * than 1e-4 of the radius.
 *
 * <p>Image offsets are first turned onto the sky axes of the body: {@code pole} along the projected north pole and
 * {@code side} at right angles to it, towards growing east longitude, both in equatorial radii. These axes know no air: what
 * it flattens is undone on the way from the image to them.
 */
public final class View {
    private final Globe globe;
    private final Disk disk;
    private final double sinTilt;
    private final double cosTilt;
    private final double inverseSquaredRatio;
    private final double poleRight;
    private final double poleDown;
    private final double sideRight;
    private final double sideDown;
    private final double rightPole;
    private final double rightSide;
    private final double downPole;
    private final double downSide;
    private final double limbRatio;
    private final double quadraticA;
    private final double quadraticB;
    private final double quadraticC;

    public View(Globe globe, Disk disk) {
        this.globe = globe;
        this.disk = disk;
        sinTilt = Math.sin(globe.tilt());
        cosTilt = Math.cos(globe.tilt());
        inverseSquaredRatio = 1 / (globe.axisRatio() * globe.axisRatio());
        double cosNorth = Math.cos(Math.toRadians(disk.northAngleDeg()));
        double sinNorth = Math.sin(Math.toRadians(disk.northAngleDeg()));
        double sideSign = disk.mirrored() ? -1 : 1;
        // The zenith on the sky axes: position angles grow eastward on the sky, the side axis points westward.
        double fromPole = Math.toRadians(globe.air().zenithFromPoleDeg());
        double zenithPole = Math.cos(fromPole);
        double zenithSide = -Math.sin(fromPole);
        double zenithRight = -zenithPole * sinNorth + sideSign * zenithSide * cosNorth;
        double zenithDown = -zenithPole * cosNorth - sideSign * zenithSide * sinNorth;
        double shorter = globe.air().part();
        double longer = shorter / (1 - shorter);
        poleRight = -sinNorth + longer * zenithPole * zenithRight;
        poleDown = -cosNorth + longer * zenithPole * zenithDown;
        sideRight = sideSign * cosNorth + longer * zenithSide * zenithRight;
        sideDown = -sideSign * sinNorth + longer * zenithSide * zenithDown;
        rightPole = -sinNorth - shorter * zenithPole * zenithRight;
        rightSide = sideSign * cosNorth - shorter * zenithSide * zenithRight;
        downPole = -cosNorth - shorter * zenithPole * zenithDown;
        downSide = -sideSign * sinNorth - shorter * zenithSide * zenithDown;
        limbRatio = globe.apparentAxisRatio();
        quadraticA = cosTilt * cosTilt + sinTilt * sinTilt * inverseSquaredRatio;
        quadraticB = sinTilt * cosTilt * (inverseSquaredRatio - 1);
        quadraticC = sinTilt * sinTilt + cosTilt * cosTilt * inverseSquaredRatio;
    }

    public Globe globe() {
        return globe;
    }

    public Disk disk() {
        return disk;
    }

    /** This view on the pixels of a part of the image. */
    public View on(Region part) {
        return new View(globe, disk.movedBy(-part.left(), -part.top()));
    }

    /** Half the width and height of the upright box around globe and rings, pixels. */
    public double[] halfSizePx() {
        double along = globe.extent();
        double across = Math.max(limbRatio, globe.ringed() ? along * Math.abs(sinTilt) : 0);
        double sin = Math.sin(Math.toRadians(disk.northAngleDeg()));
        double cos = Math.cos(Math.toRadians(disk.northAngleDeg()));
        return new double[] {
            disk.equatorialRadiusPx() * Math.hypot(along * cos, across * sin),
            disk.equatorialRadiusPx() * Math.hypot(along * sin, across * cos)
        };
    }

    /** {@link Globe#apparentAxisRatio} of the globe. */
    public double limbRatio() {
        return limbRatio;
    }

    /** Offset along the projected pole of a pixel, equatorial radii. */
    public double pole(double x, double y) {
        return ((x - disk.x()) * poleRight + (y - disk.y()) * poleDown) / disk.equatorialRadiusPx();
    }

    /** Offset of a pixel at right angles to the pole, towards growing east longitude, equatorial radii. */
    public double side(double x, double y) {
        return ((x - disk.x()) * sideRight + (y - disk.y()) * sideDown) / disk.equatorialRadiusPx();
    }

    /** Column of a point given on the sky axes of the body. */
    public double column(double pole, double side) {
        return disk.x() + disk.equatorialRadiusPx() * (pole * rightPole + side * rightSide);
    }

    /** Row of a point given on the sky axes of the body. */
    public double row(double pole, double side) {
        return disk.y() + disk.equatorialRadiusPx() * (pole * downPole + side * downSide);
    }

    /** Distance from the disk's centre in units of the limb ellipse: 1 on the limb. */
    public double ellipticRadius(double pole, double side) {
        double stretched = pole / limbRatio;
        return Math.sqrt(side * side + stretched * stretched);
    }

    /**
     * Height of the visible surface above the plane of the sky through the body's centre, towards the observer, in
     * equatorial radii; NaN off the disk.
     */
    public double depth(double pole, double side) {
        double b = pole * quadraticB;
        double c = pole * pole * quadraticC + side * side - 1;
        double discriminant = b * b - quadraticA * c;
        return discriminant < 0 ? Double.NaN : (-b + Math.sqrt(discriminant)) / quadraticA;
    }

    /** Body axis X of the surface point at a place and {@linkplain #depth depth}. */
    public double bodyX(double pole, double depth) {
        return cosTilt * depth - sinTilt * pole;
    }

    /** Body axis Z of the surface point at a place and depth. Body axis Y is {@code side} itself. */
    public double bodyZ(double pole, double depth) {
        return sinTilt * depth + cosTilt * pole;
    }

    /** Offset along the projected pole of a point on the body axes. */
    public double poleOf(double bodyX, double bodyZ) {
        return cosTilt * bodyZ - sinTilt * bodyX;
    }

    /** Length of the (unnormalised) surface normal at a point of the surface. */
    double normalLength(double bodyX, double bodyY, double bodyZ) {
        double z = bodyZ * inverseSquaredRatio;
        return Math.sqrt(bodyX * bodyX + bodyY * bodyY + z * z);
    }

    /** Component towards the observer of the unnormalised normal at a point of the surface. */
    double towardsObserver(double bodyX, double bodyZ) {
        return cosTilt * bodyX + sinTilt * bodyZ * inverseSquaredRatio;
    }

    /** Component towards the Sun of the unnormalised normal at a point of the surface. */
    double towardsSun(double bodyX, double bodyY, double bodyZ) {
        return globe.sunX() * bodyX + globe.sunY() * bodyY + globe.sunZ() * bodyZ * inverseSquaredRatio;
    }

    /** Cosine of the emission angle at a point of the surface; negative on the far side. */
    public double cosEmission(double bodyX, double bodyY, double bodyZ) {
        return towardsObserver(bodyX, bodyZ) / normalLength(bodyX, bodyY, bodyZ);
    }

    /** Cosine of the incidence angle at a point of the surface; negative on the night side. */
    public double cosIncidence(double bodyX, double bodyY, double bodyZ) {
        return towardsSun(bodyX, bodyY, bodyZ) / normalLength(bodyX, bodyY, bodyZ);
    }

    /** Planetographic latitude of a point of the surface, radians. */
    public double graphicLatitude(double bodyX, double bodyY, double bodyZ) {
        return Math.atan2(bodyZ * inverseSquaredRatio, Math.sqrt(bodyX * bodyX + bodyY * bodyY));
    }

    /** East longitude of a point from the meridian that faces the observer, radians, -pi to pi. */
    public static double eastOfMeridian(double bodyX, double bodyY) {
        return Math.atan2(bodyY, bodyX);
    }

    /**
     * Where a point of the surface lies in the image.
     *
     * @param x column, pixels
     * @param y row, pixels
     * @param visible whether it is on the side that faces the observer
     */
    public record Place(double x, double y, boolean visible) {}

    /**
     * The way back from {@link #graphicLatitude} and {@link #eastOfMeridian} to the image.
     *
     * @param graphicLatitude planetographic, radians
     * @param eastOfMeridian from the meridian that faces the observer, radians
     */
    public Place place(double graphicLatitude, double eastOfMeridian) {
        double sine = Math.sin(graphicLatitude);
        double cosine = Math.cos(graphicLatitude);
        double squaredRatio = globe.axisRatio() * globe.axisRatio();
        double scale = 1 / Math.sqrt(cosine * cosine + squaredRatio * sine * sine);
        double bodyX = scale * cosine * Math.cos(eastOfMeridian);
        double bodyY = scale * cosine * Math.sin(eastOfMeridian);
        double bodyZ = scale * squaredRatio * sine;
        double pole = poleOf(bodyX, bodyZ);
        return new Place(column(pole, bodyY), row(pole, bodyY), cosEmission(bodyX, bodyY, bodyZ) > 0);
    }
}
