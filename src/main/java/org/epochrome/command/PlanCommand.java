package org.epochrome.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.epochrome.command.plan.Checklist;
import org.epochrome.command.plan.PlanOptions;
import org.epochrome.command.plan.PlanText;
import org.epochrome.evidence.plan.PlanFile;
import org.epochrome.evidence.plan.PlanTable;
import org.epochrome.io.file.OverwriteGuard;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.PlanSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a night allows: how long to record, when, and what the air does. */
@Command(name = "plan", sortOptions = false)
final class PlanCommand implements Callable<Integer> {
    @Mixin
    private PlanOptions options;

    @Option(names = "--checklist")
    private boolean checklist;

    @Option(names = "--csv")
    private boolean csv;

    @Option(
            names = {"-r", "--report"},
            paramLabel = "FILE.json|.html|.csv|.ics")
    private List<Path> reports = new ArrayList<>();

    @Option(names = "--overwrite")
    private boolean overwrite;

    @Override
    public Integer call() {
        List<PlanFile> files = reports.stream().map(PlanFile::new).toList();
        files.forEach(f -> f.check(overwrite));
        OverwriteGuard.check(reports, options.inputs());
        PlanSettings settings = options.settings();
        NightPlan plan = NightPlan.of(settings);
        if (csv) {
            System.out.print(PlanTable.csv(plan));
        } else if (checklist) {
            Checklist.print(plan);
        } else {
            PlanText.print(plan);
        }
        files.forEach(f -> f.write(plan, overwrite, Version.NUMBER));
        return 0;
    }
}
