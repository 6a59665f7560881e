package org.epochrome.desktop.look;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.product.DetailLevels;

/** The curve of sharpening over the logarithm of scale, with detail and noise under it. */
final class DetailCurve extends Region {
    private static final double WIDTH = 280;
    private static final double HEIGHT = 150;
    private static final double LEFT = 28;
    private static final double FOOT = 18;
    private static final double FINEST = 1;
    private static final double COARSEST = 32;
    /** Strengths at the bottom and the top of the bars. */
    private static final double FAINT = 1e-4;

    private static final double STRONG = 0.2;
    private static final double DOT_PX = 5;
    private static final double REACH_PX = 14;

    private final Canvas canvas = new Canvas(WIDTH, HEIGHT);
    private Palette palette = Palette.DARK;
    private Sharpening sharpening = Sharpening.DEFAULT;
    private Optional<DetailLevels> levels = Optional.empty();
    /** The factor at the top of the curve while a hand draws it. */
    private double top = 2;

    private boolean holding;
    private boolean atSide;

    /**
     * @param tried takes what a hand draws, before it lets go
     * @param taken takes it then
     */
    DetailCurve(Consumer<Sharpening> tried, Consumer<Sharpening> taken) {
        getChildren().add(canvas);
        setId("detail-curve");
        setAccessibleText(Texts.of("panel.detail.curve"));
        setOnMousePressed(this::pressed);
        setOnMouseDragged(e -> {
            if (holding) {
                tried.accept(drawn(e));
            }
        });
        setOnMouseReleased(e -> {
            if (holding) {
                holding = false;
                taken.accept(drawn(e));
            }
        });
        setMinSize(WIDTH, HEIGHT);
        setPrefSize(WIDTH, HEIGHT);
        setMaxSize(WIDTH, HEIGHT);
        paint();
    }

    void setPalette(Palette next) {
        palette = next;
        paint();
    }

    void show(Sharpening next, Optional<DetailLevels> there) {
        sharpening = next;
        levels = there;
        paint();
    }

    private static double x(double scalePx) {
        return LEFT + (WIDTH - LEFT - 8) * Math.log(scalePx / FINEST) / Math.log(COARSEST / FINEST);
    }

    private static double floor() {
        return HEIGHT - FOOT;
    }

    private void paint() {
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.clearRect(0, 0, WIDTH, HEIGHT);
        pen.setFont(Font.font(10));
        levels.ifPresent(l -> l.rows().forEach(row -> {
            double middle = x(row.sizePx());
            double half = 0.42 * (x(2 * row.sizePx()) - middle);
            bar(pen, middle - half, 2 * half, row.detail(), 0.45);
            bar(pen, middle - half, 2 * half, row.noise(), 1);
        }));
        pen.setStroke(palette.faint());
        pen.setLineWidth(1);
        pen.strokeLine(LEFT, floor() + 0.5, WIDTH - 8, floor() + 0.5);
        pen.setFill(palette.ink().deriveColor(0, 1, 1, 0.8));
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.TOP);
        for (double scale = FINEST; scale <= COARSEST; scale *= 2) {
            pen.fillText(
                    (scale == COARSEST ? Texts.of("panel.detail.scale", Numbers.plain(scale)) : Numbers.plain(scale)),
                    Math.min(x(scale), WIDTH - 16),
                    floor() + 4);
        }
        double blur = levels.map(DetailLevels::blurPx).orElse(1.0);
        double most = Math.max(2, Math.ceil(1 + sharpening.gain()));
        pen.setTextAlign(TextAlignment.RIGHT);
        pen.setTextBaseline(VPos.CENTER);
        for (int factor = 1; factor <= most; factor++) {
            pen.fillText("x" + factor, LEFT - 5, height(factor, most));
        }
        pen.setStroke(palette.accent());
        pen.setLineWidth(2);
        pen.beginPath();
        for (int i = 0; i <= 100; i++) {
            double scale = FINEST * Math.pow(COARSEST / FINEST, i / 100.0);
            double y = height(1 + sharpening.extraGain(scale, blur), most);
            if (i == 0) {
                pen.moveTo(x(scale), y);
            } else {
                pen.lineTo(x(scale), y);
            }
        }
        pen.stroke();
        pen.setFill(palette.warm());
        dot(pen, x(peakPx()), height(1 + sharpening.gain(), most));
        dot(pen, x(sidePx()), height(1 + sharpening.extraGain(sidePx(), blur), most));
    }

    private static void dot(GraphicsContext pen, double x, double y) {
        pen.fillOval(x - DOT_PX, y - DOT_PX, 2 * DOT_PX, 2 * DOT_PX);
    }

    private double blurPx() {
        return levels.map(DetailLevels::blurPx).orElse(1.0);
    }

    private double peakPx() {
        return sharpening.peakPx().orElse(Math.max(2, 2 * blurPx()));
    }

    /** A scale one width of the curve above its peak. */
    private double sidePx() {
        return peakPx() * Math.pow(2, sharpening.octaves());
    }

    private void pressed(MouseEvent e) {
        top = Math.max(2, Math.ceil(1 + sharpening.gain()));
        double toPeak = Math.hypot(e.getX() - x(peakPx()), e.getY() - height(1 + sharpening.gain(), top));
        double sideY = height(1 + sharpening.extraGain(sidePx(), blurPx()), top);
        double toSide = Math.hypot(e.getX() - x(sidePx()), e.getY() - sideY);
        atSide = toSide < toPeak;
        holding = Math.min(toPeak, toSide) < REACH_PX;
    }

    /** What the curve becomes if its handle is where the cursor is. */
    private Sharpening drawn(MouseEvent e) {
        double part = Math.max(0, Math.min(1, (e.getX() - LEFT) / (WIDTH - LEFT - 8)));
        double scale = FINEST * Math.pow(COARSEST / FINEST, part);
        if (atSide) {
            double octaves = Math.log(scale / peakPx()) / Math.log(2);
            return sharpening.with(Sharpening::octaves, hundredth(Math.max(0.3, Math.min(3, octaves))));
        }
        double gain = (top - 1) * (floor() - 10 - e.getY()) / (floor() - 22);
        return sharpening
                .with(Sharpening::gain, hundredth(Math.max(0, Math.min(3, gain))))
                .peakingAt(hundredth(Math.max(1, Math.min(24, scale))));
    }

    private static double hundredth(double value) {
        return Math.rint(100 * value) / 100;
    }

    private static double height(double factor, double most) {
        return floor() - 10 - (floor() - 22) * (factor - 1) / (most - 1);
    }

    private void bar(GraphicsContext pen, double x, double width, double strength, double opacity) {
        double part = Math.log(Math.max(FAINT, strength) / FAINT) / Math.log(STRONG / FAINT);
        double tall = Math.min(1, part) * (floor() - 12);
        pen.setFill(palette.faint().deriveColor(0, 1, 1, opacity));
        pen.fillRect(x, floor() - tall, width, tall);
    }
}
