package org.epochrome.map;

import java.util.List;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.turn.RingAttenuation;

/**
 * The light in which one band of a merged picture shows the globe: the mean of what its frames were fitted with.
 *
 * @param parts frames of the band
 * @param brightness factor of the even globe, in the picture's unit
 */
public record BandLight(List<Part> parts, double brightness) {
    /**
     * A frame of the band.
     *
     * @param fit its disk and shading
     * @param share its part in the band; all add up to 1
     */
    public record Part(FittedDisk fit, double share) {}

    /** What an even globe and its rings would show on some pixels, 1 where Sun and observer stand overhead. */
    RingAttenuation on(View view, int width, int height) {
        Plane shade = new Plane(width, height);
        Plane clear = new Plane(width, height);
        Plane rings = new Plane(width, height);
        for (Part part : parts) {
            Shading shading = part.fit().shading().carried(part.fit().disk(), view.disk());
            RingAttenuation veil = RingAttenuation.of(view, part.fit().rings(), shading, width, height);
            add(shade, veil.shade(), part.share());
            add(clear, veil.clear(), part.share());
            add(rings, veil.rings(), part.share());
        }
        return new RingAttenuation(shade, clear, rings);
    }

    /** This light with another Minnaert exponent. */
    BandLight withExponentBy(double change) {
        return new BandLight(
                parts.stream()
                        .map(p ->
                                new Part(p.fit().withMinnaert(p.fit().shading().minnaert() + change), p.share()))
                        .toList(),
                brightness);
    }

    private static void add(Plane sum, Plane plane, double share) {
        for (int i = 0; i < sum.data().length; i++) {
            sum.data()[i] += (float) (share * plane.data()[i]);
        }
    }
}
