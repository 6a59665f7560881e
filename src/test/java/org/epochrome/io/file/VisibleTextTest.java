package org.epochrome.io.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Test;

/** Nothing in a message can move the cursor or flood the terminal. */
class VisibleTextTest {
    @Test
    void whatControlsATerminalIsShown() {
        assertEquals("a\\x1b[2Jb\\x0ac\\x07\\x7f\\x9b\\x0d", VisibleText.of("a\u001b[2Jb\nc\u0007\u007f\u009b\r"));
        assertEquals("gpj\\u202e.\\u2028\\u200b", VisibleText.of("gpj\u202e.\u2028\u200b"));
        assertEquals("\\ud800", VisibleText.of("\ud800"));
        assertEquals(
                "Jup\u00efter \u6728\u661f \ud83e\ude90 50 %",
                VisibleText.of("Jup\u00efter \u6728\u661f \ud83e\ude90 50 %"));
    }

    @Test
    void linesStay() {
        assertEquals("a\\x1b\nb\\x07\n", VisibleText.lines("a\u001b\nb\u0007\n"));
    }

    @Test
    void aLongMessageKeepsItsEnds() {
        String message = VisibleText.message("x.fits has " + "\u001b".repeat(100_000) + "; save it again.");
        assertTrue(message.length() <= 800, message);
        assertTrue(message.startsWith("x.fits has ") && message.endsWith("; save it again."), message);
        assertEquals("short.", VisibleText.message("short."));
    }

    @Test
    void refusalsAreOfThatKind() {
        Path file = Path.of("a\u001b]0;b\n.fits");
        assertEquals(
                "a\\x1b]0;b\\x0a.fits does not exist; check its name and folder.",
                new FrameRefused(file, Message.of("file.absent")).getMessage());
        assertEquals(
                "a\\x1b]0;b\\x0a.fits does not exist; check its name and folder.",
                new OutputRefused(file, Message.of("file.absent")).getMessage());
    }
}
