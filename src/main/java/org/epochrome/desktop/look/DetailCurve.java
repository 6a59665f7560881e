package org.epochrome.desktop.look;


import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
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

    private final Canvas canvas = new Canvas(WIDTH, HEIGHT);
    private Palette palette = Palette.DARK;
    private Sharpening sharpening = Sharpening.DEFAULT;
    private Optional<DetailLevels> levels = Optional.empty();

    DetailCurve() {
        getChildren().add(canvas);
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
