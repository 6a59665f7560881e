package org.epochrome.desktop.state;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.epochrome.desktop.state.LimbHandles.Grip;
import org.epochrome.desktop.state.LimbHandles.Handle;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class LimbHandlesTest {
    private static final Globe GLOBE = new Globe(0.935, 0.05, 1, 0, 0);
    private static final Disk DISK = new Disk(200, 190, 150, 20, false);
    private static final LimbHandles HANDLES = new LimbHandles(GLOBE, DISK);

    private static Handle handle(LimbHandles of, Grip grip) {
        return of.handles().stream().filter(h -> h.grip() == grip).findFirst().orElseThrow();
    }

    /** A handle that is drawn somewhere is there afterwards. */
    @ParameterizedTest
    @EnumSource(
            value = Grip.class,
            names = {"CENTRE", "EAST", "WEST", "NORTH", "SOUTH"})
    void followsTheHand(Grip grip) {
        Handle at = handle(HANDLES, grip);
        double outX = grip == Grip.CENTRE ? 7 : 0.06 * (at.x() - DISK.x());
        double outY = grip == Grip.CENTRE ? -3 : 0.06 * (at.y() - DISK.y());
        Disk drawn = HANDLES.drawn(grip, at.x() + outX, at.y() + outY);
        Handle now = handle(new LimbHandles(GLOBE, drawn), grip);
        assertEquals(at.x() + outX, now.x(), 1e-9);
        assertEquals(at.y() + outY, now.y(), 1e-9);
    }

    /** Drawing one side leaves the limb opposite where it is. */
    @Test
    void holdsTheLimbOpposite() {
        Handle east = handle(HANDLES, Grip.EAST);
        Handle west = handle(HANDLES, Grip.WEST);
        Disk drawn = HANDLES.drawn(Grip.EAST, east.x() + 5, east.y() + 2);
        Handle now = handle(new LimbHandles(GLOBE, drawn), Grip.WEST);
        assertEquals(west.x(), now.x(), 1e-9);
        assertEquals(west.y(), now.y(), 1e-9);
    }

    /** North is to the left of up by the angle, mirrored or not. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void thePoleTurnsCounterClockwise(boolean mirrored) {
        Disk disk = new Disk(0, 0, 100, 0, mirrored);
        Disk drawn = new LimbHandles(GLOBE, disk).drawn(Grip.POLE, -50, -50);
        assertEquals(45, drawn.northAngleDeg(), 1e-9);
    }
}
