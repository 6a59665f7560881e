package org.epochrome.command.plan;

import static org.epochrome.plan.Quantity.arcsec;
import static org.epochrome.plan.Quantity.deg;
import static org.epochrome.plan.Quantity.time;

import java.util.List;
import org.epochrome.plan.Clock;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.limit.PlannedRecording;
import org.epochrome.plan.limit.RecordingSequence;
import org.epochrome.plan.night.SunCaution;
import org.epochrome.text.Message;

/** What is taken to the telescope: the recordings, and a list to tick off in the dark, without any colour. */
public final class Checklist {
    private Checklist() {}

    /** Prints the list on standard output. */
    public static void print(NightPlan plan) {
        PlainPage page = new PlainPage();
        Clock clock = new Clock(plan.settings().clock());
        page.println(Message.of(
                "plan.title",
                plan.settings().body().displayName(),
                plan.settings().date(),
                clock.name()));
        plan.warnings().forEach(w -> page.println(Message.of("plan.warning", w)));
        if (plan.night().caution() == SunCaution.TOO_NEAR) {
            return;
        }
        if (plan.sequence().isEmpty()) {
            plan.advice().forEach(a -> page.println(Message.of("plan.adviceLine", a)));
            return;
        }
        RecordingSequence sequence = plan.sequence().orElseThrow();
        page.println("");
        page.println(Message.text("plan.check.cool"));
        page.println(Message.text("plan.check.clock", clock.name()));
        page.println(Message.text("plan.check.focus"));
        plan.correction()
                .ifPresent(c -> page.println(Message.text(
                        "plan.check.corrector", arcsec(c.arcsec(), 2), deg(c.zenithAngleRoundedDeg(), 0))));
        for (PlannedRecording r : sequence.recordings()) {
            page.println(Message.text(
                    "plan.check.recording", clock.seconds(r.start()), r.band().name(), time(r.length())));
        }
        plan.events().stream()
                .filter(e -> e.observable()
                        && !e.utc().isBefore(sequence.start())
                        && !e.utc().isAfter(sequence.end()))
                .forEach(e -> page.println(Message.of("plan.check.event", clock.minutes(e.utc()), e.what())));
    }

    /** The recordings as a table. */
    static TextTable table(NightPlan plan, RecordingSequence sequence) {
        Clock clock = new Clock(plan.settings().clock());
        TextTable table = new TextTable(List.of(
                Message.text("plan.columnSet"),
                Message.text("plan.columnBand"),
                Message.text("plan.columnStart"),
                Message.text("plan.columnMid"),
                Message.text("plan.columnEnd"),
                Message.text("plan.columnLength"),
                Message.text("plan.columnAltitude")));
        for (PlannedRecording r : sequence.recordings()) {
            table.row(List.of(
                    Message.text("plan.setNumber", r.set()),
                    r.band().name(),
                    clock.seconds(r.start()),
                    clock.seconds(r.mid()),
                    clock.seconds(r.end()),
                    time(r.length()),
                    deg(plan.night().at(r.mid()).altitudeDeg(), 1)));
        }
        return table;
    }
}
