package org.epochrome.desktop.state;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Encoding;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.AbsentFrame;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.SessionSplit;

/**
 * All that is on the bench, immutable: what undo goes back to.
 *
 * @param session the session, as soon as the planet is known
 * @param loose frames that wait for the planet to be named
 * @param unsettled files that wait for a band or a time
 * @param others frames of other nights or planets, a draft for each; they have no others themselves
 */
public record Draft(
        Optional<Session> session, List<DatedFrame> loose, List<UnidentifiedFile> unsettled, List<Draft> others) {
    public static final Draft EMPTY = new Draft(Optional.empty(), List.of(), List.of(), List.of());

    public Draft {
        loose = List.copyOf(loose);
        unsettled = List.copyOf(unsettled);
        others = List.copyOf(others);
    }

    /**
     * What sessions begin with.
     *
     * @param place where the telescope stands
     * @param clock what times in file names mean
     * @param planned what was planned for a night; its lengths hold for frames of that night
     */
    public record Beginning(Place place, NameClock clock, Optional<PlannedNight> planned) {
        public static final Beginning UNKNOWN = new Beginning(Place.UNKNOWN, NameClock.UNKNOWN, Optional.empty());
    }

    public static Draft of(Session session) {
        return new Draft(Optional.of(session), List.of(), List.of(), List.of());
    }

    public boolean isEmpty() {
        return session.isEmpty() && loose.isEmpty() && unsettled.isEmpty() && others.isEmpty();
    }

    public Optional<Recipe> recipe() {
        return session.map(Session::recipe);
    }

    /** Frames of the session, or those that wait. */
    public List<DatedFrame> frames() {
        return session.map(s -> s.recipe().frames().all()).orElse(loose);
    }

    /** The draft with another session. */
    public Draft with(UnaryOperator<Session> change) {
        return new Draft(session.map(change), loose, unsettled, others);
    }

    /** The draft with another recipe. */
    public Draft recipe(UnaryOperator<Recipe> change) {
        return with(s -> s.with(change.apply(s.recipe())));
    }

    private Draft others(List<Draft> next) {
        return new Draft(session, loose, unsettled, next);
    }

    /**
     * With more frames; one that is there already is exchanged. Frames of another night or planet than the present ones are
     * kept apart. If the planet is known now, a session begins.
     *
     * @param beginning what a session begins with
     */
    public Draft plus(List<DatedFrame> found, List<UnidentifiedFile> open, Beginning beginning) {
        Set<Path> settled = found.stream().map(f -> f.head().file()).collect(Collectors.toSet());
        Map<Path, UnidentifiedFile> asks = new LinkedHashMap<>();
        unsettled.stream().filter(u -> !settled.contains(u.file())).forEach(u -> asks.put(u.file(), u));
        open.forEach(u -> asks.put(u.file(), u));
        Draft waiting = new Draft(session, loose, new ArrayList<>(asks.values()), others);
        Map<Path, DatedFrame> all = new LinkedHashMap<>();
        frames().forEach(f -> all.put(f.head().file(), f));
        Set<Path> before = new HashSet<>(all.keySet());
        found.forEach(f -> all.put(f.head().file(), f));
        List<SessionSplit.Part> parts = SessionSplit.of(
                all.values().stream().map(f -> ofThisPlanet(f, before)).toList());
        Set<Path> own = own(parts, before);
        Draft next = waiting.joined(
                all.values().stream().filter(f -> own.contains(f.head().file())).toList(), beginning);
        for (SessionSplit.Part part : parts) {
            List<DatedFrame> apart = part.frames().stream()
                    .filter(f -> !own.contains(f.head().file()))
                    .toList();
            next = apart.isEmpty() ? next : next.apart(apart, beginning);
        }
        return next;
    }

    /** A frame that is here already shows the planet of the session, whatever its header says. */
    private DatedFrame ofThisPlanet(DatedFrame f, Set<Path> before) {
        return session.isPresent() && before.contains(f.head().file())
                ? new DatedFrame(
                        f.request(),
                        f.head(),
                        f.band(),
                        f.timing(),
                        Optional.of(session.get().recipe().body()),
                        f.encoding())
                : f;
    }

    /** Files of the parts to which present frames belong, or of the largest part. */
    private static Set<Path> own(List<SessionSplit.Part> parts, Set<Path> before) {
        Set<Path> own = new HashSet<>(before);
        List<SessionSplit.Part> chosen = before.isEmpty()
                ? parts.stream()
                        .max(Comparator.comparingInt(p -> p.frames().size()))
                        .map(List::of)
                        .orElse(List.of())
                : parts.stream()
                        .filter(p -> files(p.frames()).stream().anyMatch(before::contains))
                        .toList();
        chosen.forEach(p -> own.addAll(files(p.frames())));
        return own;
    }

    private static Set<Path> files(List<DatedFrame> frames) {
        return frames.stream().map(f -> f.head().file()).collect(Collectors.toSet());
    }

    /** With some frames in the place of those that are there. */
    private Draft joined(List<DatedFrame> frames, Beginning beginning) {
        if (session.isPresent()) {
            return recipe(r -> exchanged(r, frames));
        }
        Draft waiting = new Draft(Optional.empty(), frames, unsettled, others);
        return waiting.named().map(body -> waiting.about(body, beginning)).orElse(waiting);
    }

    private static Recipe exchanged(Recipe recipe, List<DatedFrame> frames) {
        Frames known = recipe.frames();
        Set<Path> names = files(frames).stream().map(Path::getFileName).collect(Collectors.toSet());
        Frames next = known.with(frames)
                .forgetting(a -> names.contains(a.request().file().getFileName()));
        boolean usual = recipe.assignment().equals(Assignment.usual(known.all()));
        return usual ? recipe.with(next).with(Assignment.usual(frames)) : recipe.with(next);
    }

    /** With frames that belong to one of the other sessions, or begin one more. */
    private Draft apart(List<DatedFrame> frames, Beginning beginning) {
        List<Draft> next = new ArrayList<>(others);
        for (int i = 0; i < next.size(); i++) {
            List<DatedFrame> both = new ArrayList<>(next.get(i).frames());
            both.addAll(frames);
            if (SessionSplit.of(both).size() == 1) {
                next.set(i, next.get(i).plus(frames, List.of(), beginning));
                return others(next);
            }
        }
        next.add(EMPTY.plus(frames, List.of(), beginning));
        return others(next);
    }

    /** One of the other sessions in the place of this one, which becomes one of them. */
    public Draft exchangedFor(Draft other) {
        List<Draft> rest = new ArrayList<>(others);
        rest.remove(other);
        Draft own = new Draft(session, loose, List.of(), List.of());
        if (!own.isEmpty()) {
            rest.add(own);
        }
        return new Draft(other.session, other.loose, unsettled, rest);
    }

    /** With the frames of one of the other sessions among its own, whatever night and planet they are of. */
    public Draft merged(Draft other, Beginning beginning) {
        List<DatedFrame> all = new ArrayList<>(frames());
        all.addAll(other.frames());
        return withoutOther(other).joined(all, beginning);
    }

    /** Without one of the other sessions. */
    public Draft withoutOther(Draft other) {
        return others(others.stream().filter(o -> !o.equals(other)).toList());
    }

    /** The planet that headers or names give, if they agree. */
    public Optional<Body> named() {
        Set<Body> bodies = loose.stream().flatMap(f -> f.object().stream()).collect(Collectors.toSet());
        return bodies.size() == 1 ? Optional.of(bodies.iterator().next()) : Optional.empty();
    }

    /** A session of the frames that waited. */
    public Draft about(Body body, Beginning beginning) {
        Recipe recipe = Recipe.usual(loose, body).with(beginning.place());
        Frames frames = recipe.frames()
                .with(new Conventions(
                        beginning.clock(),
                        Map.of(),
                        Encoding.LINEAR,
                        beginning.planned().map(p -> p.lengthsFor(body, loose)).orElse(Map.of())));
        return new Draft(Optional.of(Session.usual(recipe.with(frames))), List.of(), unsettled, others);
    }

    /** Frames of the session that cannot be used. */
    public List<AbsentFrame> absent() {
        return recipe().map(r -> r.frames().absent()).orElse(List.of());
    }

    /** Without some files, wherever they are. */
    public Draft without(Set<Path> files) {
        Draft next = new Draft(
                session.map(s -> s.with(without(s.recipe(), files))),
                loose.stream().filter(f -> !files.contains(f.head().file())).toList(),
                unsettled.stream().filter(u -> !files.contains(u.file())).toList(),
                others);
        boolean nothing = next.frames().isEmpty() && next.absent().isEmpty();
        return nothing ? new Draft(Optional.empty(), List.of(), next.unsettled, others) : next;
    }

    private static Recipe without(Recipe recipe, Set<Path> files) {
        Frames frames = recipe.frames();
        Map<Path, ManualDisk> disks = new HashMap<>(frames.disks());
        disks.keySet().removeAll(files);
        Set<Path> leftOut = new HashSet<>(frames.leftOut());
        leftOut.removeAll(files);
        List<DatedFrame> rest = frames.all().stream()
                .filter(f -> !files.contains(f.head().file()))
                .toList();
        return exchanged(
                recipe.with(frames.holding(disks)
                        .leavingOut(leftOut)
                        .forgetting(a -> files.contains(a.request().file()))),
                rest);
    }

    /** The dates of the frames, UTC, from the first to the last. */
    public List<LocalDate> dates() {
        return frames().stream()
                .map(f -> f.timing().span().mid().atZone(ZoneOffset.UTC).toLocalDate())
                .distinct()
                .sorted()
                .toList();
    }
}
