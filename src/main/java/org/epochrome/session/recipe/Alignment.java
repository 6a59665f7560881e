package org.epochrome.session.recipe;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.epochrome.align.Witness;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;

/**
 * How frames are aligned.
 *
 * @param witnesses the measurements of position that are used
 * @param nudgesPx by band or file name, by how much more a picture is moved, pixels of the output
 * @param freeScale whether bands may differ slightly in scale and direction, as filters do that focus differently
 */
public record Alignment(
        @Choice(option = "witness") Set<Witness> witnesses,
        @Choice(key = "shiftsPx", option = "shift") Map<String, PixelOffset> nudgesPx,
        @Choice boolean freeScale)
        implements Choices<Alignment> {
    /** All witnesses, nothing by hand, one scale. */
    public static final Alignment USUAL = new Alignment(EnumSet.allOf(Witness.class), Map.of(), false);

    public Alignment {
        Set<Witness> inOrder = EnumSet.noneOf(Witness.class);
        inOrder.addAll(witnesses);
        witnesses = Collections.unmodifiableSet(inOrder);
        nudgesPx = Map.copyOf(nudgesPx);
    }

    public boolean uses(Witness witness) {
        return witnesses.contains(witness);
    }

    /** What was asked for an exposure, by its file and by its band. */
    public PixelOffset nudge(Exposure exposure) {
        PixelOffset none = new PixelOffset(0, 0);
        PixelOffset file = nudgesPx.getOrDefault(exposure.name(), none);
        PixelOffset band = nudgesPx.getOrDefault(exposure.band().name(), none);
        return new PixelOffset(file.x() + band.x(), file.y() + band.y());
    }
}
