package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames whose sky was cut to black before they were encoded, eight bits deep, and nobody says so. */
@Tag("session")
class EncodedNightTest {
    private static final List<Band> BANDS = List.of(Band.R, Band.G, Band.B);
    private static final double BLACK = 0.03;
    private static final double FULL = 65535;

    @TempDir
    Path folder;

    private InventedNight night(DoubleUnaryOperator curve) {
        InventedNight night = new InventedNight(folder);
        for (Band band : BANDS) {
            double middleS = 60.0 * (BANDS.indexOf(band) - 1);
            night.add(
                    band.name() + ".png",
                    InventedNight.shot(
                            band,
                            middleS,
                            InventedNight.camera(),
                            200,
                            band.name().charAt(0)),
                    plane -> encoded(plane, curve));
        }
        return night;
    }

    private static Plane encoded(Plane plane, DoubleUnaryOperator curve) {
        Plane result = plane.copy();
        float[] data = result.data();
        for (int i = 0; i < data.length; i++) {
            double light = Math.max(0, data[i] / FULL - BLACK);
            data[i] = (float) (Math.rint(255 * curve.applyAsDouble(light)) / 255 * FULL);
        }
        return result;
    }

    private static List<String> suspicions(Combination combination) {
        return Message.texts(combination.warnings()).stream()
                .filter(w -> w.contains("--encoding"))
                .toList();
    }

    @Test
    void encodedFramesAreNamedAndTheirDisksAreUnsure() {
        InventedNight night = night(light -> Math.pow(light, 1 / 2.2));
        Combination combination = InventedNight.combine(night.recipe());
        List<String> said = suspicions(combination);
        assertEquals(1, said.size(), combination.warnings().toString());
        assertTrue(said.get(0).startsWith("All frames may be encoded for a screen"), said.get(0));
        for (FrameResult frame : combination.frames()) {
            double off =
                    frame.limb().disk().equatorialRadiusPx() - night.disk(frame).equatorialRadiusPx();
            assertTrue(off > 0.3, "the curve makes the disk larger: " + off);
            assertTrue(
                    off < 2 * frame.limb().radiusSigmaPx(),
                    off + " px off, stated as " + frame.limb().radiusSigmaPx());
        }
    }

    @Test
    void linearFramesAreNot() {
        Combination combination = InventedNight.combine(night(light -> light).recipe());
        assertEquals(List.of(), suspicions(combination));
    }
}
