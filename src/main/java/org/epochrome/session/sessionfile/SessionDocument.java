package org.epochrome.session.sessionfile;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.epochrome.atmosphere.Air;
import org.epochrome.colour.finish.Look;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Encoding;
import org.epochrome.image.Passband;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Provenance;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.AbsentFrame;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.FileMark;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;

/**
 * What a session file contains, in its order; docs/session-file.md says what it means.
 *
 * @param format what says that a JSON file is a session
 * @param version of the format
 * @param tool the program that wrote it
 * @param assignment empty for that of the frames
 * @param frames what is chosen for each frame
 */
record SessionDocument(
        String format,
        int version,
        Optional<String> tool,
        Body body,
        Optional<Instant> epoch,
        Optional<Site> site,
        Optional<Air> air,
        Setup setup,
        Corrections corrections,
        Alignment alignment,
        Optional<Assignment> assignment,
        Optional<NameClock> clock,
        Optional<Map<String, Passband>> passbandsNm,
        Optional<Encoding> encoding,
        Optional<Map<String, Duration>> plannedLengths,
        List<FrameEntry> frames,
        Look look,
        Products outputs) {
    static final String FORMAT = "epochrome-session";

    static final int VERSION = 1;

    /**
     * The document of a session.
     *
     * @throws org.epochrome.io.file.FrameRefused if a frame is not there any more
     */
    static SessionDocument of(Session session, String program) {
        Recipe r = session.recipe();
        Conventions conventions = r.frames().conventions();
        return new SessionDocument(
                FORMAT,
                VERSION,
                Optional.of(Provenance.TOOL + " " + program),
                r.body(),
                r.epoch(),
                r.place().site(),
                r.place().air(),
                r.setup(),
                r.corrections(),
                r.alignment(),
                Optional.of(r.assignment()),
                Optional.of(conventions.clock()).filter(clock -> !clock.equals(NameClock.UNKNOWN)),
                Optional.of(conventions.passbands()).filter(passbands -> !passbands.isEmpty()),
                Optional.of(conventions.encoding()).filter(encoding -> !encoding.isLinear()),
                Optional.of(conventions.plannedLengths()).filter(planned -> !planned.isEmpty()),
                entries(r.frames()),
                session.look(),
                session.products());
    }

    private static List<FrameEntry> entries(Frames frames) {
        return Stream.concat(
                        frames.all().stream()
                                .map(f -> FrameEntry.of(
                                        f.request(),
                                        Optional.of(FileMark.of(f.head().file())),
                                        frames)),
                        frames.absent().stream().map(a -> FrameEntry.of(a.request(), a.mark(), frames)))
                .toList();
    }

    /**
     * The session, its frames found anew; those that cannot be used are kept apart.
     *
     * @throws FramesRefused if none of the frames can be used
     */
    Session session() {
        Conventions conventions = new Conventions(
                clock.orElse(NameClock.UNKNOWN),
                passbandsNm.orElse(Map.of()),
                encoding.orElse(Encoding.LINEAR),
                plannedLengths.orElse(Map.of()));
        List<DatedFrame> found = new ArrayList<>();
        List<AbsentFrame> absent = new ArrayList<>();
        Set<Path> leftOut = new HashSet<>();
        Map<Path, ManualDisk> disks = new HashMap<>();
        for (FrameEntry frame : frames) {
            FrameRequest request = frame.request();
            try {
                found.addAll(Frames.found(List.of(request), conventions));
            } catch (FramesRefused e) {
                absent.add(new AbsentFrame(request, frame.mark(), frame.problem(e)));
            }
            frame.leftOut().filter(out -> out).ifPresent(out -> leftOut.add(frame.file()));
            frame.disk().ifPresent(disk -> disks.put(frame.file(), disk));
        }
        if (found.isEmpty() && !absent.isEmpty()) {
            throw FramesRefused.absent(absent);
        }
        Recipe recipe = new Recipe(
                new Frames(found, conventions, leftOut, disks, absent),
                body,
                new Place(site, air),
                epoch,
                setup,
                corrections,
                alignment,
                assignment.orElseGet(() -> Assignment.usual(found)));
        return new Session(recipe, look, outputs);
    }
}
