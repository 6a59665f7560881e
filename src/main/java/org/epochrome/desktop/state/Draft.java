package org.epochrome.desktop.state;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.AbsentFrame;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;

/**
 * All that is on the bench, immutable: what undo goes back to.
 *
 * @param session the session, as soon as the planet is known
 * @param loose frames that wait for the planet to be named
 * @param unsettled files that wait for a band or a time
 */
public record Draft(Optional<Session> session, List<DatedFrame> loose, List<UnidentifiedFile> unsettled) {
    public static final Draft EMPTY = new Draft(Optional.empty(), List.of(), List.of());

    public Draft {
        loose = List.copyOf(loose);
        unsettled = List.copyOf(unsettled);
    }

    public static Draft of(Session session) {
        return new Draft(Optional.of(session), List.of(), List.of());
    }

    public boolean isEmpty() {
        return session.isEmpty() && loose.isEmpty() && unsettled.isEmpty();
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
        return new Draft(session.map(change), loose, unsettled);
    }

    /** The draft with another recipe. */
    public Draft recipe(UnaryOperator<Recipe> change) {
        return with(s -> s.with(change.apply(s.recipe())));
    }

    /**
     * With more frames; one that is there already is exchanged. If the planet is known now, a session begins.
     *
     * @param place where the telescope stands if nothing else is said
     */
    public Draft plus(List<DatedFrame> found, List<UnidentifiedFile> open, Place place) {
        Set<Path> settled = found.stream().map(f -> f.head().file()).collect(Collectors.toSet());
        Map<Path, UnidentifiedFile> asks = new LinkedHashMap<>();
        unsettled.stream().filter(u -> !settled.contains(u.file())).forEach(u -> asks.put(u.file(), u));
        open.forEach(u -> asks.put(u.file(), u));
        Map<Path, DatedFrame> all = new LinkedHashMap<>();
        frames().forEach(f -> all.put(f.head().file(), f));
        found.forEach(f -> all.put(f.head().file(), f));
        List<DatedFrame> frames = new ArrayList<>(all.values());
        List<UnidentifiedFile> left = new ArrayList<>(asks.values());
        if (session.isPresent()) {
            Recipe recipe = session.get().recipe();
            Frames known = recipe.frames();
            Set<Path> names = settled.stream().map(Path::getFileName).collect(Collectors.toSet());
            Frames more = known.with(frames)
                    .forgetting(a -> names.contains(a.request().file().getFileName()));
            boolean usual = recipe.assignment().equals(Assignment.usual(known.all()));
            Recipe next = recipe.with(more);
            return new Draft(
                    session.map(s -> s.with(usual ? next.with(Assignment.usual(frames)) : next)), List.of(), left);
        }
        Draft waiting = new Draft(Optional.empty(), frames, left);
        return waiting.named().map(body -> waiting.about(body, place)).orElse(waiting);
    }

    /** The planet that the headers name, if they agree. */
    public Optional<Body> named() {
        Set<Body> bodies = loose.stream().flatMap(f -> f.object().stream()).collect(Collectors.toSet());
        return bodies.size() == 1 ? Optional.of(bodies.iterator().next()) : Optional.empty();
    }

    /** A session of the frames that waited. */
    public Draft about(Body body, Place place) {
        Recipe recipe = Recipe.usual(loose, body).with(place);
        return new Draft(Optional.of(Session.usual(recipe)), List.of(), unsettled);
    }

    /** Frames of the session that cannot be used. */
    public List<AbsentFrame> absent() {
        return recipe().map(r -> r.frames().absent()).orElse(List.of());
    }

    /** Without a file that does not help. */
    public Draft without(Path file) {
        return new Draft(
                session.map(s -> s.with(s.recipe().with(s.recipe().frames().forgetting(a -> a.request()
                        .file()
                        .equals(file))))),
                loose.stream().filter(f -> !f.head().file().equals(file)).toList(),
                unsettled.stream().filter(u -> !u.file().equals(file)).toList());
    }
}
