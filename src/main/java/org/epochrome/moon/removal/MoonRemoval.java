package org.epochrome.moon.removal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.image.blur.RoundSpot;
import org.epochrome.job.Progress;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.MoonTrack;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.SpotFit;
import org.epochrome.moon.fit.MoonField;
import org.epochrome.moon.fit.MoonFit;
import org.epochrome.moon.fit.MoonSize;
import org.epochrome.moon.fit.SpotCandidate;
import org.epochrome.turn.Rotation;

/**
 * Takes companions out of the frames: first with nothing but zones for a ground, then, in some rounds, with the clouds that other
 * frames saw below them, and on the courses that follow from that. A frame's light is made once in a round; of it only windows
 * are kept.
 */
final class MoonRemoval {
    /** Rounds in which frames tell each other what they saw. */
    private static final int ROUNDS = 3;
    /**
     * Reach of the window in which frames are compared, in reaches of the spot: how bands go together differs from place to
     * place, so a wider one determines it less well.
     */
    private static final double WINDOW_REACHES = 1.4;
    /** How far from its course a companion may be found to be. */
    private static final double SEARCH_PX = 1;

    private final List<MoonFrame> frames;
    private final List<Plane> planes;
    private final List<MoonTrack> tracks;
    private final Instant epoch;
    private final DispersionDeconvolution.Extent unsmeared;
    private final Progress progress;
    private final Sightings sightings;
    private final List<Question> questions;
    private final SpotFit[][] held;
    private final Patch[][] patches;
    /** What was seen before this round: for each question, by each frame, null of those that are not asked. */
    private SurfaceSighting[][] told;

    /**
     * What is asked: which clouds a companion hides.
     *
     * @param frame the one in which it hides them
     * @param window where in that
     * @param witnesses the frames that are asked
     */
    private record Question(int frame, Region window, List<Integer> witnesses) {}

    /** Where a companion was found in a frame once other frames had shown the clouds there, and the light around it. */
    private record Again(SpotFit place, MoonField around) {}

    MoonRemoval(
            List<MoonFrame> frames,
            List<Rotation> rotations,
            List<Plane> planes,
            List<MoonTrack> tracks,
            Instant epoch,
            DispersionDeconvolution.Extent unsmeared,
            Progress progress) {
        this.frames = frames;
        this.planes = planes;
        this.tracks = new ArrayList<>(tracks);
        this.epoch = epoch;
        this.unsmeared = unsmeared;
        this.progress = progress;
        sightings = new Sightings(frames, rotations);
        held = new SpotFit[tracks.size()][frames.size()];
        patches = new Patch[tracks.size()][frames.size()];
        questions = questions();
        told = new SurfaceSighting[questions.size()][frames.size()];
    }

    private List<Question> questions() {
        List<Question> result = new ArrayList<>();
        for (MoonTrack track : tracks) {
            for (int i : track.held()) {
                List<Integer> witnesses = sightings.witnesses(i, track.companion());
                if (!witnesses.isEmpty()) {
                    MoonFrame frame = frames.get(i);
                    double reach =
                            WINDOW_REACHES * frame.spot(track.companion()).coreReachPx();
                    result.add(new Question(i, frame.around(track.companion(), reach), witnesses));
                }
            }
        }
        return result;
    }

    List<Moons.Taken> taken() {
        int rounds = questions.isEmpty() ? 0 : ROUNDS;
        for (int round = 0; round <= rounds; round++) {
            visitAll(round == 0, round == rounds);
        }
        return IntStream.range(0, tracks.size())
                .mapToObj(k -> Moons.Taken.of(tracks.get(k), Arrays.asList(held[k]), Arrays.asList(patches[k])))
                .toList();
    }

    /** A round: takes companions out of each frame that holds some, and lets it tell what it sees without them. */
    private void visitAll(boolean first, boolean last) {
        SurfaceSighting[][] telling = new SurfaceSighting[questions.size()][frames.size()];
        Again[][] again = new Again[tracks.size()][frames.size()];
        IntStream.range(0, frames.size()).parallel().forEach(i -> {
            boolean holds = tracks.stream().anyMatch(t -> t.places().get(i) != null);
            boolean asked = questions.stream().anyMatch(q -> q.witnesses.contains(i));
            progress.check();
            if (holds || (first && asked)) {
                MoonField zones = without(i);
                visit(i, first, last, zones, again);
                if (asked && !last) {
                    tell(i, zones, telling);
                }
            } else {
                // it sees what it saw
                for (int q = 0; q < questions.size(); q++) {
                    telling[q][i] = told[q][i];
                }
            }
        });
        told = telling;
        for (int k = 0; !first && !last && k < tracks.size(); k++) {
            tracks.set(k, anew(tracks.get(k), Arrays.asList(again[k])));
        }
    }

    private void visit(int index, boolean first, boolean last, MoonField zones, Again[][] again) {
        if (first) {
            take(index, zones);
            if (tracks.size() > 1) {
                take(index, zones);
            }
            return;
        }
        MoonField field = informed(index, zones);
        take(index, field);
        for (int k = 0; !last && k < tracks.size(); k++) {
            if (holds(k, index)) {
                MoonOrShadow companion = tracks.get(k).companion();
                patches[k][index].add(field.light(), 1);
                again[k][index] = new Again(
                        new MoonFit(field, companion, SEARCH_PX).free(SEARCH_PX),
                        SpotCandidate.around(field, companion.at(field.frame().mid())));
                patches[k][index].add(field.light(), -1);
            }
        }
    }

    private boolean holds(int track, int frame) {
        return tracks.get(track).places().get(frame) != null;
    }

    /** Takes each out of a frame, without the others if they were taken out before. */
    private void take(int index, MoonField field) {
        for (int k = 0; k < tracks.size(); k++) {
            if (holds(k, index)) {
                if (patches[k][index] != null) {
                    patches[k][index].add(field.light(), 1);
                }
                MoonOrShadow companion = tracks.get(k).companion();
                MoonFit fit = new MoonFit(field, companion, 0);
                held[k][index] = fit.held();
                patches[k][index] = Patch.of(field, companion, fit, held[k][index], epoch, unsmeared);
                patches[k][index].add(field.light(), -1);
            }
        }
    }

    /** The course, and the size of a moon that no ephemeris predicts, from what was found in the frames; null where it is rejected. */
    private static MoonTrack anew(MoonTrack track, List<Again> again) {
        MoonTrack on = track.through(
                again.stream().map(a -> a == null ? null : a.place).toList());
        MoonOrShadow companion = on.companion();
        return companion.name().isPresent() || companion.shadow()
                ? on
                : on.sized(MoonSize.sized(
                        companion,
                        again.stream()
                                .filter(Objects::nonNull)
                                .map(Again::around)
                                .toList()));
    }

    /** A frame without the companions that were taken out so far, on its zones. */
    private MoonField without(int index) {
        MoonField field = MoonField.of(frames.get(index), planes.get(index));
        for (int k = 0; k < tracks.size(); k++) {
            if (patches[k][index] != null) {
                patches[k][index].add(field.light(), -1);
            }
        }
        return field;
    }

    /** The light around the companions, on the ground as other frames saw it. */
    private MoonField informed(int index, MoonField zones) {
        MoonField field = new MoonField(
                zones.frame(), zones.light(), zones.even().copy(), zones.rough().copy());
        for (int q = 0; q < questions.size(); q++) {
            Question question = questions.get(q);
            if (question.frame == index) {
                SurfaceSighting[] sights = told[q];
                new Background(
                                zones,
                                question.window,
                                cover(index, question.window),
                                question.witnesses.stream().map(w -> sights[w]).toList())
                        .lay(field.even(), field.rough());
            }
        }
        return field;
    }

    /** Tells others what a frame sees without companions; changes its light to that below them, however badly known. */
    private void tell(int index, MoonField field, SurfaceSighting[][] telling) {
        Plane doubt = new Plane(field.light().width(), field.light().height());
        for (int k = 0; k < tracks.size(); k++) {
            if (holds(k, index)) {
                patches[k][index].bare(field.light(), doubt);
            }
        }
        for (int q = 0; q < questions.size(); q++) {
            Question question = questions.get(q);
            if (question.witnesses.contains(index)) {
                telling[q][index] = sightings.seen(question.frame, question.window, index, field, doubt);
            }
        }
    }

    /** How much of a window's pixels companions cover. */
    private Plane cover(int index, Region window) {
        MoonFrame frame = frames.get(index);
        Plane cover = new Plane(window.width(), window.height());
        for (int k = 0; k < tracks.size(); k++) {
            if (holds(k, index)) {
                MoonOrShadow companion = tracks.get(k).companion();
                SkyPoint place = companion.at(frame.mid());
                RoundSpot spot = frame.spot(companion);
                for (int y = 0; y < window.height(); y++) {
                    for (int x = 0; x < window.width(); x++) {
                        double more = spot.at(window.left() + x - frame.x(place), window.top() + y - frame.y(place));
                        cover.set(x, y, (float) Math.max(cover.at(x, y), more));
                    }
                }
            }
        }
        return cover;
    }
}
