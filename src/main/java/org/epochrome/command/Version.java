package org.epochrome.command;

import org.epochrome.about.Release;
import org.epochrome.text.Message;
import picocli.CommandLine.IVersionProvider;

/** The program's version, with the change it was built from. */
final class Version implements IVersionProvider {
    static final String NUMBER = Release.THIS.version();

    @Override
    public String[] getVersion() {
        return new String[] {of(Release.THIS)};
    }

    static String of(Release release) {
        return release.commit()
                .map(c -> Message.text(
                        c.modified() ? "run.version.modified" : "run.version.commit",
                        release.version(),
                        c.id(),
                        c.date()))
                .orElseGet(() -> Message.text("run.version", release.version()));
    }
}
