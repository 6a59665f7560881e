package org.epochrome.command;

import java.io.PrintWriter;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.epochrome.command.option.InputsRefused;
import org.epochrome.command.terminal.StandardOutput;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.file.VisibleText;
import org.epochrome.session.locate.NoDiskInFrame;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.schedule.Memory;
import org.epochrome.text.Message;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;

/** Where the program starts. */
@Command(
        name = "epochrome",
        resourceBundle = "org.epochrome.text.command",
        versionProvider = Version.class,
        mixinStandardHelpOptions = true,
        synopsisSubcommandLabel = "COMMAND",
        subcommands = {
            CombineCommand.class,
            InspectCommand.class,
            AspectCommand.class,
            PlanCommand.class,
            DemoCommand.class,
            LicencesCommand.class,
            CommandLine.HelpCommand.class
        })
public final class Main implements Runnable {
    private static final int USAGE = 2;
    private static final int INPUT_REFUSED = 3;
    private static final int NO_DISK = 4;
    private static final int OUTPUT_REFUSED = 5;
    private static final int BUG = 1;
    private static final char REPLACEMENT = '\ufffd';

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    private Main() {}

    public static void main(String[] args) {
        System.exit(run(StandardOutput.kind(), args));
    }

    /**
     * Runs a command line and returns its exit code.
     *
     * @param kind where standard output leads, on which it depends what a failure to write means
     */
    static int run(StandardOutput kind, String... args) {
        CommandLine line = commandLine();
        line.setCaseInsensitiveEnumValuesAllowed(true);
        UsageText.register(line);
        // A file may be called @a.fits; what stands in it are no words of the user's.
        line.setExpandAtFiles(false);

        line.setParameterExceptionHandler((e, a) -> usage(e));
        line.setExecutionExceptionHandler((e, c, parsed) -> explain(e, c.getErr()));
        Optional<String> unreadable =
                Arrays.stream(args).filter(Main::isUnreadable).findFirst();
        if (unreadable.isPresent()) {
            line.getErr().println(VisibleText.message(Message.text("run.locale", unreadable.get())));
            return INPUT_REFUSED;
        }
        try {
            int code = line.execute(args);
            return code == 0 ? heard(kind, line.getErr()) : code;
        } catch (OutOfMemoryError e) {
            line.getErr().println(Memory.exceeded());
            return INPUT_REFUSED;
        }
    }

    /** Java puts this sign in place of bytes that the locale does not know; no file can be found by it. */
    private static boolean isUnreadable(String word) {
        return word.indexOf(REPLACEMENT) >= 0;
    }

    /** The program with its commands. */
    static CommandLine commandLine() {
        CommandLine line = new CommandLine(new Main());
        line.getSubcommands().values().forEach(c -> c.getCommandSpec().mixinStandardHelpOptions(true));
        return line;
    }

    /** What was printed may not have arrived. That a reader wanted no more of it, as head does, is no error. */
    private static int heard(StandardOutput kind, PrintWriter err) {
        if (System.out.checkError() && kind != StandardOutput.PIPE) {
            err.println(Message.text("run.outputNotWritten"));
            return OUTPUT_REFUSED;
        }
        return 0;
    }

    @Override
    public void run() {
        spec.commandLine().usage(System.out);
    }

    private static int usage(ParameterException e) {
        PrintWriter err = e.getCommandLine().getErr();
        err.println(VisibleText.message(stopped(UsageText.of(e))));
        err.println(Message.text("run.help", e.getCommandLine().getCommandSpec().qualifiedName()));
        return USAGE;
    }

    private static int explain(Exception e, PrintWriter err) {
        Exception cause = e instanceof RuntimeException r ? Causes.original(r) : e;
        if (cause instanceof ParameterException p) {
            return usage(p);
        }
        int code = code(cause);
        if (code == BUG) {
            err.println(VisibleText.message(Message.text("run.bug", cause)));
            if (Boolean.getBoolean("epochrome.trace")) {
                cause.printStackTrace(err);
            }
        } else {
            String message = cause.getMessage();
            String sentences = cause instanceof SessionRefused
                    ? stopped(Character.toUpperCase(message.charAt(0)) + message.substring(1))
                    : message;
            Stream<String> each = cause instanceof FramesRefused ? sentences.lines() : Stream.of(sentences);
            each.map(VisibleText::message).forEach(err::println);
        }
        return code;
    }

    /** With the full stop that picocli's own messages lack. */
    private static String stopped(String sentence) {
        return sentence.endsWith(".") ? sentence : sentence + ".";
    }

    private static int code(Exception cause) {
        if (cause instanceof SessionRefused) {
            return USAGE;
        }
        if (cause instanceof FrameRefused || cause instanceof FramesRefused || cause instanceof InputsRefused) {
            return INPUT_REFUSED;
        }
        if (cause instanceof NoDiskInFrame) {
            return NO_DISK;
        }
        return cause instanceof OutputRefused ? OUTPUT_REFUSED : BUG;
    }
}
