package org.epochrome.session.schedule;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.read.DatedFrame;

/** Separates frames into sessions: frames of one planet, without a long pause between them. */
public final class SessionSplit {
    /** A pause between two mid-exposures from which another session begins: longer than a break, shorter than a day. */
    public static final Duration LONGEST_PAUSE = Duration.ofHours(6);

    private SessionSplit() {}

    /**
     * Frames that belong together.
     *
     * @param body the planet that their headers name; empty if none names one
     * @param frames at least one, in the order in which they were given
     */
    public record Part(Optional<Body> body, List<DatedFrame> frames) {
        public Part {
            frames = List.copyOf(frames);
        }

        /** The earliest mid-exposure. */
        public Instant first() {
            return frames.stream()
                    .map(SessionSplit::mid)
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
        }

        /** The latest mid-exposure. */
        public Instant last() {
            return frames.stream()
                    .map(SessionSplit::mid)
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
        }
    }

    /** The sessions of some frames, in the order of time; one if they all belong together, none without frames. */
    public static List<Part> of(List<DatedFrame> frames) {
        return of(frames, LONGEST_PAUSE);
    }

    /**
     * The sessions of some frames, in the order of time. A frame whose header names no planet belongs to the frames that
     * are nearest to it in time.
     *
     * @param longestPause between two mid-exposures of one session
     */
    public static List<Part> of(List<DatedFrame> frames, Duration longestPause) {
        IdentityHashMap<DatedFrame, Optional<Body>> bodies = bodies(frames, longestPause);
        Set<Optional<Body>> planets = new LinkedHashSet<>(bodies.values());
        List<Part> parts = new ArrayList<>();
        for (Optional<Body> planet : planets) {
            List<DatedFrame> own =
                    frames.stream().filter(f -> bodies.get(f).equals(planet)).toList();
            for (Set<DatedFrame> night : nights(own, longestPause)) {
                parts.add(new Part(planet, own.stream().filter(night::contains).toList()));
            }
        }
        parts.sort(Comparator.comparing(Part::first));
        return List.copyOf(parts);
    }

    /** The nights of some frames, whatever their planets. */
    public static List<Part> nights(List<DatedFrame> frames) {
        return nights(frames, LONGEST_PAUSE).stream()
                .map(night -> new Part(
                        Optional.empty(),
                        frames.stream().filter(night::contains).toList()))
                .toList();
    }

    /** The planet of each frame; that of the nearest one of its night that names one, if its own header names none. */
    private static IdentityHashMap<DatedFrame, Optional<Body>> bodies(List<DatedFrame> frames, Duration longestPause) {
        IdentityHashMap<DatedFrame, Optional<Body>> bodies = new IdentityHashMap<>();
        for (Set<DatedFrame> night : nights(frames, longestPause)) {
            for (DatedFrame frame : night) {
                bodies.put(frame, frame.object().or(() -> night.stream()
                        .filter(f -> f.object().isPresent())
                        .min(Comparator.comparing(
                                f -> Duration.between(mid(f), mid(frame)).abs()))
                        .flatMap(DatedFrame::object)));
            }
        }
        return bodies;
    }

    /** Frames between which there is no long pause. */
    private static List<Set<DatedFrame>> nights(List<DatedFrame> frames, Duration longestPause) {
        List<DatedFrame> sorted = frames.stream()
                .sorted(Comparator.comparing(SessionSplit::mid))
                .collect(Collectors.toCollection(ArrayList::new));
        List<Set<DatedFrame>> nights = new ArrayList<>();
        Instant last = Instant.MIN;
        for (DatedFrame frame : sorted) {
            if (nights.isEmpty() || Duration.between(last, mid(frame)).compareTo(longestPause) > 0) {
                nights.add(Collections.newSetFromMap(new IdentityHashMap<>()));
            }
            nights.get(nights.size() - 1).add(frame);
            last = mid(frame);
        }
        return nights;
    }

    private static Instant mid(DatedFrame frame) {
        return frame.timing().span().mid();
    }
}
