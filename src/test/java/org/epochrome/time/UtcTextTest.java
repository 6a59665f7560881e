package org.epochrome.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UtcTextTest {
    @ParameterizedTest
    @CsvSource({
        "2024-12-18T19:24:30Z, 2024-12-18T19:24:30Z",
        "2024-12-18T19:24:30, 2024-12-18T19:24:30Z",
        "2024-12-18 19:24:30, 2024-12-18T19:24:30Z",
        "2024-12-18t19:24:30z, 2024-12-18T19:24:30Z",
        "'  2024-12-18T19:24:30Z ', 2024-12-18T19:24:30Z",
        "2024-12-18T19:24, 2024-12-18T19:24:00Z",
        "2024-12-18T19:24:30.25Z, 2024-12-18T19:24:30.250Z",
        "'2024-12-18T19:24:30,5', 2024-12-18T19:24:30.500Z",
        "2024-12-18T19:24:30.1234567891, 2024-12-18T19:24:30.123456789Z",
        "2024-12-18T21:24:30+02:00, 2024-12-18T19:24:30Z",
        "2024-12-18T14:54:30-0430, 2024-12-18T19:24:30Z",
        "2024-12-18 21:24:30 +02, 2024-12-18T19:24:30Z",
        "2024-12-31T23:59:60Z, 2025-01-01T00:00:00Z",
        "2016-12-31T23:59:60.5Z, 2017-01-01T00:00:00.500Z",
        "2024-02-29T00:00:00Z, 2024-02-29T00:00:00Z"
    })
    void readsWhatPeopleWrite(String text, Instant expected) {
        assertEquals(expected, UtcText.parse(text));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "yesterday", "2024-12-18", "18.12.2024 19:24", "2024-12-18T19:24:30X", "2024-12-18T9:24:30Z"
            })
    void refusesOtherForms(String text) {
        assertOneSentence(assertThrows(IllegalArgumentException.class, () -> UtcText.parse(text)), text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2023-02-29T00:00:00Z",
                "2024-13-01T00:00:00Z",
                "2024-12-18T24:24:30Z",
                "2024-12-18T19:58:60Z",
                "2024-12-18T19:24:61Z",
                "2024-12-18T19:24:30+25:00"
            })
    void refusesWhatDoesNotExist(String text) {
        var refused = assertThrows(IllegalArgumentException.class, () -> UtcText.parse(text));
        assertOneSentence(refused, text);
        assertTrue(refused.getMessage().contains("does not exist"));
    }

    private static void assertOneSentence(Exception refused, String text) {
        String message = refused.getMessage();
        assertTrue(message.startsWith("\"" + text + "\""), message);
        assertTrue(message.endsWith("write it like 2024-12-18T19:24:30Z."), message);
    }

    @Test
    void writesToTheMillisecond() {
        assertEquals("2024-12-18T19:24:30Z", UtcText.format(Instant.parse("2024-12-18T19:24:30Z")));
        assertEquals("2024-12-18T19:24:30.250Z", UtcText.format(Instant.parse("2024-12-18T19:24:30.250Z")));
        assertEquals("2024-12-18T19:25:00Z", UtcText.format(Instant.parse("2024-12-18T19:24:59.999700Z")));
    }

    @Test
    void readsWhatItWrites() {
        Instant instant = Instant.parse("1999-12-31T23:59:59.999Z");
        assertEquals(instant, UtcText.parse(UtcText.format(instant)));
    }
}
