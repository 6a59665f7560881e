package org.epochrome.command;

import java.util.concurrent.Callable;
import org.epochrome.about.Licences;
import org.epochrome.text.Message;
import picocli.CommandLine.Command;

/** Prints the licences of the program and of what it contains. */
@Command(name = "licences")
final class LicencesCommand implements Callable<Integer> {
    @Override
    public Integer call() {
        System.out.print(Licences.page(Message.text("run.licences")));
        return 0;
    }
}
