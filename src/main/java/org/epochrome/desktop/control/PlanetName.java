package org.epochrome.desktop.control;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Body;

/** Finds the planet that the name of a file, or else of its folder, contains as a word. */
final class PlanetName {
    private PlanetName() {}

    /** The planet; empty if neither name contains exactly one. */
    static Optional<Body> of(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        return in(file).or(() -> folder == null ? Optional.empty() : in(folder));
    }

    private static Optional<Body> in(Path path) {
        if (path.getFileName() == null) {
            return Optional.empty();
        }
        Set<Body> found = Arrays.stream(path.getFileName().toString().split("[^\\p{L}]+", -1))
                .flatMap(word -> Body.named(word).stream())
                .collect(Collectors.toSet());
        return found.size() == 1 ? Optional.of(found.iterator().next()) : Optional.empty();
    }
}
