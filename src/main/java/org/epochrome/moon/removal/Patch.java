package org.epochrome.moon.removal;

import java.time.Instant;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.RoundSpot;
import org.epochrome.image.blur.Spline;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.SpotFit;
import org.epochrome.moon.fit.MoonField;
import org.epochrome.moon.fit.MoonFit;

/**
 * What a companion does to a frame in a window of it: what it adds to the light or takes from it, the ground it veils, and its own
 * light. The ground below it is the fitted smooth one where the companion covers it, and the frame's own light less the
 * companion's where it hardly does: whichever is better known. What is drawn into the picture of another instant covers what lies
 * there then, and is as it would be without motion during the recording: round.
 */
final class Patch {
    /** How well light at a companion's rim is known by its even, blurred disk, as a part of its contrast. */
    private static final double MODEL_ERROR = 0.05;
    /** How well that light is known for use in other frames, as a part of its contrast: there an error is smeared into another band. */
    private static final double TOLD_ERROR = 0.3;
    /** A pixel that is covered to this extent does not show the ground. */
    private static final double HIDDEN = 0.7;
    /** Less of a pixel than this does not show the ground. */
    private static final double LEAST_FREE = 0.05;

    private static final double NOTHING = 1e-4;

    private final MoonFrame frame;
    private final int left;
    private final int top;
    private final Plane difference;
    /** What the ground's own light is more than what is left without the companion, and the error of that. */
    private final Plane bare;

    private final Plane doubt;
    private final Spline veil;
    private final Spline own;

    private Patch(
            MoonFrame frame, int left, int top, Plane difference, Plane bare, Plane doubt, Plane veil, Plane own) {
        this.frame = frame;
        this.left = left;
        this.top = top;
        this.difference = difference;
        this.bare = bare;
        this.doubt = doubt;
        this.veil = new Spline(veil);
        this.own = new Spline(own);
    }

    /**
     * The patch of a companion where a fit on its course sees it.
     *
     * @param epoch instant for which it is drawn
     * @param unsmeared how much of the dispersion blur is removed from it
     */
    static Patch of(
            MoonField field,
            MoonOrShadow companion,
            MoonFit fit,
            SpotFit held,
            Instant epoch,
            DispersionDeconvolution.Extent unsmeared) {
        MoonFrame frame = field.frame();
        double x0 = frame.x(held.place());
        double y0 = frame.y(held.place());
        double reach = frame.spot(companion).reachPx() + 2;
        int left = (int) Math.max(0, Math.floor(x0 - reach));
        int top = (int) Math.max(0, Math.floor(y0 - reach));
        int width = (int) Math.min(field.light().width() - 1, Math.ceil(x0 + reach)) - left + 1;
        int height = (int) Math.min(field.light().height() - 1, Math.ceil(y0 + reach)) - top + 1;
        Plane difference = new Plane(width, height);
        Plane bare = new Plane(width, height);
        Plane doubt = new Plane(width, height);
        Plane veil = new Plane(width, height);
        Plane own = new Plane(width, height);
        RoundSpot still = frame.still(companion, epoch, unsmeared);
        double rest = fit.rest(held);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double cover = fit.cover(left + x, top + y, held.place());
                float light = field.light().at(left + x, top + y);
                if (cover > NOTHING && !Float.isNaN(light)) {
                    double ground = fit.ground(held.coefficients(), left + x, top + y);
                    double level =
                            companion.shadow() ? held.level() * field.even().at(left + x, top + y) : held.level();
                    double free = Math.max(LEAST_FREE, 1 - cover);
                    double seen = (light - cover * level) / free;
                    double off = Math.abs(level - ground) * cover / free;
                    float known = field.rough().at(left + x, top + y);
                    double rough = Float.isNaN(known) ? rest : known;
                    double trust = MODEL_ERROR * off / Math.hypot(MODEL_ERROR * off, rough);
                    double without = seen + trust * trust * (ground - seen);
                    boolean hidden = cover > HIDDEN;
                    bare.set(x, y, hidden ? 0 : (float) (seen - without));
                    doubt.set(x, y, hidden ? SurfaceSighting.NOTHING : (float) (TOLD_ERROR * off));
                    double change = light - without;
                    double round = fit.cover(still, left + x, top + y, held.place());
                    difference.set(x, y, (float) change);
                    veil.set(x, y, (float) (companion.shadow() ? round * (1 - held.level()) : round));
                    own.set(x, y, (float)
                            (companion.shadow() ? 0 : change + cover * without + (round - cover) * level));
                }
            }
        }
        return new Patch(frame, left, top, difference, bare, doubt, veil, own);
    }

    /** Takes it out of a picture of the frame's pixels, or puts it back. */
    void add(Plane picture, double factor) {
        for (int y = 0; y < difference.height(); y++) {
            for (int x = 0; x < difference.width(); x++) {
                int i = (top + y) * picture.width() + left + x;
                picture.data()[i] += (float) (factor * difference.at(x, y));
            }
        }
    }

    /** Leaves a picture of the frame's pixels without data where it changes the light. */
    void hide(Plane picture) {
        for (int y = 0; y < difference.height(); y++) {
            for (int x = 0; x < difference.width(); x++) {
                if (difference.at(x, y) != 0) {
                    picture.set(left + x, top + y, Float.NaN);
                }
            }
        }
    }

    /**
     * Changes what is left without it to the ground's own light, however badly known.
     *
     * @param error standard error of the light, made larger
     */
    void bare(Plane without, Plane error) {
        for (int y = 0; y < bare.height(); y++) {
            for (int x = 0; x < bare.width(); x++) {
                int i = (top + y) * without.width() + left + x;
                without.data()[i] += bare.at(x, y);
                error.data()[i] = (float) Math.hypot(error.data()[i], doubt.at(x, y));
            }
        }
    }

    /**
     * Lays the companion where it stands at another instant.
     *
     * @param picture brightness above the sky, 1 for {@code unit} of the even globe's brightest part; some rows of the output
     * @param topRow number of the first row
     * @param to the globe at that instant on the output's pixels
     * @param from the frame's disk as it was placed in the end
     * @param moved how far the companion moves from the frame's middle to that instant
     */
    void lay(Plane picture, int topRow, View to, View from, SkyPoint moved, double unit) {
        double middleX = left + 0.5 * difference.width();
        double middleY = top + 0.5 * difference.height();
        SkyPoint middle = new SkyPoint(from.side(middleX, middleY), from.pole(middleX, middleY)).plus(moved);
        double scale = to.disk().equatorialRadiusPx() / from.disk().equatorialRadiusPx();
        double reach = 1 + scale * 0.5 * Math.hypot(difference.width(), difference.height());
        double column = to.column(middle.pole(), middle.side());
        double row = to.row(middle.pole(), middle.side()) - topRow;
        for (int y = low(row - reach); y <= high(row + reach, picture.height()); y++) {
            for (int x = low(column - reach); x <= high(column + reach, picture.width()); x++) {
                double pole = to.pole(x, y + topRow) - moved.pole();
                double side = to.side(x, y + topRow) - moved.side();
                double there = from.column(pole, side) - left;
                double down = from.row(pole, side) - top;
                if (veil.contains(there, down)) {
                    float below = picture.at(x, y) * (1 - veil.at(there, down));
                    picture.set(x, y, below + (float) (own.at(there, down) / unit));
                }
            }
        }
    }

    MoonFrame frame() {
        return frame;
    }

    private static int low(double value) {
        return (int) Math.max(0, Math.floor(value));
    }

    private static int high(double value, int size) {
        return (int) Math.min(size - 1, Math.ceil(value));
    }
}
