package org.epochrome.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;

/**
 * An evening at the telescope that never was.
 *
 * @param body the planet
 * @param site where from
 * @param epoch the instant its colour picture is for: midway between the earliest and the latest middle
 * @param scene what was photographed
 * @param shots the recordings by file name, in the order of their time
 * @param texts other files, by name
 */
public record DemoSession(
        Body body, Site site, Instant epoch, Scene scene, Map<String, Shot> shots, Map<String, String> texts) {
    private static final List<Band> COLOURS = List.of(Band.R, Band.G, Band.B);

    /** Takes the pictures. */
    public List<DemoFrame> frames() {
        return shots.entrySet().stream()
                .map(named -> new DemoFrame(named.getKey(), named.getValue(), scene.photograph(named.getValue())))
                .toList();
    }

    /** The picture that a perfect combination would give: R, G, B at the epoch on the grid of the reference frame. */
    public List<Rendered> truth() {
        return scene.truth(COLOURS, reference(), epoch);
    }

    /** The green recording nearest to the epoch. */
    public Shot reference() {
        return shots.values().stream()
                .filter(shot -> shot.band().equals(Band.G))
                .min(Comparator.comparing(this::fromEpoch))
                .orElseThrow();
    }

    private Duration fromEpoch(Shot shot) {
        return Duration.between(epoch, shot.span().mid()).abs();
    }
}
