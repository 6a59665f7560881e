package org.epochrome.session.product;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.epochrome.choice.Choice;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.finish.Look;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Plane;
import org.epochrome.io.file.OutputFolder;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.fits.FitsImage;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.OutputFormat;
import org.epochrome.io.write.PictureWriter;
import org.epochrome.map.GlobeMap;
import org.epochrome.map.MapGrid;
import org.epochrome.session.combine.Combination;
import org.epochrome.text.Message;

/**
 * A file with the combined globe as a map, shading taken off, with its coverage: FITS (linear, with world coordinates) or
 * PNG (finished, the coverage as opacity).
 *
 * @param file the format by the suffix
 * @param width pixels, even; empty for about the scale of the disk's middle
 * @param graticule whether a PNG has lines of longitude and latitude every 30 degrees
 */
public record MapFile(
        @Choice(option = "map") Path file,
        @Choice(key = "widthPx", option = "map-width") OptionalInt width,
        @Choice(option = "map-graticule") boolean graticule)
        implements ProductFile {
    private static final int LINES_DEG = 30;
    /** Part of the way to white on a line of the graticule. */
    private static final float LINE = 0.35f;

    private static final int WIDTH_STEP = 360;
    private static final int MOST_WIDTH = 14_400;
    private static final float WELL_SEEN = 0.5f;

    public MapFile {
        int wide = width.orElse(WIDTH_STEP);
        if (wide < 2 || wide % 2 != 0 || wide > MOST_WIDTH) {
            throw new IllegalArgumentException(Message.text("map.width", MOST_WIDTH, wide));
        }
    }

    /** A map without lines. */
    public MapFile(Path file, OptionalInt width) {
        this(file, width, false);
    }

    /** A map of the usual size. */
    public static MapFile usual(Path file) {
        return new MapFile(file, OptionalInt.empty(), false);
    }

    /**
     * Refuses what could not be written.
     *
     * @throws OutputRefused if the file exists and may not be replaced, or its suffix is neither .fits nor .png
     */
    @Override
    public void check(boolean overwrite) {
        OutputFormat format = OutputFormat.of(file);
        if (format != OutputFormat.FITS && format != OutputFormat.PNG) {
            throw new OutputRefused(file, Message.of("map.name"));
        }
        OutputFolder.checkFree(file, overwrite);
    }

    /**
     * Writes the map.
     *
     * @param look how pictures are finished
     * @param overwrite whether a file of this name may be replaced
     * @throws OutputRefused if it cannot be written
     */
    @Override
    public void write(Combination c, Look look, boolean overwrite, String version) {
        RotationSystem system =
                c.recipe().corrections().system().orElse(c.recipe().body().defaultSystem());
        GlobeMap map =
                GlobeMap.of(ShadingRemoval.surface(c), MapGrid.of(c.aspect(), system, width.orElseGet(() -> width(c))));
        OutputFolder.make(file);
        if (OutputFormat.of(file) == OutputFormat.FITS) {
            writeFits(c, map, system, version, overwrite);
        } else {
            PictureWriter.Caption caption = Provenance.caption(c, version);
            String longitudes = system == RotationSystem.SINGLE ? "longitude" : "longitude " + system.key();
            PictureWriter.write(
                    file,
                    ruled(finished(
                            map, Finishing.lookFor(c.recipe(), look), c.recipe().body())),
                    new PictureWriter.Form(Optional.of(map.coverage()), false),
                    new PictureWriter.Caption(
                            caption.description() + "; map of planetographic " + longitudes + ", latitude",
                            caption.shown(),
                            caption.software()),
                    overwrite);
        }
    }

    /** The longitude system of a combination's map. */
    public static RotationSystem system(Combination c) {
        return c.recipe().corrections().system().orElse(c.recipe().body().defaultSystem());
    }

    private static GlobeMap map(Combination c, int width) {
        return GlobeMap.of(ShadingRemoval.surface(c), MapGrid.of(c.aspect(), system(c), width));
    }

    /**
     * The finished map on white paper, to look at: what was not seen is left white.
     *
     * @param width pixels, even
     */
    public static List<Plane> onPaper(Combination c, Look look, int width) {
        GlobeMap map = map(c, width);
        List<Plane> planes =
                finished(map, Finishing.lookFor(c.recipe(), look), c.recipe().body());
        for (Plane plane : planes) {
            for (int i = 0; i < plane.data().length; i++) {
                float seen = map.coverage().data()[i];
                plane.data()[i] = seen * plane.data()[i] + 1 - seen;
            }
        }
        return planes;
    }

    /**
     * The finished map on black, to look at.
     *
     * @param width pixels, even
     */
    public static List<Plane> onBlack(Combination c, Look look, int width) {
        GlobeMap map = map(c, width);
        List<Plane> planes =
                finished(map, Finishing.lookFor(c.recipe(), look), c.recipe().body());
        for (Plane plane : planes) {
            for (int i = 0; i < plane.data().length; i++) {
                plane.data()[i] *= map.coverage().data()[i];
            }
        }
        return planes;
    }

    /** Planes with the lines of the graticule, if they are wanted. */
    private List<Plane> ruled(List<Plane> planes) {
        if (graticule) {
            for (Plane plane : planes) {
                for (int deg = 0; deg < 360; deg += LINES_DEG) {
                    int column = Math.min(plane.width() - 1, Math.round(plane.width() * deg / 360f));
                    int row = Math.round(plane.width() * deg / 360f);
                    for (int y = 0; y < plane.height(); y++) {
                        plane.set(column, y, plane.at(column, y) + LINE * (1 - plane.at(column, y)));
                    }
                    for (int x = 0; row < plane.height() && x < plane.width(); x++) {
                        plane.set(x, row, plane.at(x, row) + LINE * (1 - plane.at(x, row)));
                    }
                }
            }
        }
        return planes;
    }

    private static int width(Combination c) {
        int steps = (int) Math.ceil(2 * Math.PI * c.disk().equatorialRadiusPx() / WIDTH_STEP);
        return Math.min(MOST_WIDTH, WIDTH_STEP * steps);
    }

    private static List<Plane> finished(GlobeMap map, Look look, Body body) {
        Plane seen = map.coverage().copy();
        for (int i = 0; i < seen.data().length; i++) {
            seen.data()[i] = seen.data()[i] >= WELL_SEEN ? 1 : 0;
        }
        List<Plane> p = map.planes();
        return Finishing.finished(new ColourCube(p.get(0), p.get(1), p.get(2)), seen, body, look);
    }

    private void writeFits(Combination c, GlobeMap map, RotationSystem system, String version, boolean overwrite) {
        Provenance from = new Provenance(c, version);
        List<FitsCard> world = world(map.grid(), c.recipe().body(), system);
        List<FitsCard> cards = new ArrayList<>(from.common());
        cards.add(new FitsCard("BUNIT", "1", "linear, as if seen and lit from overhead"));
        cards.addAll(from.planes());
        cards.addAll(world);
        cards.addAll(from.aspect());
        List<String> history = new ArrayList<>(from.history());
        history.add("Shading of the fitted law removed; mapped at the epoch");
        FitsWriter.write(
                file,
                List.of(
                        new FitsImage("", map.planes(), cards, history),
                        new FitsImage("COVERAGE", List.of(map.coverage()), world, List.of()),
                        from.frames()),
                overwrite);
    }

    /**
     * World coordinates (Greisen & Calabretta 2002, A&A 395, 1061; Calabretta & Greisen 2002, A&A 395, 1077, section
     * 5.2.3: CAR with the reference point on the equator, where it is linear).
     */
    private static List<FitsCard> world(MapGrid grid, Body body, RotationSystem system) {
        String letters = body.mapLetters();
        return List.of(
                new FitsCard("WCSNAME", "PLANETOGRAPHIC", "IAU longitudes and latitudes"),
                new FitsCard("CTYPE1", letters + "LN-CAR", "planetographic longitude, plate carree"),
                new FitsCard("CRPIX1", 0.5 * (grid.width() + 1), ""),
                new FitsCard("CRVAL1", 180.0, ""),
                new FitsCard("CDELT1", grid.westward() ? -grid.stepDeg() : grid.stepDeg(), ""),
                new FitsCard("CUNIT1", "deg", ""),
                new FitsCard("CTYPE2", letters + "LT-CAR", "planetographic latitude, plate carree"),
                new FitsCard("CRPIX2", 0.5 * (grid.height() + 1), ""),
                new FitsCard("CRVAL2", 0.0, ""),
                new FitsCard("CDELT2", grid.stepDeg(), ""),
                new FitsCard("CUNIT2", "deg", ""),
                new FitsCard("LONGSYS", system.key(), "system of the longitudes"),
                new FitsCard("LONGDIR", grid.westward() ? "WEST" : "EAST", "direction of increasing longitude"),
                new FitsCard("A_RADIUS", 1000 * body.equatorialRadiusKm(), "[m] equatorial radius"),
                new FitsCard("B_RADIUS", 1000 * body.equatorialRadiusKm(), "[m] the other equatorial radius"),
                new FitsCard("C_RADIUS", 1000 * body.polarRadiusKm(), "[m] polar radius"));
    }
}
