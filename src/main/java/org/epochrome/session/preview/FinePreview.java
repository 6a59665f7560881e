package org.epochrome.session.preview;

import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Gains;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.BandLight;
import org.epochrome.colour.finish.Finish;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpener;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.Finishing;
import org.epochrome.session.schedule.AtmosphericDispersion;

/**
 * Parts of the finished picture at full resolution while its look is changed. It is exposed as the look that it was made for;
 * near the edges of a part, and in the strength of the noise, the sharpening differs a little from that of the whole picture.
 * Used by one thread at a time.
 */
public final class FinePreview {
    /** Pixels around a part that its sharpening sees. */
    private static final int MARGIN_PX = 32;

    private final Combination combination;
    private final ColourCube seen;
    private final View view;
    private final Plane disk;
    private final List<BandLight> bands;
    private final double arcsecPerPx;
    private final Crisp whole;
    private final double[] brightest;
    private Crisp last;

    /** Balanced and sharpened pixels of a part, and what they depend on. */
    private record Crisp(Region part, WhiteBalance white, Sharpening sharpening, Gains gains, ColourCube cube) {
        boolean suits(Region wanted, Look look) {
            return white.equals(look.white())
                    && sharpening.equals(look.sharpening())
                    && part.left() <= wanted.left()
                    && part.top() <= wanted.top()
                    && part.left() + part.width() >= wanted.left() + wanted.width()
                    && part.top() + part.height() >= wanted.top() + wanted.height();
        }

        ColourCube of(Region wanted) {
            Region inside =
                    new Region(wanted.left() - part.left(), wanted.top() - part.top(), wanted.width(), wanted.height());
            return cut(cube, inside);
        }
    }

    /** Finishes the whole picture once, by which parts are exposed. */
    public FinePreview(Combination c, Look wanted) {
        combination = c;
        Look look = Finishing.lookFor(c.recipe(), wanted);
        seen = c.seen();
        view = new View(Globe.of(c.aspect()), c.disk());
        disk = Finishing.litDisk(view, seen.width(), seen.height());
        bands = Finishing.bands(c);
        arcsecPerPx = AtmosphericDispersion.arcsecPerPx(c.aspect(), c.disk());
        Region all = new Region(0, 0, seen.width(), seen.height());
        whole = crisp(all, all, look, gains(look));
        brightest = Finish.brightest(whole.cube, disk);
        last = whole;
    }

    /** The combination that it shows. */
    public Combination combination() {
        return combination;
    }

    /**
     * A part of the finished picture: display-encoded red, green and blue.
     *
     * @param part within the picture
     */
    public List<Plane> part(Region part, Look wanted) {
        Look look = Finishing.lookFor(combination.recipe(), wanted);
        Crisp crisp = whole.suits(part, look) ? whole : last.suits(part, look) ? last : made(part, look);
        last = crisp;
        double[] exposing = {
            brightest[0] * crisp.gains.red() / whole.gains.red(),
            brightest[1] * crisp.gains.green() / whole.gains.green(),
            brightest[2] * crisp.gains.blue() / whole.gains.blue()
        };
        return Finish.shown(crisp.of(part), exposing, look.tone(), look.grading());
    }

    private Crisp made(Region part, Look look) {
        Region around = Region.between(
                part.left() - MARGIN_PX,
                part.top() - MARGIN_PX,
                part.left() + part.width() - 1 + MARGIN_PX,
                part.top() + part.height() - 1 + MARGIN_PX,
                seen.width(),
                seen.height());
        Gains gains = look.white().equals(last.white) ? last.gains : gains(look);
        return crisp(around, part, look, gains);
    }

    private Gains gains(Look look) {
        return Finish.gains(seen, disk, combination.recipe().body(), look.white());
    }

    private Crisp crisp(Region around, Region part, Look look, Gains gains) {
        ColourCube balanced = gains.on(cut(seen, around));
        ColourCube sharp = Sharpener.sharpened(
                balanced, view.on(around), bands, look.sharpening().onPixels(arcsecPerPx));
        Region inside = new Region(part.left() - around.left(), part.top() - around.top(), part.width(), part.height());
        return new Crisp(part, look.white(), look.sharpening(), gains, cut(sharp, inside));
    }

    private static ColourCube cut(ColourCube cube, Region part) {
        return new ColourCube(part.of(cube.red()), part.of(cube.green()), part.of(cube.blue()));
    }
}
