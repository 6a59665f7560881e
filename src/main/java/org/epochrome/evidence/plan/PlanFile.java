package org.epochrome.evidence.plan;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.epochrome.io.file.OutputFolder;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.plan.NightPlan;
import org.epochrome.session.report.Outputs;
import org.epochrome.text.Message;

/**
 * A plan as a file.
 *
 * @param file whose extension selects the form
 */
public record PlanFile(Path file) {
    private enum Form {
        JSON,
        HTML,
        CSV,
        ICS;

        String extension() {
            return "." + name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Refuses before any work what could not be written.
     *
     * @throws OutputRefused if the file exists and may not be replaced, or its extension is not a known one
     */
    public void check(boolean overwrite) {
        if (form().isEmpty()) {
            String known = Arrays.stream(Form.values()).map(Form::extension).collect(Collectors.joining(", "));
            throw new OutputRefused(file, Message.of("report.name", known));
        }
        OutputFolder.checkFree(file, overwrite);
    }

    /**
     * Writes the plan.
     *
     * @throws OutputRefused if it cannot be written
     */
    public void write(NightPlan plan, boolean overwrite, String version) {
        String text =
                switch (form().orElseThrow()) {
                    case JSON -> PlanJson.of(plan, version);
                    case HTML -> PlanPage.of(plan, version);
                    case CSV -> PlanTable.csv(plan);
                    case ICS -> PlanCalendar.of(plan);
                };
        Outputs.writeReport(file, text, overwrite);
    }

    private Optional<Form> form() {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return Arrays.stream(Form.values())
                .filter(f -> name.endsWith(f.extension()))
                .findFirst();
    }
}
