package org.epochrome.session.recipe;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.epochrome.io.read.DatedFrame;

/**
 * Which bands make the picture.
 *
 * @param red band shown as red
 * @param green band shown as green
 * @param blue band shown as blue
 * @param luminance band that the picture's fine brightness comes from; empty for the three colours themselves
 */
public record Assignment(String red, String green, String blue, Optional<String> luminance) {
    /** The natural colours, and L for the brightness if there are frames in it. */
    public static Assignment usual(List<DatedFrame> frames) {
        boolean clear = frames.stream().flatMap(f -> f.band().band().stream()).anyMatch(band -> band.name()
                .equals("L"));
        return new Assignment("R", "G", "B", clear ? Optional.of("L") : Optional.empty());
    }

    /** Whether red, green and blue are shown as such, so that published colours of planets apply. */
    public boolean showsNaturalColours() {
        return colours().equals(List.of("R", "G", "B"));
    }

    /** The bands of red, green and blue, in this order. */
    public List<String> colours() {
        return List.of(red, green, blue);
    }

    /** All bands that are needed, each once. */
    public List<String> bands() {
        return Stream.concat(colours().stream(), luminance.stream()).distinct().toList();
    }
}
