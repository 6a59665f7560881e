package org.epochrome.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.epochrome.command.terminal.TerminalPage;
import org.epochrome.demo.DemoSessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Invented sessions to try the program on. */
@Command(
        name = "demo",
        sortOptions = false,
        description = "Writes the demo sessions to a folder: invented planets rendered by ray casting, each with a"
                + " README that says what to run and what to expect.")
final class DemoCommand implements Callable<Integer> {
    @Parameters(paramLabel = "DIR", description = "Folder to write to; it is created if it does not exist.")
    private Path folder;

    @Option(names = "--overwrite", description = "Replace files that exist.")
    private boolean overwrite;

    @Override
    public Integer call() {
        DemoSessions.write(folder, overwrite);
        TerminalPage.out().println("wrote the demo sessions to " + folder);
        return 0;
    }
}
