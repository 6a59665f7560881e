package org.epochrome.about;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.Properties;

/**
 * Which build of the program is running.
 *
 * @param version such as 1.0.0, or {@link #DEVELOPMENT} if the program does not run from its jar
 * @param commit the change it was built from; none if it was not built in a clone
 */
public record Release(String version, Optional<Commit> commit) {
    /** The version of a program that is not packed. */
    public static final String DEVELOPMENT = "development";

    /** The build that is running. */
    public static final Release THIS = new Release(packedVersion(), readCommit());

    /**
     * The state of the sources.
     *
     * @param id the commit's hash, shortened to ten digits
     * @param date its day, UTC, ISO 8601
     * @param modified whether files had changed since
     */
    public record Commit(String id, String date, boolean modified) {}

    private static String packedVersion() {
        String version = Release.class.getPackage().getImplementationVersion();
        return version == null ? DEVELOPMENT : version;
    }

    private static Optional<Commit> readCommit() {
        Properties facts = new Properties();
        try (InputStream in = Release.class.getResourceAsStream("commit.properties")) {
            if (in == null) {
                return Optional.empty();
            }
            facts.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Optional.of(new Commit(
                facts.getProperty("git.commit.id.full").substring(0, 10),
                facts.getProperty("git.commit.time").substring(0, 10),
                Boolean.parseBoolean(facts.getProperty("git.dirty"))));
    }
}
