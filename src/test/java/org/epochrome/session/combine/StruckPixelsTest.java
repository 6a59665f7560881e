package org.epochrome.session.combine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.session.InventedNight;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cosmic rays that look like small clouds, laid onto frames of the demo's ray-caster that are as sharp as their pixels. */
@Tag("session")
class StruckPixelsTest {
    /** Blur of 0.55 px: a star's light falls onto a few pixels, as in a telescope in orbit. */
    private static final BandSetting SHARP = new BandSetting(0.93, 0.55, 0.8);

    /** A ray's light on the pixels around it, parts of full scale: no sharper than a star, so its own frame cannot tell it. */
    private static final double[][] RAY = {{0.06, 0.14, 0.08}, {0.12, 0.25, 0.16}, {0.05, 0.13, 0.07}};
    /** Places on the disk, which lies around the frame's middle: amid the clouds and 5 px inside the limb. */
    private static final int[][] PLACES = {{79, 88}, {100, 70}, {143, 88}};

    /** The ray's frame loses the pixels, the other one fills them: the picture is that of frames without rays. */
    @Test
    void raysThatOneFrameShowsAreLeftOut(@TempDir Path clean, @TempDir Path struck) {
        Combination without = InventedNight.combine(night(clean, false).recipe());
        Combination with = InventedNight.combine(night(struck, true).recipe());

        for (int[] place : PLACES) {
            for (int j = -1; j <= 1; j++) {
                for (int i = -1; i <= 1; i++) {
                    double expected = without.cube().red().at(place[0] + i, place[1] + j);
                    double found = with.cube().red().at(place[0] + i, place[1] + j);
                    // A ray left in changes the mean of two frames by up to 0.12; with one frame less the noise is
                    // 0.01. Measured: 0.017.
                    assertEquals(expected, found, 0.03, place[0] + i + ", " + (place[1] + j));
                }
            }
        }
        List<String> notes = Message.texts(frame(with, "R1.tif").warnings());
        assertTrue(notes.stream().anyMatch(n -> n.toString().contains("struck")), notes.toString());
    }

    /** What both frames show is detail, however sharp. */
    @Test
    void cloudsStay(@TempDir Path folder) {
        Combination c = InventedNight.combine(night(folder, false).recipe());
        for (FrameResult f : c.frames()) {
            assertTrue(
                    f.warnings().stream().noneMatch(n -> n.toString().contains("struck")),
                    f.warnings().toString());
        }
    }

    private static InventedNight night(Path folder, boolean struck) {
        InventedNight night = new InventedNight(folder, Map.of("R", SHARP, "G", SHARP, "B", SHARP));
        night.add(
                "R1.tif",
                InventedNight.shot(Band.R, -90, InventedNight.camera(), 80, 1),
                p -> struck ? withRays(p) : p);
        night.add("G.tif", InventedNight.shot(Band.G, -30, InventedNight.camera(), 80, 2));
        night.add("B.tif", InventedNight.shot(Band.B, 30, InventedNight.camera(), 80, 3));
        night.add("R2.tif", InventedNight.shot(Band.R, 90, InventedNight.camera(), 80, 4));
        return night;
    }

    private static Plane withRays(Plane plane) {
        Plane struck = plane.copy();
        for (int[] place : PLACES) {
            for (int j = -1; j <= 1; j++) {
                for (int i = -1; i <= 1; i++) {
                    int x = place[0] + i;
                    int y = place[1] + j;
                    struck.set(x, y, struck.at(x, y) + 65535 * (float) RAY[j + 1][i + 1]);
                }
            }
        }
        return struck;
    }

    private static FrameResult frame(Combination c, String name) {
        return c.frames().stream()
                .filter(f -> f.exposure().name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
