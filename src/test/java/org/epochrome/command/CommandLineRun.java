package org.epochrome.command;

import org.epochrome.command.terminal.StandardOutput;

/** The command line as tests of other packages run it. */
public final class CommandLineRun {
    private CommandLineRun() {}

    public static int exitCode(String... words) {
        return Main.run(StandardOutput.FILE, words);
    }
}
