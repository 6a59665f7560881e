package org.epochrome.session.product;

import java.util.Comparator;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Gains;
import org.epochrome.colour.finish.BandLight;
import org.epochrome.colour.finish.Finish;
import org.epochrome.colour.finish.Framed;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpener;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Rows;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.AtmosphericDispersion;

/** From a combination to the finished picture: the linear cube stays as it is. */
public final class Finishing {
    private static final double DISK_PART = 0.97;
    private static final double LIT = 0.15;

    private Finishing() {}

    /** A look as it holds for the bands that a recipe shows in red, green and blue. */
    public static Look lookFor(Recipe recipe, Look look) {
        return recipe.assignment().showsNaturalColours() ? look : look.onOtherBands();
    }

    /** The finished picture: display-encoded red, green and blue, and where its disk lies. */
    public static Framed picture(Combination c, Look wanted) {
        Look look = lookFor(c.recipe(), wanted);
        View view = new View(Globe.of(c.aspect()), c.disk());
        List<Plane> shown = asShot(
                c.seen(),
                view,
                c.recipe().body(),
                bands(c),
                AtmosphericDispersion.arcsecPerPx(c.aspect(), c.disk()),
                look);
        if (look.framing().equals(Framing.AS_SHOT)) {
            return new Framed(shown, c.disk());
        }
        Legend legend = Legend.of(
                c.recipe().body(), c.epoch(), c.aspect(), c.frames().stream().map(f -> f.exposure()
                        .band()));
        return framed(shown, view, look.framing(), legend);
    }

    /**
     * A linear picture of something else than the disk as it was seen, in the same colours and tone.
     *
     * @param disk 1 where colour and exposure are measured, 0 elsewhere
     */
    static List<Plane> finished(ColourCube cube, Plane disk, Body body, Look look) {
        ColourCube balanced = Finish.balanced(cube, disk, body, look.white());
        return Finish.shown(balanced, Finish.brightest(balanced, disk), look.tone(), look.grading());
    }

    /**
     * The finished picture on the pixels of its cube, whatever the framing.
     *
     * @param view the globe as it stands in the cube
     * @param bands how light falls off in red, green and blue
     * @param arcsecPerPx plate scale of the cube
     */
    public static List<Plane> asShot(
            ColourCube cube, View view, Body body, List<BandLight> bands, double arcsecPerPx, Look look) {
        return asShot(cube, view, litDisk(view, cube.width(), cube.height()), body, bands, arcsecPerPx, look);
    }

    /**
     * The finished picture on the pixels of its cube, whatever the framing, with a disk computed before.
     *
     * @param disk what {@link #litDisk} gives
     */
    public static List<Plane> asShot(
            ColourCube cube, View view, Plane disk, Body body, List<BandLight> bands, double arcsecPerPx, Look look) {
        ColourCube balanced = Finish.balanced(cube, disk, body, look.white());
        ColourCube crisp =
                Sharpener.sharpened(balanced, view, bands, look.sharpening().onPixels(arcsecPerPx));
        return Finish.shown(crisp, Finish.brightest(crisp, disk), look.tone(), look.grading());
    }

    /** What its white balance multiplies red, green and blue by, green 1. */
    public static Gains gains(Combination c, Look look) {
        View view = new View(Globe.of(c.aspect()), c.disk());
        Plane disk = litDisk(view, c.cube().width(), c.cube().height());
        return Finish.gains(
                c.seen(), disk, c.recipe().body(), lookFor(c.recipe(), look).white());
    }

    /**
     * A finished picture within the edges that it is saved with.
     *
     * @param shown display-encoded
     * @param view the globe as it stands in it
     * @param legend what the caption says, if one is wanted
     */
    public static Framed framed(List<Plane> shown, View view, Framing framing, Legend legend) {
        Globe globe = view.globe();
        Disk disk = view.disk();
        if (!framing.caption()) {
            return Framed.of(shown, globe, disk, framing, 0);
        }
        int width = Framed.widthPx(shown.get(0), globe, disk, framing);
        Legend whole = legend.and(framing.captionText());
        Framed above = Framed.of(shown, globe, disk, framing, whole.heightPx(width));
        return new Framed(whole.below(above.planes()), above.disk());
    }

    /** How light falls off in red, green and blue: as in the frame that weighs most of each band, or else of all. */
    public static List<BandLight> bands(Combination c) {
        Comparator<FrameResult> weight = Comparator.comparingDouble(FrameResult::weight);
        return c.recipe().assignment().colours().stream()
                .map(band -> c.frames().stream()
                        .filter(f -> f.exposure().band().name().equals(band))
                        .max(weight)
                        .or(() -> c.frames().stream().max(weight))
                        .orElseThrow())
                .map(f -> new BandLight(
                        f.limb().shading().carried(f.limb().disk(), c.disk()),
                        f.limb().rings()))
                .toList();
    }

    /** 1 on the lit part of the disk at the epoch. */
    public static Plane litDisk(View view, int width, int height) {
        Plane shade = new Shading(1, 1, Smear.NONE).picture(view, width, height);
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    boolean lit =
                            shade.at(x, y) > LIT && view.ellipticRadius(view.pole(x, y), view.side(x, y)) < DISK_PART;
                    shade.set(x, y, lit ? 1 : 0);
                }
            }
        });
        return shade;
    }
}
