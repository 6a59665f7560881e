package org.epochrome.colour.finish;

import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.text.Message;

/**
 * What part of a finished picture is kept, and how it lies.
 *
 * @param orientation which way is up
 * @param margin what is left around the disk, and around rings, in equatorial radii; empty for the whole frame
 * @param enlarge factor on sizes; empty for 1, or, with margin and canvas, for what fills the canvas
 * @param canvas size of the picture; empty for what it takes
 * @param rotate by how much it is rotated on top of that, degrees counter-clockwise
 * @param centre where its middle lies; empty for the disk's centre
 * @param caption whether lines below say what is shown
 * @param captionText one more line of the caption, such as place, equipment and seeing
 */
public record Framing(
        @Choice(option = "orient") Orientation orientation,
        @Choice OptionalDouble margin,
        @Choice OptionalDouble enlarge,
        @Choice Optional<Canvas> canvas,
        @Choice OptionalDouble rotate,
        @Choice Optional<Centre> centre,
        @Choice boolean caption,
        @Choice Optional<String> captionText)
        implements Choices<Framing> {
    /** The frame as it was shot. */
    public static final Framing AS_SHOT =
            new Framing(Orientation.AS_SHOT, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), false);

    /** A picture that is neither rotated nor off its centre. */
    public Framing(
            Orientation orientation,
            OptionalDouble margin,
            OptionalDouble enlarge,
            Optional<Canvas> canvas,
            boolean caption) {
        this(orientation, margin, enlarge, canvas, OptionalDouble.empty(), Optional.empty(), caption, Optional.empty());
    }

    /**
     * A place beside the disk's centre, equatorial radii.
     *
     * @param right of it
     * @param down below it
     */
    public record Centre(double right, double down) {
        public Centre {
            if (!(Math.abs(right) <= 20 && Math.abs(down) <= 20)) {
                throw new IllegalArgumentException(Message.text("value.centre"));
            }
        }
    }

    /** Which way is up; the last two also undo a mirror. */
    public enum Orientation {
        AS_SHOT,
        NORTH_UP,
        SOUTH_UP
    }

    /**
     * A size.
     *
     * @param width pixels, 16 to 20000
     * @param height the same
     */
    public record Canvas(int width, int height) {
        public Canvas {
            if (Math.min(width, height) < 16 || Math.max(width, height) > 20_000) {
                throw new IllegalArgumentException(Message.text("value.canvas", width, height));
            }
        }
    }

    /** This framing for a picture whose pixels are a given number of times as wide; the factor that a canvas asks for stays open. */
    public Framing enlarged(int factor) {
        boolean filling = margin.isPresent() && canvas.isPresent() && enlarge.isEmpty();
        OptionalDouble scale = filling ? enlarge : OptionalDouble.of(Math.min(20, factor * enlarge.orElse(1)));
        return with(Framing::enlarge, scale);
    }

    public Framing {
        if (!(margin.orElse(0) >= 0 && margin.orElse(0) <= 20)) {
            throw new IllegalArgumentException(Message.text("value.margin"));
        }
        if (!(Math.abs(rotate.orElse(0)) <= 360)) {
            throw new IllegalArgumentException(Message.text("value.rotate"));
        }
        if (!(enlarge.orElse(1) >= 0.05 && enlarge.orElse(1) <= 20)) {
            throw new IllegalArgumentException(Message.text("value.enlargement"));
        }
    }
}
