package org.epochrome.session.recipe;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.epochrome.image.Encoding;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.read.FrameSource;
import org.epochrome.time.LeapSeconds;

/**
 * The frames of a session, and the user's settings for them.
 *
 * @param all frames with their bands and times, in the order given
 * @param conventions the settings common to all of them, by which bands and times were found
 * @param leftOut files that are not to be part of the picture, as the frames name them
 * @param disks disks set by hand, by file
 * @param absent frames that belong to it but cannot be used
 */
public record Frames(
        List<DatedFrame> all,
        Conventions conventions,
        Set<Path> leftOut,
        Map<Path, ManualDisk> disks,
        List<AbsentFrame> absent) {
    private static final int GREEN = 1;

    public Frames {
        all = List.copyOf(all);
        leftOut = Set.copyOf(leftOut);
        disks = Map.copyOf(disks);
        absent = List.copyOf(absent);
    }

    /** Frames that need no more words. */
    public static Frames of(List<DatedFrame> all) {
        return new Frames(all, Conventions.UNKNOWN, Set.of(), Map.of(), List.of());
    }

    /** These settings for other frames. */
    public Frames with(List<DatedFrame> others) {
        return new Frames(others, conventions, leftOut, disks, absent);
    }

    /** These frames with other conventions. */
    public Frames with(Conventions other) {
        return new Frames(all, other, leftOut, disks, absent);
    }

    /** These frames with another default encoding, used for each frame without an encoding of its own. */
    public Frames with(Encoding usual) {
        return new Frames(
                all.stream().map(f -> f.encoded(usual)).toList(),
                conventions.with(Conventions::encoding, usual),
                leftOut,
                disks,
                absent);
    }

    /** These frames with another set of files left out. */
    public Frames leavingOut(Set<Path> others) {
        return new Frames(all, conventions, others, disks, absent);
    }

    /** These frames with other disks set by hand. */
    public Frames holding(Map<Path, ManualDisk> others) {
        return new Frames(all, conventions, leftOut, others, absent);
    }

    /** These frames without some of those whose files are absent. */
    public Frames forgetting(Predicate<AbsentFrame> some) {
        return new Frames(
                all,
                conventions,
                leftOut,
                disks,
                absent.stream().filter(some.negate()).toList());
    }

    /** Frames that cannot be used but are not left out either. */
    public List<AbsentFrame> lacking() {
        return absent.stream()
                .filter(a -> !leftOut.contains(a.request().file()))
                .toList();
    }

    /**
     * Refuses to go on without a frame that is not left out.
     *
     * @throws FramesRefused if such a frame cannot be used
     */
    public void demandAll() {
        if (!lacking().isEmpty()) {
            throw FramesRefused.absent(lacking());
        }
    }

    /**
     * Finds out bands and times of files.
     *
     * @throws FramesRefused if some are refused; all of them are named
     */
    public static List<DatedFrame> found(List<FrameRequest> requests, Conventions conventions) {
        FrameSource source = new FrameSource(conventions.clock(), conventions.passbands(), LeapSeconds::taiMinusUtcS);
        List<DatedFrame> found = new ArrayList<>();
        List<FrameRefused> refused = new ArrayList<>();
        for (FrameRequest request : requests) {
            try {
                found.add(source.find(request).encoded(conventions.encoding()));
            } catch (FrameRefused e) {
                refused.add(e);
            }
        }
        if (!refused.isEmpty()) {
            throw new FramesRefused(refused);
        }
        return found;
    }

    /** The files of all frames, also of those that are left out or cannot be used. */
    public List<Path> files() {
        return Stream.concat(
                        all.stream().map(f -> f.head().file()),
                        absent.stream().map(a -> a.request().file()))
                .toList();
    }

    /** Those that make the picture. */
    public List<DatedFrame> used() {
        return all.stream().filter(f -> !leftOut.contains(f.head().file())).toList();
    }

    /** The disk that is set by hand, if one is. */
    public Optional<ManualDisk> held(Exposure exposure) {
        return Optional.ofNullable(disks.get(exposure.frame().head().file()));
    }

    /** Whether the disk's centre is fixed too. */
    public boolean placed(Exposure exposure) {
        boolean own = exposure.frame().band().band().isPresent() || exposure.planeIndex() == GREEN;
        return own && held(exposure).isPresent();
    }
}
