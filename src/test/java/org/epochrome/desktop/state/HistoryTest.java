package org.epochrome.desktop.state;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class HistoryTest {
    private final History<String> history = new History<>("a");

    @Test
    void goesBackAndForthByName() {
        history.push("to b", "b");
        history.push("to c", "c");
        assertEquals(Optional.of("to c"), history.undoable());
        assertEquals("b", history.undo());
        assertEquals("a", history.undo());
        assertEquals(Optional.empty(), history.undoable());
        assertEquals("a", history.undo());
        assertEquals(Optional.of("to b"), history.redoable());
        assertEquals("b", history.redo());
    }

    @Test
    void aNewStepForgetsWhatWasUndone() {
        history.push("to b", "b");
        history.undo();
        history.push("to c", "c");
        assertEquals(Optional.empty(), history.redoable());
        assertEquals("a", history.undo());
    }

    @Test
    void whatChangesNothingIsNoStep() {
        history.push("to a", "a");
        assertEquals(Optional.empty(), history.undoable());
    }

    /** Small steps of one name that follow each other are undone as one. */
    @Test
    void nudgesAreOneStep() {
        History<String> history = new History<>("a");
        history.nudge("move", "b");
        history.nudge("move", "c");
        history.nudge("turn", "d");
        history.push("turn", "e");
        history.nudge("turn", "f");
        assertEquals("e", history.undo());
        assertEquals("d", history.undo());
        assertEquals("c", history.undo());
        assertEquals("a", history.undo());
    }
}
