package org.epochrome.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** What every message to a user must be. */
public final class Sentences {
    private Sentences() {}

    /** One line that begins with the name of the file, ends with a full stop and shows nothing of the machinery. */
    public static void assertSentence(String name, RuntimeException refused) {
        String message = refused.getMessage();
        assertTrue(message.startsWith(name + " "), message);
        assertTrue(message.endsWith("."), message);
        assertEquals(1, message.lines().count(), message);
        assertTrue(message.length() - name.length() > 15, message);
        assertTrue(!message.contains("Exception") && !message.contains("null") && !message.contains("java."), message);
    }
}
