package org.epochrome.desktop.control;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.epochrome.colour.finish.Look;
import org.epochrome.desktop.style.Texts;
import org.epochrome.evidence.EvidenceFile;
import org.epochrome.evidence.plan.PlanFile;
import org.epochrome.io.file.OverwriteGuard;
import org.epochrome.plan.NightPlan;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.ProductFile;
import org.epochrome.session.product.TurningFile;
import org.epochrome.session.report.Outputs;

/** Saves what is made of a session, as soon as its full picture is there. */
public final class Exports {
    private final Workspace bench;
    private final SessionController controller;
    private final String version;

    /** @param version of the program, which files name */
    Exports(Workspace bench, SessionController controller, String version) {
        this.bench = bench;
        this.controller = controller;
        this.version = version;
    }

    /** Saves a picture or the linear cube, the format by the suffix, as soon as it is made. */
    public void savePicture(Path path) {
        export(path, (c, look) -> new Outputs(List.of(path), Optional.empty(), look, false, true).write(c, version));
    }

    /** Saves the report for people (.html) or for programs (.json). */
    public void saveReport(Path path) {
        boolean forPeople = path.toString().toLowerCase(Locale.ROOT).endsWith(".html");
        if (forPeople) {
            export(new EvidenceFile(path));
        } else {
            export(path, (c, look) -> new Outputs(List.of(), Optional.of(path), look, false, true).write(c, version));
        }
    }

    /** Saves the globe as a map. */
    public void saveMap(Path path) {
        saveMap(path, false);
    }

    /** Saves the globe as a map, with lines of longitude and latitude if they are wanted. */
    public void saveMap(Path path, boolean graticule) {
        export(new MapFile(path, OptionalInt.empty(), graticule));
    }

    /** Saves the turning globe as an animation. */
    public void saveTurning(Path path) {
        export(TurningFile.usual(path));
    }

    /** Saves several files, whose names tell what they are: maps end in -map, animations in -turning. */
    public void saveAll(List<Path> files) {
        for (Path file : files) {
            String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
            if (name.matches(".*-map\\.[a-z]+")) {
                saveMap(file);
            } else if (name.matches(".*-turning\\.[a-z]+")) {
                saveTurning(file);
            } else if (name.endsWith(".html") || name.endsWith(".json")) {
                saveReport(file);
            } else {
                savePicture(file);
            }
        }
    }

    /** Saves a plan, in the form that the file's extension names. */
    public void savePlan(NightPlan plan, Path path) {
        controller.inBackground(
                () -> {
                    PlanFile target = new PlanFile(path);
                    target.check(true);
                    target.write(plan, true, version);
                    return path;
                },
                done -> controller.say(Texts.of("status.saved", path.getFileName())));
    }

    private interface Export {
        void write(Combination c, Look look);
    }

    private void export(ProductFile product) {
        export(product.file(), (c, look) -> product.write(c, look, true, version));
    }

    private void export(Path path, Export export) {
        controller.say(Texts.of("status.saving", path.getFileName()));
        bench.renderer()
                .whenMade(
                        c -> write(path, export, c),
                        () -> controller.say(Texts.of("status.notSaved", path.getFileName())));
    }

    private void write(Path path, Export export, Combination c) {
        Look look = bench.draft().session().orElseThrow().look();
        controller.inBackground(
                () -> {
                    OverwriteGuard.check(List.of(path), c.recipe().frames().files());
                    export.write(c, look);
                    return path;
                },
                done -> controller.saySaved(path));
    }
}
