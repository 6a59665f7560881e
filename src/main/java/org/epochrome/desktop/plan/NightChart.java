package org.epochrome.desktop.plan;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.plan.Clock;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.Quantity;
import org.epochrome.plan.drawing.NightCurves;
import org.epochrome.plan.night.Interval;

/** Altitude over the night with the recordings, and below it the dispersion within each band. */
final class NightChart extends Region {
    private static final double LEFT = 46;
    private static final double RIGHT = 26;
    private static final double TOP = 28;
    private static final double GAP = 34;
    private static final double BOTTOM = 24;
    private static final double HEIGHT = 400;
    private static final double ALTITUDE_PART = 0.62;
    private static final double DARK_DEG = -18;
    private static final double CIVIL_DEG = -6;
    private static final Duration JUMP = Duration.ofMinutes(20);

    private final Canvas canvas = new Canvas();
    private Palette palette = Palette.DARK;
    private NightPlan plan;
    private NightCurves curves;
    private Clock clock;

    NightChart() {
        getChildren().add(canvas);
        setPrefHeight(HEIGHT);
        setMinHeight(HEIGHT);
        setId("plan-chart");
    }

    void setPalette(Palette next) {
        palette = next;
        paint();
    }

    void show(NightPlan next) {
        plan = next;
        curves = next.hours().isEmpty() ? null : NightCurves.of(next);
        clock = new Clock(next.settings().clock());
        setAccessibleText(Texts.of("plan.chart"));
        paint();
    }

    @Override
    protected void layoutChildren() {
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        paint();
    }

    private void paint() {
        GraphicsContext g = canvas.getGraphicsContext2D();
        g.setFill(palette.paper());
        g.fillRect(0, 0, canvas.getWidth(), canvas.getHeight());
        if (curves == null || canvas.getWidth() < LEFT + RIGHT + 50) {
            return;
        }
        g.setFont(Font.font(12));
        boolean dispersion = curves.largestArcsec().isPresent();
        double room = canvas.getHeight() - TOP - BOTTOM - (dispersion ? GAP : 0);
        double high = dispersion ? ALTITUDE_PART * room : room;
        sky(g, high);
        hours(g);
        for (int deg = 0; deg <= 90; deg += 30) {
            line(g, altitudeY(deg, high), deg + "\u00b0");
        }
        curve(
                g,
                curves.moonAltitude(),
                palette.ink().deriveColor(0, 0.4, 0.8, 0.7),
                1.2,
                v -> altitudeY(v, high),
                3,
                4);
        curve(g, curves.altitude(), palette.accent(), 2.2, v -> altitudeY(v, high));
        recordings(g);
        title(
                g,
                TOP - 10,
                Texts.of("plan.chart.altitude", plan.settings().body().displayName()));
        if (dispersion) {
            dispersion(g, TOP + high + GAP, room - high);
        }
    }

    /** The height of a value. */
    private interface Scale {
        double y(double value);
    }

    private void sky(GraphicsContext g, double high) {
        List<NightCurves.Point> sun = curves.sunAltitude();
        for (int i = 0; i + 1 < sun.size(); i++) {
            double altitude = 0.5 * (sun.get(i).value() + sun.get(i + 1).value());
            double light = altitude > 0 ? 0.34 : altitude > CIVIL_DEG ? 0.22 : altitude > DARK_DEG ? 0.11 : 0;
            if (light > 0) {
                double from = Math.floor(x(sun.get(i).utc()));
                double to = Math.floor(x(sun.get(i + 1).utc()));
                g.setFill(palette.warm().deriveColor(0, 0.7, 1, light));
                g.fillRect(from, TOP, to - from, high);
            }
        }
        g.setFill(palette.accent().deriveColor(0, 1, 1, 0.12));
        for (Interval usable : plan.night().usable()) {
            g.fillRect(x(usable.start()), TOP, x(usable.end()) - x(usable.start()), high);
        }
    }

    private void hours(GraphicsContext g) {
        ZoneOffset offset = clock.offset();
        Instant first = curves.start()
                .plusSeconds(offset.getTotalSeconds())
                .truncatedTo(ChronoUnit.HOURS)
                .minusSeconds(offset.getTotalSeconds());
        long length = Duration.between(curves.start(), curves.end()).toHours();
        long step = length > 16 ? 3 : length > 8 ? 2 : 1;
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.CENTER);
        for (Instant t = first; !t.isAfter(curves.end()); t = t.plus(1, ChronoUnit.HOURS)) {
            if (!t.isBefore(curves.start()) && t.atOffset(offset).getHour() % step == 0) {
                double x = Math.round(x(t)) + 0.5;
                g.setStroke(palette.faint());
                g.setLineWidth(0.5);
                g.strokeLine(x, TOP, x, canvas.getHeight() - BOTTOM);
                g.setFill(palette.ink());
                g.fillText(clock.minutes(t), x, canvas.getHeight() - BOTTOM / 2);
            }
        }
    }

    private void line(GraphicsContext g, double y, String label) {
        double at = Math.round(y) + 0.5;
        g.setStroke(palette.faint());
        g.setLineWidth(0.5);
        g.strokeLine(LEFT, at, canvas.getWidth() - RIGHT, at);
        g.setFill(palette.ink());
        g.setTextAlign(TextAlignment.RIGHT);
        g.setTextBaseline(VPos.CENTER);
        g.fillText(label, LEFT - 6, at);
    }

    private void title(GraphicsContext g, double y, String text) {
        g.setFill(palette.ink());
        g.setTextAlign(TextAlignment.LEFT);
        g.setTextBaseline(VPos.CENTER);
        g.fillText(text, LEFT, y);
    }

    private void recordings(GraphicsContext g) {
        plan.sequence().ifPresent(s -> s.recordings().forEach(r -> {
            g.setFill(palette.of(r.band().passband()));
            g.fillRect(x(r.start()), TOP, Math.max(0.7, x(r.end()) - x(r.start())), 7);
        }));
    }

    private void dispersion(GraphicsContext g, double top, double height) {
        double most = 1.1 * curves.largestArcsec().orElseThrow();
        Scale scale = value -> top + height * (1 - value / most);
        double step = NightCurves.gridArcsec(most, 4);
        for (double arcsec = 0; arcsec <= most; arcsec += step) {
            line(g, scale.y(arcsec), Quantity.arcsec(arcsec, step < 1 ? 1 : 0));
        }
        title(g, top - 10, Texts.of("plan.chart.dispersion"));
        double nameX = canvas.getWidth() - RIGHT;
        g.setTextAlign(TextAlignment.RIGHT);
        for (NightCurves.BandCurves band : curves.bands()) {
            Color ink = palette.of(band.band().passband());
            curve(g, band.smear(), ink, 2, scale);
            curve(g, band.resolution(), ink, 1, scale, 4, 4);
            g.setFill(palette.ink());
            g.setTextAlign(TextAlignment.RIGHT);
            g.fillText(band.band().name(), nameX, top - 10);
            g.setStroke(ink);
            g.setLineWidth(3);
            g.strokeLine(nameX - 36, top - 10, nameX - 20, top - 10);
            nameX -= 52;
        }
    }

    private void curve(
            GraphicsContext g, List<NightCurves.Point> points, Color ink, double width, Scale scale, double... dashes) {
        g.setStroke(ink);
        g.setLineWidth(width);
        g.setLineDashes(dashes);
        Instant before = null;
        g.beginPath();
        for (NightCurves.Point p : points) {
            if (before == null || Duration.between(before, p.utc()).compareTo(JUMP) > 0) {
                g.moveTo(x(p.utc()), scale.y(p.value()));
            } else {
                g.lineTo(x(p.utc()), scale.y(p.value()));
            }
            before = p.utc();
        }
        g.stroke();
        g.setLineDashes();
    }

    private double x(Instant utc) {
        double whole =
                Math.max(1, Duration.between(curves.start(), curves.end()).toSeconds());
        double part = Duration.between(curves.start(), utc).toSeconds() / whole;
        return LEFT + (canvas.getWidth() - LEFT - RIGHT) * Math.max(0, Math.min(1, part));
    }

    private static double altitudeY(double deg, double high) {
        return TOP + high * (1 - deg / 90);
    }
}
