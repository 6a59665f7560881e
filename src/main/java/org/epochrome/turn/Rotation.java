package org.epochrome.turn;

import java.util.function.DoubleUnaryOperator;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;

/**
 * How far the surface turns from a frame's middle to the epoch: the angle, in radians of body-fixed east longitude
 * against the meridian facing the observer, at which a point seen at the epoch stood in the frame, less the angle at
 * which it stands at the epoch; a function of the planetographic latitude in radians.
 */
@FunctionalInterface
public interface Rotation {
    double backRad(double graphicLatitudeRad);

    /** Whether every latitude turns by the same angle. */
    default boolean rigid() {
        return false;
    }

    /** No turning at all. */
    static Rotation none() {
        return rigid(0);
    }

    /** Rotation by one angle at all latitudes. */
    static Rotation rigid(double backRad) {
        return new Rotation() {
            @Override
            public double backRad(double graphicLatitudeRad) {
                return backRad;
            }

            @Override
            public boolean rigid() {
                return true;
            }
        };
    }

    /** The turn between two aspects of a body that turns as a whole with a longitude system. */
    static Rotation between(Aspect frame, Aspect epoch, RotationSystem system) {
        return rigid(systemBackRad(frame, epoch, system));
    }

    /**
     * The turn between two aspects of a body whose latitudes turn at their own rates.
     *
     * @param extraDegPerDay rate on top of the system's, in the sense of the body's rotation, by planetographic latitude
     *     in degrees
     */
    static Rotation between(Aspect frame, Aspect epoch, RotationSystem system, DoubleUnaryOperator extraDegPerDay) {
        double back = systemBackRad(frame, epoch, system);
        double sense = frame.body().prograde() ? 1 : -1;
        double days = (java.time.Duration.between(epoch.utc(), frame.utc()).toNanos() * 1e-9
                        - (frame.lightTimeS() - epoch.lightTimeS()))
                / 86400.0;
        return latitude -> back + sense * Math.toRadians(extraDegPerDay.applyAsDouble(Math.toDegrees(latitude)) * days);
    }

    private static double systemBackRad(Aspect frame, Aspect epoch, RotationSystem system) {
        double sense = frame.body().prograde() ? 1 : -1;
        double meridians = Disk.wrapDeg(frame.centralMeridianDeg(system) - epoch.centralMeridianDeg(system));
        return sense * Math.toRadians(meridians);
    }
}
