package org.epochrome.session.product;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.write.Lettering;

/**
 * What a picture shows, in two lines to stand below it: body and time, and how it stood.
 *
 * @param lines of text
 */
public record Legend(List<String> lines) {
    private static final DateTimeFormatter SECONDS =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

    /** Size of letters by the width of the picture, and within which bounds; common practice, no source. */
    private static final double SIZE = 1 / 36.0;

    private static final double LEAST_PX = 9;
    private static final double MOST_PX = 48;
    private static final double EDGE = 1;
    private static final float GREY = 0.72f;

    /**
     * What a picture of a body shows.
     *
     * @param at the instant that it shows
     * @param bands that it was made from, in any order and however often
     */
    public static Legend of(Body body, Instant at, Aspect aspect, Stream<Band> bands) {
        String epoch = SECONDS.format(at.plusMillis(500));
        List<String> parts = new ArrayList<>();
        List<RotationSystem> systems = body.systems().stream()
                .sorted(Comparator.comparing(RotationSystem::key))
                .toList();
        for (RotationSystem system : systems) {
            parts.add(String.format(
                    Locale.ROOT,
                    "CM%s %.1f\u00b0",
                    system == RotationSystem.SINGLE ? "" : " " + system.key(),
                    aspect.centralMeridianDeg(system)));
        }
        parts.add(String.format(Locale.ROOT, "diameter %.1f\u2033", aspect.equatorialDiameterArcsec()));
        aspect.horizontal()
                .ifPresent(h -> parts.add(String.format(Locale.ROOT, "altitude %.0f\u00b0", h.altitudeDeg())));
        parts.add(bands.sorted(Comparator.comparingDouble(b -> -b.passband().effectiveNm()))
                .map(Band::name)
                .distinct()
                .collect(Collectors.joining(" ")));
        return new Legend(List.of(body.displayName() + "   " + epoch + " UTC", String.join("   ", parts)));
    }

    /** This legend with one more line, if there is one. */
    public Legend and(Optional<String> line) {
        List<String> more = new ArrayList<>(lines);
        line.filter(text -> !text.isBlank()).ifPresent(more::add);
        return new Legend(more);
    }

    /** Height of the strip below a picture of some width, pixels. */
    int heightPx(int width) {
        return (int) Math.ceil(sizePx(width) * (Lettering.height(lines.size()) + 1.5 * EDGE));
    }

    /** The largest letters with which all lines fit. */
    private double sizePx(int width) {
        double longest = lines.stream().mapToDouble(Lettering::width).max().orElse(1);
        double wanted = Math.max(LEAST_PX, Math.min(MOST_PX, SIZE * width));
        return Math.min(wanted, width / (longest + 2 * EDGE));
    }

    /** The picture with the strip. */
    List<Plane> below(List<Plane> planes) {
        int width = planes.get(0).width();
        int height = planes.get(0).height();
        double size = sizePx(width);
        List<Plane> extended = new ArrayList<>();
        for (Plane plane : planes) {
            Plane taller = new Plane(width, height + heightPx(width));
            System.arraycopy(plane.data(), 0, taller.data(), 0, plane.data().length);
            extended.add(taller);
        }
        Lettering.draw(extended, lines, EDGE * size, height + 0.5 * EDGE * size, size, GREY);
        return extended;
    }
}
