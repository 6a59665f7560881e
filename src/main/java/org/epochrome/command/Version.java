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
        if (release.commit().isEmpty()) {
            return Message.text("run.version", release.version());
        }
        Release.Commit commit = release.commit().get();
        return commit.modified()
                ? Message.text("run.version.modified", release.version(), commit.id(), commit.date())
                : Message.text("run.version.commit", release.version(), commit.id(), commit.date());
    }
}
