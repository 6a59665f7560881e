package org.epochrome.desktop.look;

import java.util.List;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import org.epochrome.desktop.render.Levels;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;

/** How often each level occurs in red, green and blue, on a logarithmic scale. */
final class Histogram extends Region {
    private static final double WIDTH = 300;
    private static final double HEIGHT = 96;

    private final Canvas canvas = new Canvas(WIDTH, HEIGHT);
    private Palette palette = Palette.DARK;
    private List<int[]> counts = List.of();

    Histogram() {
        setId("histogram");
        setAccessibleText(Texts.of("panel.colour.histogram"));
        getChildren().add(canvas);
        setMinSize(WIDTH, HEIGHT);
        setMaxSize(WIDTH, HEIGHT);
    }

    void setPalette(Palette next) {
        palette = next;
        paint();
    }

    void show(Levels levels, boolean linear) {
        counts = linear ? levels.linear() : levels.display();
        paint();
    }

    private void paint() {
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.clearRect(0, 0, WIDTH, HEIGHT);
        pen.setStroke(palette.faint());
        pen.strokeRect(0.5, 0.5, WIDTH - 1, HEIGHT - 1);
        double most = 1;
        for (int[] channel : counts) {
            for (int n : channel) {
                most = Math.max(most, Math.log1p(n));
            }
        }
        Color[] colours = palette.equals(Palette.RED)
                ? new Color[] {palette.accent(), palette.ink(), palette.warm()}
                : new Color[] {Color.web("#ff5a50"), Color.web("#3fbf5f"), Color.web("#5a8cff")};
        for (int c = 0; c < counts.size(); c++) {
            int[] channel = counts.get(c);
            pen.setStroke(colours[c]);
            pen.beginPath();
            for (int i = 0; i < channel.length; i++) {
                double x = WIDTH * (i + 0.5) / channel.length;
                double y = HEIGHT - 2 - (HEIGHT - 6) * Math.log1p(channel[i]) / most;
                if (i == 0) {
                    pen.moveTo(x, y);
                } else {
                    pen.lineTo(x, y);
                }
            }
            pen.stroke();
        }
    }
}
