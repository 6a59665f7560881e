package org.epochrome.session.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FitErrors;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.epochrome.session.InventedNight;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.WorkingFrames;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Fits that went astray, against the true disks of the demo's ray caster. */
class DiskRecoveryTest {
    private static final List<Shot> SHOTS = List.of(
            InventedNight.shot(Band.R, -100, InventedNight.camera(), 100, 1),
            InventedNight.shot(Band.G, 5, InventedNight.camera().offsetBy(2.4, 1.1), 100, 2));

    /** How far off a centre may be at a signal to noise of 100. Measured: 0.006 px. */
    private static final double FOUND_PX = 0.02;

    @TempDir
    private static Path folder;

    private static Schedule schedule;
    private static final List<Plane> PLANES = new ArrayList<>();
    private static final List<TrueDisk> TRUTHS = new ArrayList<>();
    private static FittedDisk red;

    @BeforeAll
    static void photograph() {
        InventedNight night = new InventedNight(folder);
        for (Shot shot : SHOTS) {
            night.add(shot.band().name() + ".fits", shot);
            TRUTHS.add(night.scene().disk(shot));
        }
        schedule = Schedule.of(night.recipe());
        schedule.exposures().forEach(e -> PLANES.add(e.load()));
        red = fit(0).fit(PLANES.get(0), Progress.NONE);
    }

    private static DiskFit fit(int index) {
        return new DiskFit(
                schedule.exposures().get(index).globe(),
                true,
                false,
                Smear.NONE,
                OptionalDouble.of(InventedNight.NORTH),
                OptionalDouble.empty());
    }

    private static List<FittedDisk> recovered(List<Plane> planes, FittedDisk green) {
        WorkingFrames frames = WorkingFrames.of(schedule, planes, List.of(red, green));
        return new DiskRecovery(frames, (i, earlier) -> fit(i))
                .recovered(Progress.NONE)
                .disks();
    }

    /** The red disk where green has it, moved and sized. */
    private static FittedDisk green(double right, double down, double grown) {
        TrueDisk truth = TRUTHS.get(1);
        return red.at(new Disk(
                truth.x() + right,
                truth.y() + down,
                grown * truth.equatorialRadiusPx(),
                truth.northAngleDeg(),
                truth.mirrored()));
    }

    private static FittedDisk unsure(FittedDisk fit, double sigmaPx) {
        return new FittedDisk(
                fit.disk(),
                fit.shading(),
                fit.background(),
                fit.brightness(),
                fit.noise(),
                new FitErrors(sigmaPx, fit.radiusSigmaPx(), fit.northSigmaDeg()),
                fit.residual());
    }

    private static void assertGreenFound(FittedDisk found) {
        double off = Math.hypot(
                found.disk().x() - TRUTHS.get(1).x(),
                found.disk().y() - TRUTHS.get(1).y());
        assertTrue(off < FOUND_PX, "off by " + off);
        assertEquals(TRUTHS.get(1).equatorialRadiusPx(), found.disk().equatorialRadiusPx(), 0.3);
    }

    @Test
    void soundFitsStayAsTheyAre() {
        FittedDisk green = green(0, 0, 1);
        List<FittedDisk> found = recovered(PLANES, green);
        assertSame(red, found.get(0));
        assertSame(green, found.get(1));
    }

    /** A fit that lies a quarter of the radius off, and says that it is good to some hundredths. */
    @Test
    void aSureFitFarFromTheEdgeIsFittedAgain() {
        List<FittedDisk> found = recovered(PLANES, green(15, -6, 1.1));
        assertSame(red, found.get(0));
        assertGreenFound(found.get(1));
    }

    @Test
    void anUnsureFitIsFittedAgain() {
        assertGreenFound(recovered(PLANES, unsure(green(2, 1, 1), 17)).get(1));
    }

    /** No disk at all, only noise and the fit's own idea of one. */
    @Test
    void whatStaysUnsureIsRefusedInOneSentence() {
        Plane noise = new Plane(InventedNight.SIDE, InventedNight.SIDE);
        Random random = new Random(5);
        for (int i = 0; i < noise.data().length; i++) {
            noise.data()[i] = (float) (red.background() + 0.3 * red.brightness() * random.nextGaussian());
        }
        NoDiskInFrame refused = assertThrows(
                NoDiskInFrame.class, () -> recovered(List.of(PLANES.get(0), noise), unsure(green(0, 0, 1), 17)));
        assertEquals("G.fits", refused.file().getFileName().toString());
        assertTrue(
                refused.getMessage().startsWith("G.fits: the centre of the disk is uncertain by 17.0 px; "),
                refused.getMessage());
        assertTrue(refused.getMessage().contains("--scale"), refused.getMessage());
    }
}
