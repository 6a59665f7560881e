package org.epochrome.command.option;

import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.epochrome.command.terminal.TerminalPage;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.file.OverwriteGuard;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.schedule.SessionSplit;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.text.Message;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** All that is chosen about a combination: a session file's choices, and on top of them what was typed. */
public final class SessionOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private FrameOptions frames;

    @Option(
            names = {"-b", "--body"},
            paramLabel = "PLANET",
            converter = Texts.Planet.class)
    private Body body;

    @Option(
            names = {"-e", "--epoch"},
            paramLabel = "UTC",
            converter = Texts.Utc.class)
    private Instant epoch;

    @Option(names = "--together")
    private boolean together;

    @Mixin
    private AirOptions place;

    @Mixin
    private SetupOptions setup;

    @Mixin
    private CorrectionOptions corrections;

    @Mixin
    private HandOptions hand;

    @Mixin
    private AlignmentOptions alignment;

    @Mixin
    private AssignmentOptions assignment;

    @Mixin
    private FinishOptions finish;

    @Mixin
    private ProductOptions products;

    @Option(names = "--write-outside")
    private boolean writeOutside;

    /** What is to be done, and what the user should know about its session file. */
    public SessionFile.Opened session() {
        List<Path> files = frames.sessions();
        if (files.size() > 1) {
            throw new ParameterException(spec.commandLine(), Message.text("option.twoSessions", files.get(1)));
        }
        Optional<SessionFile.Opened> opened = files.stream().findFirst().map(SessionFile::read);
        Optional<Session> before = opened.map(SessionFile.Opened::session);
        before.ifPresent(s -> checkFolder(files.get(0), s.products()));
        Frames chosen =
                hand.over(frames.over(before.map(s -> s.recipe().frames()).orElse(Frames.of(List.of()))));
        checkOneSession(chosen.used());
        Body planet = planet(chosen.used(), before.map(s -> s.recipe().body()));
        Recipe usual = Recipe.usual(chosen.used(), planet);
        Session base = before.filter(s -> s.recipe().body() == planet)
                .orElseGet(() ->
                        before.map(s -> s.with(onOther(s.recipe(), planet))).orElse(Session.usual(usual)));
        Recipe r = base.recipe();
        Recipe recipe = new Recipe(
                chosen,
                planet,
                place.over(r.place()),
                Optional.ofNullable(epoch).or(r::epoch),
                setup.over(r.setup()),
                corrections.over(r.corrections(), planet),
                alignment.over(r.alignment(), chosen.all()),
                assignment.over(r.assignment()));
        return new SessionFile.Opened(
                new Session(recipe, finish.over(base.look()), products.over(base.products())),
                opened.map(SessionFile.Opened::notes).orElse(List.of()));
    }

    /** A session may come from a stranger: what it writes elsewhere than beside itself needs the user's consent. */
    private void checkFolder(Path session, Products wanted) {
        if (!writeOutside) {
            Path folder = session.toAbsolutePath().getParent();
            OverwriteGuard.firstOutside(products.kept(wanted), folder).ifPresent(file -> {
                throw new OutputRefused(
                        file,
                        Message.of(
                                "option.outside",
                                session.getFileName(),
                                file.toAbsolutePath().normalize()));
            });
        }
    }

    /** All files that the session is read from. */
    public List<Path> inputs(Session session) {
        List<Path> all = new ArrayList<>(session.recipe().frames().files());
        all.addAll(frames.tables());
        all.addAll(finish.whiteFrames());
        corrections.table().ifPresent(all::add);
        return all;
    }

    /** The session files among them. */
    public List<Path> sessionFiles() {
        return frames.sessions();
    }

    /** A recipe for another planet, turned by that planet's usual rotation. */
    private static Recipe onOther(Recipe r, Body planet) {
        return r.with(Recipe::body, planet).with(r.corrections().by(Corrections.usualSystem(planet)));
    }

    /** Frames of other nights are not merged unless the user wants it. */
    private void checkOneSession(List<DatedFrame> found) {
        List<SessionSplit.Part> nights = SessionSplit.nights(found);
        if (nights.size() > 1 && !together) {
            String list = nights.stream()
                    .map(night -> night.first().truncatedTo(ChronoUnit.MINUTES) + " "
                            + night.frames().stream()
                                    .map(f -> f.head().file().getFileName().toString())
                                    .collect(Collectors.joining(" ")))
                    .collect(Collectors.joining(", "));
            throw new InputsRefused(Message.text("frames.severalSessions", list, SessionSplit.LONGEST_PAUSE.toHours()));
        }
    }

    private Body planet(List<DatedFrame> found, Optional<Body> before) {
        Set<Body> named =
                found.stream().flatMap(f -> f.object().stream()).collect(Collectors.toCollection(LinkedHashSet::new));
        if (named.size() > 1 && !(together && body != null)) {
            String list = found.stream()
                    .filter(f -> f.object().isPresent())
                    .map(f -> f.head().file().getFileName() + " "
                            + f.object().get().displayName())
                    .collect(Collectors.joining(", "));
            throw new InputsRefused(Message.text("planet.several", list));
        }
        Optional<Body> said = Optional.ofNullable(body).or(() -> before);
        if (said.isEmpty() && named.isEmpty()) {
            throw new SessionRefused(Message.of("check.noBody"));
        }
        if (body != null && !named.isEmpty() && !named.contains(body)) {
            TerminalPage.note(
                    Message.text("planet.other", named.iterator().next().displayName(), body.displayName()));
        }
        return said.orElseGet(() -> named.iterator().next());
    }
}
