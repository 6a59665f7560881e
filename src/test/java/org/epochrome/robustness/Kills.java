package org.epochrome.robustness;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.epochrome.desktop.recovery.RecoveryFolder;
import org.epochrome.desktop.recovery.UnsavedSession;
import org.epochrome.text.Refusal;

/**
 * Kills a program while it saves, at a random moment, and looks what is left.
 *
 * @param kills how often
 * @param saved sessions that were saved between the kills, in both ways
 * @param faults what was lost: a session that was saved before the kill but is not there, not whole, or older
 */
record Kills(int kills, int saved, List<String> faults) {
    private static final int LONGEST_WAIT_MS = 40;

    /**
     * Kills as often as wanted.
     *
     * @param folder empty
     * @param seed of the moments
     */
    static Kills of(int kills, Path folder, long seed) throws IOException, InterruptedException {
        Random random = new Random(seed);
        SavingProgram.begin(folder);
        List<String> faults = new ArrayList<>();
        int saved = 0;
        int first = 1;
        for (int kill = 1; kill <= kills; kill++) {
            int last = runAndKill(folder, first, random);
            saved += last - first + 1;
            String when = "kill " + kill + ": ";
            try {
                // The one that was not acknowledged may be there too.
                int there = SavingProgram.number(folder.resolve(SavingProgram.NAME));
                if (there != last && there != last + 1) {
                    faults.add(when + "saved " + last + ", found " + there);
                }
                int kept = recovered(folder.resolve(SavingProgram.UNSAVED));
                if (kept != last && kept != last + 1) {
                    faults.add(when + "wrote down " + last + ", recovered " + kept);
                }
            } catch (Refusal e) {
                faults.add(when + e.getMessage());
            }
            first = last + 2;
        }
        return new Kills(kills, saved, faults);
    }

    private static int runAndKill(Path folder, int first, Random random) throws IOException, InterruptedException {
        Process program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        SavingProgram.class.getName(),
                        folder.toString(),
                        Integer.toString(first))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (BufferedReader out = program.inputReader(StandardCharsets.UTF_8)) {
            String line = out.readLine();
            Thread.sleep(random.nextInt(LONGEST_WAIT_MS));
            // The process would close what is still to be read; its handle does not.
            program.toHandle().destroyForcibly();
            String last = line;
            while (line != null) {
                last = line;
                line = out.readLine();
            }
            program.waitFor();
            if (last == null) {
                throw new IOException("The program saved nothing.");
            }
            return Integer.parseInt(last);
        }
    }

    /** The number of the one session that waits to be restored; it is discarded. */
    private static int recovered(Path unsaved) {
        RecoveryFolder recovery = new RecoveryFolder(unsaved);
        List<UnsavedSession> left = recovery.abandoned();
        if (left.size() != 1) {
            return -left.size();
        }
        var file = recovery.claim(left.get(0)).orElseThrow();
        int number = SavingProgram.number(file.path());
        file.delete();
        return number;
    }

    /** The arguments are the number of kills and the seed; prints comma-separated values. */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("kills");
        Kills k = of(Integer.parseInt(args[0]), folder, Long.parseLong(args[1]));
        System.out.println("kills,sessions_saved,lost");
        System.out.println(k.kills() + "," + k.saved() + "," + k.faults().size());
        k.faults().forEach(System.err::println);
        try (Stream<Path> files = Files.list(folder)) {
            System.err.println(files.filter(f -> f.toString().endsWith(".part")).count() + " temporary files left");
        }
        System.exit(k.faults().isEmpty() ? 0 : 1);
    }
}
