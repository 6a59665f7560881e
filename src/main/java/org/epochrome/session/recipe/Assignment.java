package org.epochrome.session.recipe;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.io.read.DatedFrame;

/**
 * Which bands make the picture.
 *
 * @param red band shown as red
 * @param green band shown as green
 * @param blue band shown as blue
 * @param luminance band that the picture's fine brightness comes from; empty for the three colours themselves
 */
public record Assignment(
        @Choice(option = "assign") String red,
        @Choice(option = "assign") String green,
        @Choice(option = "assign") String blue,
        @Choice(option = "luminance-from") Optional<String> luminance)
        implements Choices<Assignment> {
    /** The natural colours, without a band for the brightness. */
    public static final Assignment NATURAL = new Assignment("R", "G", "B", Optional.empty());

    /** The natural colours, and L for the brightness if there are frames in it. */
    public static Assignment usual(List<DatedFrame> frames) {
        boolean clear = frames.stream().flatMap(f -> f.band().band().stream()).anyMatch(band -> band.name()
                .equals("L"));
        return clear ? NATURAL.with(Assignment::luminance, Optional.of("L")) : NATURAL;
    }

    /** Whether red, green and blue are shown as such, so that published colours of planets apply. */
    public boolean showsNaturalColours() {
        return colours().equals(NATURAL.colours());
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
