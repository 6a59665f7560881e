package org.epochrome.session.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.session.verdict.Remarks;
import org.epochrome.session.verdict.Remedy;
import org.epochrome.session.verdict.Verdict;
import org.epochrome.text.Message;

/**
 * How good a result is, and whether it can be trusted.
 *
 * @param verdict the line for people
 * @param level its level in a word
 * @param alignment how the colours are aligned, in a word or a few
 * @param diagnoses what is probably wrong
 * @param warnings what may be wrong
 * @param information what was found or decided
 */
record QualityObject(
        FringePx fringePx,
        Message verdict,
        String level,
        String alignment,
        List<Explanation> diagnoses,
        List<Message> warnings,
        List<Message> information) {

    /** Misalignment of the colours in a simple stack and in the result, with standard errors. */
    record FringePx(double before, double beforeSigma, double after, double sigma) {}

    /** A diagnosis. */
    record Explanation(String cause, List<String> files, Message words, String confidence, Optional<Message> remedy) {
        static Explanation of(Diagnosis d) {
            return new Explanation(
                    word(d.cause()),
                    d.files().stream().map(Object::toString).toList(),
                    d.words(),
                    word(d.confidence()),
                    d.remedy().map(Remedy::words));
        }

        /** A constant as programs read it: words in lower case, joined by hyphens. */
        private static String word(Enum<?> constant) {
            return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    static QualityObject of(Combination c) {
        Combination.Quality q = c.quality();
        Verdict verdict = c.verdict();
        Remarks remarks = Remarks.of(c.warnings());
        return new QualityObject(
                new FringePx(
                        q.before().px(),
                        q.before().sigmaPx(),
                        q.after().px(),
                        q.after().sigmaPx()),
                verdict.words(),
                verdict.level().word(),
                q.alignment(),
                verdict.diagnoses().stream().map(Explanation::of).toList(),
                remarks.warnings(),
                remarks.information());
    }
}
