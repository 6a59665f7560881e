package org.epochrome.session.diagnose;

import java.nio.file.Files;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.locate.NoDiskInFrame;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.verdict.Verdict;

/** Says of all wrong and clean sessions what the program says of them, as tables for the validation document. */
public final class DiagnosisFigures {
    private DiagnosisFigures() {}

    /**
     * Goes through the sessions.
     *
     * @param args a regular expression for their names; none for all
     */
    public static void main(String[] args) throws Exception {
        WrongInputs inputs = new WrongInputs(Files.createTempDirectory("figures"));
        Pattern wanted = Pattern.compile(args.length == 0 ? ".*" : args[0]);
        int right = 0;
        List<WrongInputs.Case> cases = inputs.wrong().stream()
                .filter(w -> wanted.matcher(w.name()).matches())
                .toList();
        for (WrongInputs.Case wrong : cases) {
            boolean named = false;
            String said;
            try {
                Verdict verdict = verdict(wrong.recipe().get());
                named = names(verdict, wrong);
                said = verdict.words().toString();
            } catch (NoDiskInFrame | FrameRefused e) {
                said = e.getMessage();
            }
            right += named ? 1 : 0;
            System.out.println("| " + wrong.name() + " | " + said + " | " + (named ? "yes" : "no") + " |");
        }
        System.out.println(right + " of " + cases.size() + " named rightly");
        List<WrongInputs.Clean> clean = inputs.clean().stream()
                .filter(c -> wanted.matcher(c.name()).matches())
                .toList();
        int alarms = 0;
        for (WrongInputs.Clean session : clean) {
            Verdict verdict = verdict(session.recipe().get());
            alarms += verdict.diagnoses().isEmpty() && verdict.level() != Verdict.Level.DOUBTFUL ? 0 : 1;
            System.out.println("| " + session.name() + " | " + verdict.words() + " |");
        }
        System.out.println(alarms + " false alarms in " + clean.size());
    }

    static Verdict verdict(Recipe recipe) {
        return new Combiner(recipe).combine(Progress.NONE).verdict();
    }

    /** Whether the first explanation is the right one. */
    static boolean names(Verdict verdict, WrongInputs.Case wrong) {
        return verdict.diagnoses().stream()
                .limit(1)
                .anyMatch(d -> wrong.cause().equals(Optional.of(d.cause()))
                        && d.words().toString().contains(wrong.words()));
    }
}
