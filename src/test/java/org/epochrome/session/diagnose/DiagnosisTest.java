package org.epochrome.session.diagnose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.verdict.Remedy;
import org.epochrome.session.verdict.Verdict;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Some of the wrong and clean sessions; {@link DiagnosisFigures} goes through all of them. The frames come from the ray
 * caster of the demo, which shares no geometry with the engine.
 */
@Tag("session")
class DiagnosisTest {
    private static final Set<String> SOME = Set.of(
            "R five minutes late",
            "G five minutes late",
            "B a day late",
            "times in reverse",
            "a frame twice",
            "G rotated by 5 degrees",
            "north 180 degrees off");

    @TempDir
    private Path folder;

    @Test
    void wrongInputsAreNamed() {
        WrongInputs inputs = new WrongInputs(folder);
        List<WrongInputs.Case> some =
                inputs.wrong().stream().filter(w -> SOME.contains(w.name())).toList();
        assertEquals(SOME.size(), some.size());
        for (WrongInputs.Case wrong : some) {
            Verdict verdict = DiagnosisFigures.verdict(wrong.recipe().get());
            assertTrue(DiagnosisFigures.names(verdict, wrong), wrong.name() + ": " + verdict);
            assertEquals(Verdict.Level.DOUBTFUL, verdict.level(), wrong.name());
        }
    }

    @Test
    void nothingIsSaidOfACleanSession() {
        Verdict verdict = DiagnosisFigures.verdict(new WrongInputs(folder).right(Evening.jupiter()));
        assertEquals(List.of(), verdict.diagnoses());
        assertEquals(Verdict.Level.GOOD, verdict.level(), verdict.toString());
    }

    /** The remedy of a late frame puts it where it was taken. */
    @Test
    void theRemedyIsTheRightTime() {
        WrongInputs inputs = new WrongInputs(folder);
        Evening evening = Evening.jupiter();
        Recipe wrong = inputs.later(evening, Duration.ofMinutes(5), 0);
        Remedy remedy =
                DiagnosisFigures.verdict(wrong).diagnoses().get(0).remedy().orElseThrow();
        Recipe mended = remedy.appliedTo(wrong);
        Instant mid = Schedule.of(mended).exposures().get(0).mid();
        assertEquals(evening.mid(0), mid);
        assertEquals(List.of(), DiagnosisFigures.verdict(mended).diagnoses());
    }
}
