package org.epochrome.desktop.look;

import java.util.Optional;
import java.util.function.Consumer;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Gains;
import org.epochrome.image.Plane;

/** Hands the next place that is clicked on the picture to whoever asked for it. */
public final class PixelPicker {
    /** Pixels on each side of a place whose mean is taken. */
    private static final int REACH_PX = 2;

    private Optional<Consumer<double[]>> waiting = Optional.empty();
    private Optional<Consumer<double[]>> area = Optional.empty();

    /** Asks for the next place. */
    public void ask(Consumer<double[]> taken) {
        waiting = Optional.of(taken);
    }

    /** Asks for the next rectangle that is drawn: its left, upper, right and lower edge, pixels of the picture. */
    public void askArea(Consumer<double[]> taken) {
        area = Optional.of(taken);
    }

    /** Whether the next drag is for somebody. */
    public boolean isWaitingForArea() {
        return area.isPresent();
    }

    /** Hands over a rectangle between two places, pixels of the picture. */
    public void drawn(double[] from, double[] to) {
        Optional<Consumer<double[]>> taker = area;
        area = Optional.empty();
        taker.ifPresent(t -> t.accept(new double[] {
            Math.min(from[0], to[0]), Math.min(from[1], to[1]), Math.max(from[0], to[0]), Math.max(from[1], to[1])
        }));
    }

    public void cancel() {
        waiting = Optional.empty();
        area = Optional.empty();
    }

    /** Whether the next click is for somebody. */
    public boolean isWaiting() {
        return waiting.isPresent();
    }

    /** Hands over a place, pixels of the picture. */
    public void picked(double[] pixel) {
        Optional<Consumer<double[]>> taker = waiting;
        waiting = Optional.empty();
        taker.ifPresent(t -> t.accept(pixel));
    }

    /** Gains that make a place of a linear cube white or grey; empty where there is no light. */
    static Optional<Gains> white(ColourCube cube, double[] pixel) {
        double red = mean(cube.red(), pixel);
        double green = mean(cube.green(), pixel);
        double blue = mean(cube.blue(), pixel);
        return red > 0 && green > 0 && blue > 0
                ? Optional.of(new Gains(rounded(green / red), 1, rounded(green / blue)))
                : Optional.empty();
    }

    private static double rounded(double gain) {
        return Math.rint(1e4 * gain) / 1e4;
    }

    private static double mean(Plane plane, double[] pixel) {
        int column = (int) Math.rint(pixel[0]);
        int row = (int) Math.rint(pixel[1]);
        double sum = 0;
        int count = 0;
        for (int y = Math.max(0, row - REACH_PX); y <= Math.min(plane.height() - 1, row + REACH_PX); y++) {
            for (int x = Math.max(0, column - REACH_PX); x <= Math.min(plane.width() - 1, column + REACH_PX); x++) {
                if (!Float.isNaN(plane.at(x, y))) {
                    sum += plane.at(x, y);
                    count++;
                }
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }
}
