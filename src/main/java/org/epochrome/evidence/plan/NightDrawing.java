package org.epochrome.evidence.plan;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.evidence.Markup;
import org.epochrome.plan.Clock;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.Quantity;
import org.epochrome.plan.drawing.NightCurves;
import org.epochrome.plan.night.Interval;

/** Altitude over the night, and dispersion below it on the same axis of time. */
final class NightDrawing {
    private static final double WIDTH = 760;
    private static final double LEFT = 44;
    private static final double RIGHT = 16;
    private static final double TOP = 26;
    private static final double ALTITUDE_HEIGHT = 210;
    private static final double GAP = 34;
    private static final double DISPERSION_HEIGHT = 130;
    private static final double BOTTOM = 26;
    private static final double CIVIL_DEG = -6;
    private static final double DARK_DEG = -18;

    private final NightPlan plan;
    private final NightCurves curves;
    private final Clock clock;
    private final List<Markup> out = new ArrayList<>();

    private NightDrawing(NightPlan plan) {
        this.plan = plan;
        this.curves = NightCurves.of(plan);
        this.clock = new Clock(plan.settings().clock());
    }

    static Markup of(NightPlan plan) {
        return new NightDrawing(plan).draw();
    }

    private Markup draw() {
        boolean dispersion = curves.largestArcsec().isPresent();
        double below = dispersion ? GAP + DISPERSION_HEIGHT : 0;
        twilight();
        for (Interval usable : plan.usable()) {
            double from = x(usable.start());
            out.add(Svg.box("usable", from, TOP, x(usable.end()) - from, ALTITUDE_HEIGHT));
        }
        hours(TOP + ALTITUDE_HEIGHT + below);
        for (int deg = 0; deg <= 90; deg += 30) {
            out.add(Svg.line("grid", LEFT, altitudeY(deg), WIDTH - RIGHT, altitudeY(deg)));
            out.add(Svg.label("axis", LEFT - 6, altitudeY(deg) + 4, "end", deg + "\u00b0"));
        }
        curve("moon", curves.moonAltitude());
        curve("planet", curves.altitude());
        recordings();
        out.add(Svg.label(
                "axis",
                LEFT,
                TOP - 12,
                "start",
                "altitude: " + plan.settings().body().displayName() + " \u2014, Moon - -"));
        if (dispersion) {
            dispersion();
        }
        return Svg.drawing(
                WIDTH, TOP + ALTITUDE_HEIGHT + below + BOTTOM, "Altitude and dispersion over the night", out);
    }

    /** Boxes of equal light, one after the other. */
    private void twilight() {
        List<NightCurves.Point> sun = curves.sunAltitude();
        int first = 0;
        for (int i = 0; i < sun.size() - 1; i++) {
            if (i == sun.size() - 2 || !light(sun, i + 1).equals(light(sun, first))) {
                double from = x(sun.get(first).utc());
                double to = x(sun.get(i + 1).utc());
                out.add(Svg.box(light(sun, first), from, TOP, to - from, ALTITUDE_HEIGHT));
                first = i + 1;
            }
        }
    }

    /** How light the sky is between a point and the next. */
    private static String light(List<NightCurves.Point> sun, int i) {
        double altitude = 0.5 * (sun.get(i).value() + sun.get(i + 1).value());
        return altitude > 0 ? "day" : altitude > CIVIL_DEG ? "civil" : altitude > DARK_DEG ? "twilight" : "dark";
    }

    private void hours(double bottom) {
        ZoneOffset offset = clock.offset();
        Instant hour = curves.start()
                .plusSeconds(offset.getTotalSeconds())
                .truncatedTo(ChronoUnit.HOURS)
                .minusSeconds(offset.getTotalSeconds());
        long length = Duration.between(curves.start(), curves.end()).toHours();
        long step = length > 16 ? 3 : length > 8 ? 2 : 1;
        for (Instant t = hour; !t.isAfter(curves.end()); t = t.plus(1, ChronoUnit.HOURS)) {
            if (t.isBefore(curves.start()) || t.atOffset(offset).getHour() % step != 0) {
                continue;
            }
            out.add(Svg.line("grid", x(t), TOP, x(t), bottom));
            out.add(Svg.label("axis", x(t), bottom + 16, "middle", clock.minutes(t)));
        }
    }

    private void recordings() {
        plan.sequence().ifPresent(s -> s.recordings().forEach(r -> {
            double from = x(r.start());
            out.add(Svg.box("bar " + Svg.ink(r.band().name()), from, TOP, Math.max(0.6, x(r.end()) - from), 7));
        }));
    }

    private void dispersion() {
        double top = TOP + ALTITUDE_HEIGHT + GAP;
        double most = 1.1 * curves.largestArcsec().orElseThrow();
        double step = NightCurves.gridArcsec(most, 5);
        for (double arcsec = 0; arcsec <= most; arcsec += step) {
            double y = top + DISPERSION_HEIGHT * (1 - arcsec / most);
            out.add(Svg.line("grid", LEFT, y, WIDTH - RIGHT, y));
            out.add(Svg.label("axis", LEFT - 6, y + 4, "end", Quantity.arcsec(arcsec, step < 1 ? 1 : 0)));
        }
        out.add(Svg.label("axis", LEFT, top - 12, "start", "dispersion within a band \u2014, its resolution - -"));
        double labelX = WIDTH - RIGHT;
        for (NightCurves.BandCurves band : curves.bands()) {
            String ink = Svg.ink(band.band().name());
            curve("smear " + ink, band.smear(), top, most);
            curve("resolution " + ink, band.resolution(), top, most);
            out.add(Svg.label(
                    "name " + ink, labelX, top - 12, "end", band.band().name()));
            labelX -= 30;
        }
    }

    private void curve(String style, List<NightCurves.Point> points) {
        List<double[]> piece = new ArrayList<>();
        Instant before = null;
        for (NightCurves.Point p : points) {
            if (before != null && Duration.between(before, p.utc()).toMinutes() > 20) {
                out.add(Svg.curve(style, piece));
                piece = new ArrayList<>();
            }
            piece.add(new double[] {x(p.utc()), altitudeY(p.value())});
            before = p.utc();
        }
        if (!piece.isEmpty()) {
            out.add(Svg.curve(style, piece));
        }
    }

    private void curve(String style, List<NightCurves.Point> points, double top, double most) {
        out.add(Svg.curve(
                style,
                points.stream()
                        .map(p -> new double[] {x(p.utc()), top + DISPERSION_HEIGHT * (1 - p.value() / most)})
                        .toList()));
    }

    private double x(Instant utc) {
        double whole =
                Math.max(1, Duration.between(curves.start(), curves.end()).toSeconds());
        double part = Duration.between(curves.start(), utc).toSeconds() / whole;
        return LEFT + (WIDTH - LEFT - RIGHT) * Math.max(0, Math.min(1, part));
    }

    private static double altitudeY(double deg) {
        return TOP + ALTITUDE_HEIGHT * (1 - deg / 90);
    }
}
