package org.epochrome.desktop.render;

import java.time.Instant;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.finish.Framed;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Quicklook;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.evidence.FringePicture;
import org.epochrome.evidence.LimbStrip;
import org.epochrome.evidence.PlainStack;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.preview.Preview;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.TurningFile;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.report.Outputs;

/** Makes pictures for the screen; runs in the background. */
final class Pictures {
    private static final int MAP_PX = 1440;
    private static final int STRIP_COLUMNS = 1080;
    private static final int STRIP_ROWS = 720;
    private static final double STRIP_REACH_PX = 7;

    private Pictures() {}

    /** A quick picture of the epoch that a recipe asks for. */
    static ScreenPicture quick(
            Preview preview, Recipe recipe, Look look, Display display, Preview.Care care, Progress progress) {
        Preview.Picture p = preview.picture(recipe, look, care, progress);
        Disk disk = p.disk().unbinned(p.factor());
        if (display == Display.STRIP) {
            return strip(p.cube(), new View(Globe.of(p.aspect()), p.disk()), p.factor(), disk, p.epoch(), p.aspect());
        }
        if (display == Display.SAVED) {
            Framed framed = p.framed(look.framing());
            return ScreenPicture.of(framed.planes(), 1, framed.disk(), p.aspect(), p.epoch())
                    .framed();
        }
        List<Plane> planes = display == Display.FINISHED ? p.planes() : plain(p.cube(), p.disk(), p.aspect(), display);
        return ScreenPicture.of(planes, p.factor(), disk, p.aspect(), p.epoch());
    }

    /** The picture at full resolution. */
    static ScreenPicture full(Combination c, Look look, Display display) {
        if (display == Display.STRIP) {
            return strip(c.cube(), new View(Globe.of(c.aspect()), c.disk()), 1, c.disk(), c.epoch(), c.aspect());
        }
        if (display == Display.MAP) {
            return ScreenPicture.of(MapFile.onBlack(c, look, MAP_PX), 1, c.disk(), c.aspect(), c.epoch())
                    .mapped();
        }
        if (display == Display.SAVED) {
            Framed framed = outputs(look).framed(c);
            return ScreenPicture.of(framed.planes(), 1, framed.disk(), c.aspect(), c.epoch())
                    .framed();
        }
        List<Plane> planes = display == Display.FINISHED || display == Display.TURNING
                ? outputs(look).pictureAsShot(c)
                : plain(c.cube(), c.disk(), c.aspect(), display);
        return ScreenPicture.of(planes, 1, c.disk(), c.aspect(), c.epoch());
    }

    private static ScreenPicture strip(
            ColourCube cube, View view, int factor, Disk disk, Instant epoch, Aspect aspect) {
        LimbStrip own = new LimbStrip(STRIP_COLUMNS, STRIP_ROWS, STRIP_REACH_PX / factor);
        return ScreenPicture.of(own.picture(cube, view), 1, disk, aspect, epoch)
                .unrolled(new LimbStrip(STRIP_COLUMNS, STRIP_ROWS, STRIP_REACH_PX));
    }

    /** The simple stack of the frames. */
    static ScreenPicture before(Combination c, Look look) {
        Combination plain = c.withCube(PlainStack.of(c));
        return ScreenPicture.of(outputs(look).pictureAsShot(plain), 1, c.disk(), c.aspect(), c.epoch());
    }

    /** A frame as it was shot, in grey. */
    static ScreenPicture frame(Exposure exposure, Disk disk, Display display) {
        List<Plane> planes = List.of(exposure.load());
        Instant mid = exposure.mid();
        return ScreenPicture.of(
                display == Display.STRETCHED ? Quicklook.stretched(planes) : Quicklook.linear(planes),
                1,
                disk,
                exposure.aspect(),
                mid);
    }

    private static List<Plane> plain(ColourCube cube, Disk disk, Aspect aspect, Display display) {
        return switch (display) {
            case FINISHED, SAVED, STRIP, MAP, TURNING ->
                throw new IllegalArgumentException("It is made in another way.");
            case LINEAR -> Quicklook.linear(cube.planes());
            case STRETCHED -> Quicklook.stretched(cube.planes());
            case RED -> Quicklook.linear(List.of(cube.red()));
            case GREEN -> Quicklook.linear(List.of(cube.green()));
            case BLUE -> Quicklook.linear(List.of(cube.blue()));
            case FRINGES -> FringePicture.of(cube, new View(Globe.of(aspect), disk));
        };
    }

    /** The turning globe, as in the animation. */
    static List<ScreenPicture> turning(Combination c, Look look) {
        return TurningFile.pictures(c, look).stream()
                .map(planes -> ScreenPicture.of(planes, 1, c.disk(), c.aspect(), c.epoch())
                        .mapped())
                .toList();
    }

    private static Outputs outputs(Look look) {
        return new Outputs(List.of(), java.util.Optional.empty(), look, false, true);
    }
}
