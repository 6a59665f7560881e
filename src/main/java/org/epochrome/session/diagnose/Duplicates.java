package org.epochrome.session.diagnose;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLongArray;
import org.epochrome.image.Plane;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.verdict.Confidence;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.session.verdict.Remedy;
import org.epochrome.text.Message;

/** Frames with the same pixels: noise never repeats itself, so they are one frame under two names. */
public final class Duplicates {
    private static final long FNV_START = 0xcbf29ce484222325L;
    private static final long FNV_PRIME = 0x100000001b3L;

    private final List<Exposure> exposures;
    private final AtomicLongArray marks;

    public Duplicates(List<Exposure> exposures) {
        this.exposures = List.copyOf(exposures);
        marks = new AtomicLongArray(exposures.size());
    }

    /** Looks at the pixels of an exposure as they were read, and returns them. */
    public Plane seen(int index, Plane plane) {
        long mark = FNV_START ^ plane.width();
        for (float value : plane.data()) {
            mark = (mark ^ Float.floatToRawIntBits(value)) * FNV_PRIME;
        }
        marks.set(index, mark);
        return plane;
    }

    /** A diagnosis for each pair. The frame to be left out is the one that others contradict, else the second. */
    List<Diagnosis> found(Set<Path> contradicted) {
        List<Diagnosis> found = new ArrayList<>();
        for (int i = 0; i < exposures.size(); i++) {
            for (int k = i + 1; k < exposures.size(); k++) {
                if (marks.get(i) == marks.get(k)
                        && !Objects.equals(
                                exposures.get(i).frame(), exposures.get(k).frame())) {
                    found.add(pair(exposures.get(i), exposures.get(k), contradicted));
                }
            }
        }
        return found;
    }

    private static Diagnosis pair(Exposure one, Exposure other, Set<Path> contradicted) {
        Path first = one.frame().head().file();
        Path second = other.frame().head().file();
        Path out = contradicted.contains(first) ? first : second;
        return new Diagnosis(
                Diagnosis.Cause.DUPLICATE,
                List.of(first, second),
                Message.of("diagnosis.duplicate", one.name(), other.name()),
                Confidence.SURE,
                first.equals(second) ? Optional.empty() : Optional.of(new Remedy.Without(Set.of(out))));
    }
}
