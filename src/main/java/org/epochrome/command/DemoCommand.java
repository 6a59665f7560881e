package org.epochrome.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.epochrome.command.terminal.TerminalPage;
import org.epochrome.demo.DemoSessions;
import org.epochrome.text.Message;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Invented sessions to try the program on. */
@Command(name = "demo", sortOptions = false)
final class DemoCommand implements Callable<Integer> {
    @Parameters(paramLabel = "DIR", descriptionKey = "folder")
    private Path folder;

    @Option(names = "--overwrite")
    private boolean overwrite;

    @Override
    public Integer call() {
        DemoSessions.write(folder, overwrite);
        TerminalPage.out().println(Message.text("run.wroteDemo", folder));
        return 0;
    }
}
