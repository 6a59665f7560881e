package org.epochrome.session.schedule;

import java.time.Instant;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;

/**
 * When what was recorded and how far it turns to the epoch; known without looking at a pixel.
 *
 * @param epoch instant of the result
 * @param aspect how the body stands then
 * @param reference number of the exposure that gives the result its place, scale and orientation
 * @param rows one for each exposure
 */
public record Timetable(Instant epoch, Aspect aspect, int reference, List<Row> rows) {
    /** A standard deviation as a full width at half maximum: the resolution. */
    private static final double RESOLUTION_PER_BLUR = 2.355;

    /**
     * An exposure.
     *
     * @param exposure the plane
     * @param turnedDeg how far the globe turns from its middle to the epoch
     * @param sweptDeg how far it turned during the recording
     */
    public record Row(Exposure exposure, double turnedDeg, double sweptDeg) {

        /** How far the middle of the disk moved during the recording, pixels of the frame. */
        public double sweptPx(double equatorialRadiusPx) {
            return Math.abs(Math.toRadians(sweptDeg)) * equatorialRadiusPx;
        }

        /** Whether that is more than a frame of such a blur resolves. */
        public boolean smeared(double equatorialRadiusPx, double blurPx) {
            return sweptPx(equatorialRadiusPx) > RESOLUTION_PER_BLUR * blurPx;
        }
    }

    public Timetable {
        rows = List.copyOf(rows);
    }

    public static Timetable of(Recipe recipe) {
        return of(recipe, List.of());
    }

    /** That of a recipe which differs little from this one's, such as in its epoch: a matter of microseconds a frame. */
    public Timetable changed(Recipe recipe) {
        return of(recipe, rows);
    }

    private static Timetable of(Recipe recipe, List<Row> known) {
        IdentityHashMap<Exposure, Row> before = new IdentityHashMap<>();
        known.forEach(row -> before.put(row.exposure(), row));
        Schedule schedule =
                Schedule.of(recipe, known.stream().map(Row::exposure).toList());
        Turning turning = new Turning(recipe, schedule);
        List<Row> rows = new ArrayList<>();
        for (Exposure exposure : schedule.exposures()) {
            Row row = before.get(exposure);
            double swept = row == null ? swept(exposure) : row.sweptDeg();
            rows.add(new Row(exposure, turning.turnedDeg(exposure), swept));
        }
        return new Timetable(schedule.epoch(), schedule.aspect(), schedule.reference(), rows);
    }

    private static double swept(Exposure exposure) {
        Aspect mid = exposure.aspect();
        var span = exposure.frame().timing().span();
        var system = mid.body().defaultSystem();
        double from = Ephemeris.aspect(mid.body(), span.start(), mid.site()).centralMeridianDeg(system);
        double to = Ephemeris.aspect(mid.body(), span.end(), mid.site()).centralMeridianDeg(system);
        return Disk.wrapDeg(to - from);
    }
}
