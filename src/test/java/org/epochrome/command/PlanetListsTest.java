package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.epochrome.ephemeris.Body;
import org.junit.jupiter.api.Test;

class PlanetListsTest {
    @Test
    void nameThePlanetsThereAre() {
        assertEquals(list(b -> true, "or"), PlanetLists.ALL);
        assertEquals(list(b -> !b.showsAxis(), "and"), PlanetLists.WITHOUT_AXIS);
    }

    private static String list(Predicate<Body> chosen, String last) {
        List<String> names = Arrays.stream(Body.values())
                .filter(chosen)
                .map(Body::displayName)
                .toList();
        int before = names.size() - 1;
        return String.join(", ", names.subList(0, before)) + " " + last + " " + names.get(before);
    }
}
