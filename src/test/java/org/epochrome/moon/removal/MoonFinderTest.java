package org.epochrome.moon.removal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.epochrome.disk.Disk;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.GalileanMoons;
import org.epochrome.ephemeris.MoonPlace;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Wings;
import org.epochrome.job.Progress;
import org.epochrome.moon.FoundMoon;
import org.epochrome.moon.LimbZone;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonMask;
import org.epochrome.moon.PaintedFrame;
import org.epochrome.moon.SkyPoint;
import org.epochrome.turn.Rotation;
import org.junit.jupiter.api.Test;

/** The finder on painted frames: what moves is found, what turns is not, what ought to be there is missed. */
class MoonFinderTest {
    /** No moon stands near Jupiter. */
    private static final Instant QUIET = Instant.parse("2024-12-18T19:24:30Z");

    private static final Instant IO = Instant.parse("2024-12-26T21:25:00Z");
    private static final int[] MINUTES_APART = {-300, 20, 310};
    private static final double RADIUS = 0.045;

    private int[] seconds = MINUTES_APART;
    private Wings wings = Wings.NONE;
    private final List<PaintedFrame> painted = new ArrayList<>();

    /** Paints a frame of a body at some seconds from the epoch. */
    private interface Painter {
        void paint(PaintedFrame frame, double seconds);
    }

    private Moons found(Body body, Instant epoch, Painter painter) {
        return found(body, epoch, painter, Smear.NONE, Extent.NONE);
    }

    private Moons found(Body body, Instant epoch, Painter painter, Smear smear, Extent unsmeared) {
        return finder(body, epoch, painter, smear).find(body, epoch, unsmeared);
    }

    private MoonFinder finder(Body body, Instant epoch, Painter painter, Smear smear) {
        List<Rotation> rotations = new ArrayList<>();
        Aspect aspect = Ephemeris.aspect(body, epoch, Optional.empty());
        for (int i = 0; i < seconds.length; i++) {
            PaintedFrame frame = new PaintedFrame(
                    body,
                    epoch.plusSeconds(seconds[i]),
                    0.7 * i,
                    1 - 1.1 * i,
                    new Shading(0.95, 0, PaintedFrame.BLUR_PX, smear, wings));
            painter.paint(frame, seconds[i]);
            painted.add(frame.noisy(50 + i));
            rotations.add(Rotation.between(frame.frame().aspect(), aspect, body.defaultSystem()));
        }
        return new MoonFinder(
                painted.stream().map(PaintedFrame::frame).toList(),
                rotations,
                view(body, epoch),
                painted.stream().map(PaintedFrame::plane).toList(),
                Progress.NONE);
    }

    private static View view(Body body, Instant epoch) {
        double middle = 0.5 * PaintedFrame.SIDE;
        return new View(
                Globe.of(Ephemeris.aspect(body, epoch, Optional.empty())),
                new Disk(middle, middle, PaintedFrame.RADIUS_PX, 17, false));
    }

    private static SkyPoint course(double side, double pole, double sidePerH, double seconds) {
        return new SkyPoint(side + sidePerH * seconds / 3600, pole);
    }

    @Test
    void aMoonBesideAndAShadowBeforeTheDiskAreFoundByTheirMotion() {
        Moons moons = found(Body.JUPITER, QUIET, (frame, s) -> frame.moon(course(1.25, 0.1, 0.6, s), RADIUS, 0.5)
                .shadow(course(0.1, -0.4, 0.9, s), RADIUS, 0.0));
        View view = view(Body.JUPITER, QUIET);
        List<FoundMoon> list = moons.found(view, QUIET);
        assertEquals(2, list.size(), list.toString());
        for (FoundMoon m : list) {
            SkyPoint place = m.shadow() ? new SkyPoint(0.1, -0.4) : new SkyPoint(1.25, 0.1);
            assertEquals(m.shadow() ? FoundMoon.Where.IN_FRONT : FoundMoon.Where.BESIDE, m.where(), list.toString());
            assertEquals(view.column(place.pole(), place.side()), m.x(), 0.02);
            assertEquals(view.row(place.pole(), place.side()), m.y(), 0.02);
            assertEquals(RADIUS * PaintedFrame.RADIUS_PX, m.radiusPx(), 0.05 * m.radiusPx());
            assertEquals(Optional.empty(), m.name());
            assertEquals(3, m.frames().size());
        }
    }

    @Test
    void aMoonBesideTheDiskIsHiddenAndNothingElse() {
        Painter painter = (frame, s) ->
                frame.moon(course(1.25, 0.1, 0.6, s), RADIUS, 0.5).shadow(course(0.1, -0.4, 0.9, s), RADIUS, 0.0);
        MoonFinder finder = finder(Body.JUPITER, QUIET, painter, Smear.NONE);
        LimbZone zone = new LimbZone(12, 1.6);
        List<MoonFrame> frames = painted.stream().map(PaintedFrame::frame).toList();
        MoonMask mask = finder.mask(Body.JUPITER, QUIET, frames, zone);
        double moonPx = RADIUS * PaintedFrame.RADIUS_PX;
        for (int i = 0; i < frames.size(); i++) {
            SkyPoint place = course(1.25, 0.1, 0.6, MINUTES_APART[i]);
            double x = frames.get(i).x(place);
            double y = frames.get(i).y(place);
            Plane hidden = mask.hidden(i, painted.get(i).plane());
            for (int row = 0; row < hidden.height(); row++) {
                for (int column = 0; column < hidden.width(); column++) {
                    double distance = Math.hypot(column - x, row - y);
                    boolean lit = distance < moonPx + 2 * PaintedFrame.BLUR_PX;
                    boolean dark = distance > moonPx + 6 * PaintedFrame.BLUR_PX;
                    boolean gone = Float.isNaN(hidden.at(column, row));
                    assertFalse((lit && !gone) || (dark && gone), column + ", " + row + " of frame " + i);
                }
            }
        }
        Moons moons = finder.find(Body.JUPITER, QUIET, Extent.NONE);
        assertTrue(moons.standIn(zone, MoonMask.NONE));
        assertFalse(moons.standIn(zone, mask));
    }

    /** Sizes between the steps of the search, and up to Triton's. */
    @Test
    void anySizeIsRead() {
        double[] radii = {0.031, 0.055};
        Moons moons = found(Body.NEPTUNE, QUIET, (frame, s) -> frame.moon(course(1.25, 0.1, 0.2, s), radii[0], 0.5)
                .moon(course(-1.3, 0.1, -0.2, s), radii[1], 0.5));
        List<Double> sizes = moons.found(view(Body.NEPTUNE, QUIET), QUIET).stream()
                .map(m -> m.radiusPx() / PaintedFrame.RADIUS_PX)
                .sorted()
                .toList();
        assertEquals(2, sizes.size(), sizes.toString());
        assertEquals(radii[0], sizes.get(0), 0.03 * radii[0]);
        assertEquals(radii[1], sizes.get(1), 0.03 * radii[1]);
    }

    /** A dark spot on the equator, where the surface carries it. */
    @Test
    void aSpotOfTheSurfaceIsNone() {
        Moons moons = found(Body.JUPITER, QUIET, (frame, s) -> {
            // Jupiter's System III turns once in 9 h 55.5 min (IAU WGCCRE), on the sky towards growing side
            double angle = 0.2 + 2 * Math.PI * s / (9.925 * 3600);
            frame.shadow(new SkyPoint(Math.sin(angle), frame.frame().view().poleOf(Math.cos(angle), 0)), RADIUS, 0.3);
        });
        assertFalse(moons.any(), moons.found(view(Body.JUPITER, QUIET), QUIET).toString());
    }

    /**
     * White ovals go 4 degrees a day slower or faster than the winds of their latitude: some tens of metres a second. Through two
     * instants there is always a straight course.
     */
    @Test
    void aSpotThatDriftsAgainstTheWindsIsNone() {
        int[][] nights = {{-720, 720, 722}, {-9000, 0, 9000}, {-16500, -15900, 18900}, {-17640, 17640, 17642}};
        for (int[] night : nights) {
            seconds = night;
            painted.clear();
            Moons moons = found(Body.JUPITER, QUIET, (frame, s) -> {
                // System III as above, and a drift against it
                double turned = 2 * Math.PI * s / (9.925 * 3600) + Math.toRadians(4) * s / 86400;
                double angle = 0.3 + Math.IEEEremainder(turned, 2 * Math.PI);
                if (Math.cos(angle) > 0) {
                    SkyPoint place = new SkyPoint(0.9 * Math.sin(angle), -0.42);
                    frame.moon(place, RADIUS, 1.3);
                }
            });
            assertFalse(
                    moons.any(),
                    Arrays.toString(night)
                            + moons.found(view(Body.JUPITER, QUIET), QUIET).toString());
        }
    }

    /** With a fifth of the light in wings: a Gaussian spot left a ring of 3 per cent of the disk's light around it. */
    @Test
    void nothingIsLeftOfItsWings() {
        wings = Wings.of(
                new double[] {2.5 * PaintedFrame.BLUR_PX, 7 * PaintedFrame.BLUR_PX}, new double[] {0.12, 0.08});
        Moons moons = found(Body.JUPITER, QUIET, (frame, s) -> frame.shadow(course(0.1, -0.4, 0.9, s), RADIUS, 0.0));
        assertEquals(1, moons.found(view(Body.JUPITER, QUIET), QUIET).size());
        PaintedFrame frame = painted.get(0);
        Plane bare = new PaintedFrame(
                        Body.JUPITER,
                        frame.frame().mid(),
                        0,
                        1,
                        frame.frame().fit().shading())
                .plane();
        Plane without = moons.without(0, frame.plane());
        double most = 0;
        for (int i = 0; i < bare.data().length; i++) {
            most = Math.max(most, Math.abs(without.data()[i] - bare.data()[i]));
        }
        // five noises of 0.002
        assertTrue(most < 0.01, "left " + most);
    }

    @Test
    void aSpotThatStandsStillBeforeTheTurningGlobeIsAMoon() {
        Moons moons = found(Body.JUPITER, QUIET, (frame, s) -> frame.moon(new SkyPoint(0.2, 0.1), RADIUS, 0.2));
        assertTrue(moons.any());
    }

    @Test
    void marsHasNoneToLookFor() {
        Moons moons = found(Body.MARS, QUIET, (frame, s) -> frame.moon(course(1.25, 0.1, 0.6, s), RADIUS, 0.5));
        assertFalse(moons.any());
    }

    /** libastro has Io before the disk at that time, and the Sun 4 degrees from the Earth: its shadow lies 0.4 radii beside it. */
    @Test
    void aShadowThatOughtToBeThereIsMissed() {
        Moons moons = found(Body.JUPITER, IO, (frame, s) -> {});
        assertFalse(moons.any());
        assertTrue(
                moons.warnings().stream().anyMatch(w -> w.toString().startsWith("The shadow of Io was expected near")),
                moons.warnings().toString());
    }

    /** The first frame's edge cuts Io; in the others it stands beyond theirs. A little later markings may stand there as well. */
    @Test
    void aMoonThatTheEdgeOfOneFrameCutsIsNamedWhereTheTheoryHasIt() {
        assertEquals(
                Optional.of("Io"),
                atTheEdge(0).found(view(Body.JUPITER, IO), IO).get(0).name());
        assertFalse(atTheEdge(0.03).any());
    }

    private Moons atTheEdge(double off) {
        painted.clear();
        List<Rotation> rotations = new ArrayList<>();
        Aspect aspect = Ephemeris.aspect(Body.JUPITER, IO, Optional.empty());
        for (int i = 0; i < seconds.length; i++) {
            Instant mid = IO.plusSeconds(seconds[i]);
            MoonPlace io = GalileanMoons.at(mid).moons().get(0);
            double column =
                    new PaintedFrame(Body.JUPITER, mid, 0, 0).frame().view().column(io.pole(), io.side());
            PaintedFrame frame = new PaintedFrame(Body.JUPITER, mid, (i == 0 ? 1 : -9) - column, 0);
            painted.add(frame.moon(new SkyPoint(io.side(), io.pole() + off), 0.0255, 1.3)
                    .noisy(70 + i));
            rotations.add(Rotation.between(frame.frame().aspect(), aspect, Body.JUPITER.defaultSystem()));
        }
        return new MoonFinder(
                        painted.stream().map(PaintedFrame::frame).toList(),
                        rotations,
                        view(Body.JUPITER, IO),
                        painted.stream().map(PaintedFrame::plane).toList(),
                        Progress.NONE)
                .find(Body.JUPITER, IO, Extent.NONE);
    }

    /** Of a band that shows it nowhere the picture would lack it: then none has it, and a sentence says so. */
    @Test
    void itIsLaidOnAllBandsOrNone() {
        Moons moons = found(Body.JUPITER, QUIET, (frame, s) -> frame.moon(course(0.3, 0.2, 0.9, s), RADIUS, 0.25));
        View view = view(Body.JUPITER, QUIET);
        int side = PaintedFrame.SIDE;
        assertTrue(moons.inAll(List.of(List.of(0), List.of(1, 2)))
                .leftOut(view, QUIET, side, side)
                .isEmpty());
        Moons none = moons.inAll(List.of(List.of(0, 1, 2), List.of()));
        assertEquals(1, none.leftOut(view, QUIET, side, side).size());
        assertEquals(1, none.notes(0, QUIET).size());
        Plane picture = new Plane(side, side);
        none.lay(0, picture, 0, view, QUIET, painted.get(0).frame().fit().disk(), PaintedFrame.BRIGHTNESS);
        for (float value : picture.data()) {
            assertEquals(0, value);
        }
    }

    /** Taken out, nothing is left of it; laid on a picture at the epoch, it hides what is there. */
    @Test
    void itIsTakenOutAndLaidWhereItStandsAtTheEpoch() {
        SkyPoint there = new SkyPoint(0.3, 0.2);
        Moons moons = found(Body.JUPITER, QUIET, (frame, s) -> frame.moon(course(0.3, 0.2, 0.9, s), RADIUS, 0.25));
        assertEquals(1, moons.found(view(Body.JUPITER, QUIET), QUIET).size());
        int early = 0;
        PaintedFrame frame = painted.get(early);
        Plane bare = new PaintedFrame(Body.JUPITER, frame.frame().mid(), 0, 1).plane();
        Plane without = moons.without(early, frame.plane());
        double most = 0;
        for (int i = 0; i < bare.data().length; i++) {
            most = Math.max(most, Math.abs(without.data()[i] - bare.data()[i]));
        }
        // five noises
        assertTrue(most < 0.01, "left " + most);

        View view = view(Body.JUPITER, QUIET);
        int x = (int) Math.round(view.column(there.pole(), there.side()));
        int y = (int) Math.round(view.row(there.pole(), there.side()));
        float[] grounds = {0.4f, 1.2f};
        double[] laid = new double[2];
        for (int k = 0; k < 2; k++) {
            Plane picture = new Plane(PaintedFrame.SIDE, PaintedFrame.SIDE);
            Arrays.fill(picture.data(), grounds[k]);
            moons.lay(early, picture, 0, view, QUIET, frame.frame().fit().disk(), PaintedFrame.BRIGHTNESS);
            laid[k] = picture.at(x, y);
            assertEquals(grounds[k], picture.at(x + 12, y), 1e-5);
        }
        double seen = (laid[1] - laid[0]) / (grounds[1] - grounds[0]);
        // 1 - exp(-r^2 / 2 s^2) in the very middle of a blurred disk of 2.7 pixels; the pixel lies up to 0.7 off it
        assertEquals(0.07, seen, 0.03);
        assertEquals(0.25, (laid[0] - seen * grounds[0]) / (1 - seen), 0.01);
    }

    /** Drawn out to the right by three copies 1.2 pixels apart: their variance goes, if it is asked for, and else stays. */
    @Test
    void whatDispersionDrawsOutIsTakenOffTheMoonToo() {
        Smear smear = Smear.along(90, -1.2, 0, 1.2);
        double[] wide = new double[2];
        for (int k = 0; k < 2; k++) {
            painted.clear();
            Moons moons = found(
                    Body.JUPITER,
                    QUIET,
                    (frame, s) -> frame.moon(course(1.3, 0, 0.6, s), RADIUS, 0.5),
                    smear,
                    k == 1 ? Extent.ALL : Extent.NONE);
            Plane picture = new Plane(PaintedFrame.SIDE, PaintedFrame.SIDE);
            PaintedFrame frame = painted.get(1);
            View view = view(Body.JUPITER, QUIET);
            moons.lay(1, picture, 0, view, QUIET, frame.frame().fit().disk(), PaintedFrame.BRIGHTNESS);
            wide[k] = variance(picture, view.column(0, 1.3), false) - variance(picture, view.row(0, 1.3), true);
        }
        assertEquals(2 * 1.2 * 1.2 / 3, wide[0], 0.1);
        assertEquals(0, wide[1], 0.1);
    }

    /** Variance of a picture's light about a column or row, pixels squared. */
    private static double variance(Plane picture, double middle, boolean down) {
        double sum = 0;
        double squares = 0;
        for (int y = 0; y < picture.height(); y++) {
            for (int x = 0; x < picture.width(); x++) {
                double off = (down ? y : x) - middle;
                sum += picture.at(x, y);
                squares += picture.at(x, y) * off * off;
            }
        }
        return squares / sum;
    }
}
