package org.epochrome.robustness;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.epochrome.desktop.recovery.RecoveryFile;
import org.epochrome.desktop.recovery.RecoveryFolder;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.sessionfile.SessionFile;

/**
 * A program that saves a session over and over, under its name and for recovery, until it is killed. It prints a number for each
 * session that was saved in both ways; the session holds the number as its north angle.
 */
final class SavingProgram {
    static final String NAME = "night.json";
    static final String UNSAVED = "unsaved";
    private static final double STEPS_PER_DEG = 1000;

    private SavingProgram() {}

    /** The arguments are a folder with a session to begin with, and the first number. */
    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args[0]);
        Session session = SessionFile.read(folder.resolve(NAME)).session();
        RecoveryFile recovery = new RecoveryFolder(folder.resolve(UNSAVED)).begin();
        for (int number = Integer.parseInt(args[1]); ; number++) {
            Session next = numbered(session, number);
            recovery.write(next, number, "test");
            SessionFile.write(next, folder.resolve(NAME), "test", true);
            // In one piece, for half a number would be another.
            System.out.writeBytes((number + "\n").getBytes(StandardCharsets.US_ASCII));
            System.out.flush();
        }
    }

    private static Session numbered(Session session, int number) {
        return session.with(
                session.recipe().with(session.recipe().setup().oriented(number / STEPS_PER_DEG, Mirroring.NO)));
    }

    /** The number that a session file holds; fails if it is not a whole session. */
    static int number(Path file) {
        OptionalDouble north = SessionFile.read(file).session().recipe().setup().northDeg();
        return (int) Math.round(STEPS_PER_DEG * north.orElse(0));
    }

    /** Writes a session with one small frame into a folder. */
    static void begin(Path folder) throws IOException {
        Path frame = Path.of("src/test/resources/truth/files/uint16.fits").toAbsolutePath();
        Files.writeString(
                folder.resolve(NAME),
                "{\"format\":\"epochrome-session\",\"version\":1,\"body\":\"jupiter\",\"frames\":[{\"file\":\"" + frame
                        + "\",\"band\":\"R\",\"start\":\"2031-05-02T21:14:05Z\",\"end\":\"2031-05-02T21:16:05Z\"}]}");
    }
}
