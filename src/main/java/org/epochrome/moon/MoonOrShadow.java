package org.epochrome.moon;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * A moon or the shadow of one, and where it stands when. Lengths are equatorial radii of the planet, on the sky axes of {@link
 * org.epochrome.disk.View}.
 *
 * @param name of the moon; empty if it was found and not predicted
 * @param shadow whether it is the moon's shadow
 * @param radius of the round disk
 * @param softness standard deviation of the blur that it has of itself: a shadow's penumbra
 * @param behind whether the globe hides what of it lies inside the limb
 * @param course its place at an instant
 * @param inSight whether it can be seen at an instant
 */
public record MoonOrShadow(
        Optional<String> name,
        boolean shadow,
        double radius,
        double softness,
        boolean behind,
        Course course,
        Predicate<Instant> inSight) {
    private static final int STEP_S = 30;

    /** A companion that no ephemeris predicts: nothing is known to hide it. */
    public static MoonOrShadow found(boolean shadow, double radius, Course course) {
        return new MoonOrShadow(Optional.empty(), shadow, radius, 0, false, course, utc -> true);
    }

    /** Where a companion stands at an instant. */
    @FunctionalInterface
    public interface Course {
        public SkyPoint at(Instant utc);

        /** A straight one, through a place at an instant, lengths per second. */
        static Course straight(Instant then, SkyPoint place, SkyPoint perSecond) {
            return utc -> place.plus(perSecond.times(secondsSince(then, utc)));
        }

        default Course movedBy(SkyPoint offset) {
            return utc -> at(utc).plus(offset);
        }
    }

    public SkyPoint at(Instant utc) {
        return course.at(utc);
    }

    /** Motion per second. */
    SkyPoint velocity(Instant utc) {
        return at(utc.plusSeconds(STEP_S)).minus(at(utc.minusSeconds(STEP_S))).times(0.5 / STEP_S);
    }

    MoonOrShadow on(Course other) {
        return new MoonOrShadow(name, shadow, radius, softness, behind, other, inSight);
    }

    public MoonOrShadow sized(double otherRadius) {
        return new MoonOrShadow(name, shadow, otherRadius, softness, behind, course, inSight);
    }

    public static double secondsSince(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }
}
