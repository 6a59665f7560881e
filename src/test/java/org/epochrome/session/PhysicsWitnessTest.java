package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.align.Witness;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.world.Surface;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.image.Plane;
import org.epochrome.session.LowNight.Evening;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.text.Message;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A frame of a colour camera at 25 degrees of altitude: the air sets its planes apart by 2 and 3 pixels, and by how much is
 * predicted. Truth by {@link TracedLight}.
 */
@Tag("session")
class PhysicsWitnessTest {
    private static final double REGISTERED_PX = 0.05;
    private static final double PREDICTED_PX = 0.02;
    private static final double NAMED_NM = 8;
    private static final double SNR = 100;

    private static Surface surface;
    private static LowNight night;

    @TempDir
    private Path folder;

    @BeforeAll
    static void photograph() {
        surface = Surfaces.jupiter();
        night = new LowNight(Evening.JUPITER, surface, 25, 2, 72);
        Camera camera = night.camera().offsetBy(0.4, -1.2);
        LowNight.BANDS.forEach(band -> night.take(band, 0, camera));
    }

    private Recipe recipe(LowNight shown, double blueSnr) {
        return shown.inOneFile(
                folder,
                List.of(shown.noisy(Band.R, SNR, 1), shown.noisy(Band.G, SNR, 2), shown.noisy(Band.B, blueSnr, 3)));
    }

    private static double offPx(LowNight shown, Combination c, Band band) {
        double[] off = shown.off(c, band);
        return Math.hypot(off[0], off[1]);
    }

    /** Measured: predicted within 0.006 px in each direction, registered within 0.012 px. */
    @Test
    void planesThatTheAirSetsApartAreLaidOnEachOther() {
        Combination c = InventedNight.combine(recipe(night, SNR));
        FrameResult green = LowNight.result(c, Band.G);
        for (Band band : List.of(Band.R, Band.B)) {
            FrameResult f = LowNight.result(c, band);
            double trueX = night.disk(band).x() - night.disk(Band.G).x();
            double trueY = night.disk(band).y() - night.disk(Band.G).y();
            assertTrue(Math.hypot(trueX, trueY) > 2, band.name() + " lies apart");
            PixelOffset there = f.dispersion().orElseThrow();
            PixelOffset here = green.dispersion().orElseThrow();
            assertEquals(trueX, there.x() - here.x(), PREDICTED_PX, band.name());
            assertEquals(trueY, there.y() - here.y(), PREDICTED_PX, band.name());
            assertTrue(f.witnesses().limbToPhysics() < 3, band.name() + " " + f.witnesses());
            assertTrue(f.witnesses().leftOut().isEmpty());
            assertTrue(offPx(night, c, band) < REGISTERED_PX, band.name() + " off by " + offPx(night, c, band));
        }
        assertEquals(List.of(), c.warnings());
    }

    /**
     * Blue at a signal to noise of 4: no detail, a limb that is unsure. The prediction helps the limb (0.14 px off alone, 0.11
     * together), and is right where the limb is not to be heard.
     */
    @Test
    void physicsPlacesAPlaneThatShowsLittle() {
        Recipe recipe = recipe(night, 4);
        Combination all = InventedNight.combine(recipe);
        Combination limb = InventedNight.combine(recipe.with(hearing(Set.of(Witness.LIMB))));
        Combination physics = InventedNight.combine(recipe.with(hearing(Set.of(Witness.DETAIL, Witness.PHYSICS))));
        assertFalse(LowNight.result(all, Band.B).witnesses().detail().known(), "blue shows no detail");
        double together = offPx(night, all, Band.B);
        double alone = offPx(night, limb, Band.B);
        double predicted = offPx(night, physics, Band.B);
        assertTrue(together < alone, together + " together, " + alone + " by the limb");
        assertTrue(predicted < REGISTERED_PX, predicted + " by the prediction");
    }

    /** Blue of 400 to 500 nm that is said to be of 430 to 530 nm: the places of the planes tell. */
    @Test
    void passbandThatIsToldWrongIsNamed() {
        List<Plane> planes =
                List.of(night.noisy(Band.R, SNR, 1), night.noisy(Band.G, SNR, 2), night.noisy(Band.B, SNR, 3));
        Band blue = Band.B.through(new Passband(430, 530));
        Combination c = InventedNight.combine(night.inOneFile(folder, planes, List.of(Band.R, Band.G, blue)));
        assertTrue(offPx(night, c, Band.B) < REGISTERED_PX, "blue off by " + offPx(night, c, Band.B));
        Matcher named = Pattern.compile(
                        "The dispersion in B suggests a passband of (\\d+)-(\\d+) nm rather than 430-530 nm;")
                .matcher(String.join("\n", Message.texts(c.warnings())));
        assertTrue(named.find(), c.warnings().toString());
        assertEquals(400, Integer.parseInt(named.group(1)), NAMED_NM);
        assertEquals(500, Integer.parseInt(named.group(2)), NAMED_NM);
    }

    private static Alignment hearing(Set<Witness> witnesses) {
        return new Alignment(witnesses, Map.of(), false);
    }

    /** A blue plane that shows the globe a degree further turned: its detail contradicts limb and physics. */
    @Test
    void detailThatContradictsLimbAndPhysicsIsLeftOut() {
        LowNight faulty = new LowNight(Evening.JUPITER, surface, 25, 2, 72);
        Camera camera = night.camera().offsetBy(0.4, -1.2);
        faulty.take(Band.R, 0, camera).take(Band.G, 0, camera).take(Band.B, 99, camera);
        Combination c = InventedNight.combine(recipe(faulty, SNR));
        assertEquals(
                Set.of(Witness.DETAIL), LowNight.result(c, Band.B).witnesses().leftOut());
        // and the markings of blue do lie off the others' in the result, by (0.96 px) / sqrt(2) at most
        assertEquals(2, c.warnings().size(), c.warnings().toString());
        assertTrue(c.warnings().get(1).toString().startsWith("The colours are misaligned by"));
        assertTrue(c.warnings()
                .get(0)
                .toString()
                .startsWith("colour.fits: the position from detail differs from the others"));
        for (Band band : List.of(Band.R, Band.B)) {
            assertTrue(offPx(faulty, c, band) < REGISTERED_PX, band.name() + " off by " + offPx(faulty, c, band));
        }
    }
}
