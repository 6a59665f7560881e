package org.epochrome.desktop.panel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What people type, against the values that it stands for. */
class TypedValuesTest {
    @Test
    void latitudes() {
        Map<String, Double> typed = Map.of(
                "46.2",
                46.2,
                "46,2",
                46.2,
                "46 12 N",
                46.2,
                "46° 12' N",
                46.2,
                "46°12'00\"",
                46.2,
                "N 46 12",
                46.2,
                "37 S",
                -37.0,
                "-37",
                -37.0,
                "0 30 S",
                -0.5);
        typed.forEach((text, value) -> assertEquals(value, TypedValues.latitude(text), 1e-9, text));
    }

    @Test
    void longitudes() {
        Map<String, Double> typed = Map.of("8 30 E", 8.5, "3.5W", -3.5, "-3.5", -3.5, "146°30'E", 146.5, "70 w", -70.0);
        typed.forEach((text, value) -> assertEquals(value, TypedValues.longitude(text), 1e-9, text));
    }

    @Test
    void whatIsNoAngleIsRefused() {
        for (String text : List.of("", "north", "46 75 N", "46 12 E", "N 46 S", "46 12 60")) {
            assertThrows(IllegalArgumentException.class, () -> TypedValues.latitude(text), text);
        }
        assertThrows(IllegalArgumentException.class, () -> TypedValues.longitude("8 30 N"));
    }

    @Test
    void lengths() {
        assertEquals(Duration.ofMinutes(2), TypedValues.length("2 min"));
        assertEquals(Duration.ofSeconds(90), TypedValues.length("1:30"));
        assertEquals(Duration.ofSeconds(90), TypedValues.length("90"));
        assertEquals(Duration.ofMillis(90_500), TypedValues.length("90,5 s"));
        assertEquals(Duration.ofSeconds(90), TypedValues.length(TypedValues.text(Duration.ofSeconds(90))));
        for (String text : List.of("0", "long", "-5", "")) {
            assertThrows(IllegalArgumentException.class, () -> TypedValues.length(text), text);
        }
    }

    @Test
    void offsets() {
        assertEquals(ZoneOffset.UTC, TypedValues.offset("UTC"));
        assertEquals(ZoneOffset.ofHours(2), TypedValues.offset("+2"));
        assertEquals(ZoneOffset.ofHours(2), TypedValues.offset("UTC+02:00"));
        assertEquals(ZoneOffset.ofHoursMinutes(-3, -30), TypedValues.offset("-3:30"));
        assertThrows(IllegalArgumentException.class, () -> TypedValues.offset("tomorrow"));
    }
}
