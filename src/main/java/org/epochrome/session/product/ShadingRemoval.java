package org.epochrome.session.product;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.map.BandLight;
import org.epochrome.map.NormalisedSurface;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;

/** Takes the shading off a combination's globe, with the light that its frames were fitted with; moons are not of it. */
public final class ShadingRemoval {
    private ShadingRemoval() {}

    public static NormalisedSurface surface(Combination c) {
        return new NormalisedSurface(
                c.globe().planes(),
                new View(Globe.of(c.aspect()), c.disk()),
                c.recipe().assignment().colours().stream()
                        .map(band -> light(c, band))
                        .toList(),
                c.recipe().body().belted());
    }

    /** A merged band has the brightness of its frame nearest to the epoch, the first of these if there are several. */
    private static BandLight light(Combination c, String band) {
        List<FrameResult> frames = c.frames().stream()
                .filter(f -> f.exposure().band().name().equals(band))
                .toList();
        List<BandLight.Part> parts = new ArrayList<>();
        for (FrameResult f : frames) {
            parts.add(new BandLight.Part(
                    DispersionDeconvolution.fit(
                            f.limb(), c.recipe().corrections().unsmear()),
                    f.weight()));
        }
        FrameResult nearest = frames.stream()
                .min(Comparator.comparing(
                        f -> Duration.between(f.exposure().mid(), c.epoch()).abs()))
                .orElseThrow();
        return new BandLight(parts, nearest.limb().brightness());
    }
}
