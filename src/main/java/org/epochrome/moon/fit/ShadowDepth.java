package org.epochrome.moon.fit;

import java.util.Arrays;
import org.epochrome.image.blur.Wings;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonOrShadow;

/**
 * How far wings reach into a shadow. The core of a moon's shadow has no light of its own, so what is seen there was spread into it, and
 * nothing can be darker than black: where the wings that the limb's fit found would make it so, they are too strong on the scale of
 * the shadow.
 */
public final class ShadowDepth {
    private static final int HALVINGS = 8;

    private ShadowDepth() {}

    /** The frame with wings as much weaker as it takes for a shadow to be black. */
    public static MoonFrame black(MoonField field, MoonOrShadow shadow) {
        double none = level(field, shadow, 0);
        double all = level(field, shadow, 1);
        if (all >= 0 || none <= 0) {
            return field.frame();
        }
        double low = 0;
        double high = 1;
        for (int k = 0; k < HALVINGS; k++) {
            double middle = 0.5 * (low + high);
            if (level(field, shadow, middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return weaker(field.frame(), low);
    }

    private static double level(MoonField field, MoonOrShadow shadow, double part) {
        MoonField other = new MoonField(weaker(field.frame(), part), field.light(), field.even(), field.rough());
        return new MoonFit(other, shadow, 0).held().level();
    }

    private static MoonFrame weaker(MoonFrame frame, double part) {
        Wings wings = frame.wings();
        double[] parts = Arrays.stream(wings.parts()).map(p -> part * p).toArray();
        return frame.with(Wings.of(wings.widthsPx(), parts));
    }
}
