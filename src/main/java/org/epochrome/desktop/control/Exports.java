package org.epochrome.desktop.control;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.epochrome.desktop.style.Texts;
import org.epochrome.evidence.EvidenceReport;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.OverwriteGuard;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.report.Outputs;

/** Saves what is made of a session, as soon as its full picture is there. */
public final class Exports {
    private final Workspace bench;
    private final SessionController keeper;
    private final String version;

    /** @param version of the program, which files name */
    Exports(Workspace bench, SessionController keeper, String version) {
        this.bench = bench;
        this.keeper = keeper;
        this.version = version;
    }

    /** Saves a picture or the linear cube, the format by the suffix, as soon as it is made. */
    public void savePicture(Path path) {
        export(path, (c, outputs) -> new Outputs(List.of(path), Optional.empty(), outputs.look(), false, true)
                .write(c, version));
    }

    /** Saves the report for people (.html) or for programs (.json). */
    public void saveReport(Path path) {
        boolean forPeople = path.toString().toLowerCase(Locale.ROOT).endsWith(".html");
        export(path, (c, outputs) -> {
            if (forPeople) {
                String page = EvidenceReport.of(c, outputs, version);
                AtomicFile.write(path, true, part -> Files.writeString(part, page));
            } else {
                new Outputs(List.of(), Optional.of(path), outputs.look(), false, true).write(c, version);
            }
        });
    }

    /** Saves the globe as a map. */
    public void saveMap(Path path) {
        export(path, (c, outputs) -> new MapFile(path, OptionalInt.empty())
                .write(c, outputs.look(), outputs.overwrite(), version));
    }

    private interface Export {
        void write(Combination c, Outputs like);
    }

    private void export(Path path, Export export) {
        keeper.say(Texts.of("status.saving", path.getFileName()));
        bench.studio()
                .whenMade(
                        c -> write(path, export, c), () -> keeper.say(Texts.of("status.notSaved", path.getFileName())));
    }

    private void write(Path path, Export export, Combination c) {
        Outputs like = new Outputs(
                List.of(),
                Optional.empty(),
                bench.draft().session().orElseThrow().look(),
                false,
                true);
        keeper.inBackground(
                () -> {
                    OverwriteGuard.check(List.of(path), c.recipe().frames().files());
                    export.write(c, like);
                    return path;
                },
                done -> keeper.say(Texts.of("status.saved", path.getFileName())));
    }
}
