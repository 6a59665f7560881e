package org.epochrome.command;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.stream.Stream;
import org.epochrome.command.option.SessionOptions;
import org.epochrome.command.terminal.TerminalPage;
import org.epochrome.command.terminal.TerminalProgress;
import org.epochrome.evidence.EvidenceFile;
import org.epochrome.io.file.OutputFolder;
import org.epochrome.io.file.OverwriteGuard;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.product.ProductFile;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.report.Outputs;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.session.verdict.Remarks;
import org.epochrome.text.Message;
import org.epochrome.time.UtcText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The main job: frames in, one colour picture out. */
@Command(name = "combine", sortOptions = false)
final class CombineCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private SessionOptions options;

    @Option(names = "--save-session", paramLabel = "FILE.json")
    private Path saved;

    @Option(names = "--overwrite")
    private boolean overwrite;

    @Option(names = {"-q", "--quiet"})
    private boolean quiet;

    @Option(names = "--threads", paramLabel = "N")
    private Integer threads;

    @Override
    public Integer call() {
        SessionFile.Opened opened = options.session();
        Session session = opened.session();
        Recipe recipe = session.recipe();
        Products products = named(session.products(), recipe);
        Outputs outputs = Outputs.of(session.with(products), overwrite);
        guard(products, session);
        check(products, outputs);
        TerminalProgress progress = new TerminalProgress(!quiet);
        Combination combination = inPool(() -> {
            Combination made = new Combiner(recipe).combine(progress);
            progress.end();
            write(session, products, outputs, made);
            return made;
        });
        if (!quiet) {
            TerminalPage page = TerminalPage.out();
            Summary.print(combination, outputs, page);
            more(products).forEach(product -> page.println(Message.text("run.wrote", product.file())));
            Optional.ofNullable(saved).ifPresent(file -> page.println(Message.text("run.wrote", file)));
            Summary.verdict(combination, page);
        }
        Remarks remarks = Remarks.of(combination.warnings());
        Message.texts(remarks.warnings()).forEach(TerminalPage::warning);
        opened.notes().forEach(TerminalPage::note);
        Message.texts(remarks.information()).forEach(TerminalPage::note);
        recipe.frames().used().forEach(f -> f.notes()
                .forEach(n -> TerminalPage.note(f.head().file().getFileName() + ": " + n)));
        return 0;
    }

    /** No output may be an input, but the session that was read may be saved under its own name: it is no frame. */
    private void guard(Products products, Session session) {
        List<Path> files = new ArrayList<>(products.files());
        List<Path> inputs = options.inputs(session);
        OverwriteGuard.check(files, inputs);
        Optional.ofNullable(saved).ifPresent(files::add);
        inputs.removeAll(options.sessionFiles());
        OverwriteGuard.check(files, inputs);
    }

    /** The products besides pictures and the report for programs. */
    private static List<ProductFile> more(Products products) {
        return Stream.<Optional<? extends ProductFile>>of(
                        products.map(), products.turning(), products.evidence().map(EvidenceFile::new))
                .<ProductFile>flatMap(Optional::stream)
                .toList();
    }

    private void check(Products products, Outputs outputs) {
        outputs.check();
        more(products).forEach(product -> product.check(overwrite));
        if (saved != null && !SessionFile.isName(saved)) {
            throw new ParameterException(spec.commandLine(), Message.text("option.sessionName", saved));
        }
        Optional.ofNullable(saved).ifPresent(file -> OutputFolder.checkFree(file, overwrite));
    }

    private void write(Session session, Products products, Outputs outputs, Combination combination) {
        outputs.write(combination, Version.NUMBER);
        more(products).forEach(product -> product.write(combination, session.look(), overwrite, Version.NUMBER));
        Optional.ofNullable(saved).ifPresent(file -> SessionFile.write(session, file, Version.NUMBER, overwrite));
    }

    /** Does all the work, from reading to writing, in as many threads as were asked for. */
    private <T> T inPool(Callable<T> work) {
        int count = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        if (count < 1) {
            throw new ParameterException(spec.commandLine(), Message.text("option.threads"));
        }
        ForkJoinPool pool = new ForkJoinPool(count);
        try {
            return pool.invoke(ForkJoinTask.adapt(work));
        } catch (RuntimeException e) {
            throw Causes.original(e);
        } finally {
            pool.shutdown();
        }
    }

    /** The files that are wanted, or else a picture of the usual name. */
    private static Products named(Products products, Recipe recipe) {
        if (!products.pictures().isEmpty()) {
            return products;
        }
        Instant shown = Combiner.epoch(recipe);
        String stamp = UtcText.format(shown).replaceAll("[:]", "").replaceAll("\\.\\d+", "");
        Path file = Path.of(recipe.body().displayName().toLowerCase(Locale.ROOT) + "-" + stamp + ".png");
        return products.with(Products::pictures, List.of(file));
    }
}
