package org.epochrome.robustness;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Reads as many damaged files as wanted and prints a line of comma-separated values for each kind. */
final class HostileFiles {
    private HostileFiles() {}

    /** The arguments are the number of files of all kinds together, and the first seed. */
    public static void main(String[] args) throws IOException {
        int kinds = HostileInput.values().length;
        int each = (Integer.parseInt(args[0]) + kinds - 1) / kinds;
        long seed = Long.parseLong(args[1]);
        Path folder = Files.createTempDirectory("hostile");
        System.out.println("kind,files,read,refused,faults,longest_cpu_s,most_allocated_mb");
        int faults = 0;
        for (HostileInput kind : HostileInput.values()) {
            Onslaught o = Onslaught.of(kind, seed, each, folder);
            System.out.printf(
                    Locale.ROOT,
                    "%s,%d,%d,%d,%d,%.2f,%d%n",
                    kind.name().toLowerCase(Locale.ROOT),
                    o.files(),
                    o.files() - o.refused() - o.faults().size(),
                    o.refused(),
                    o.faults().size(),
                    o.longestS(),
                    o.mostBytes() >> 20);
            o.faults().forEach(System.err::println);
            faults += o.faults().size();
        }
        Files.delete(folder);
        System.exit(faults == 0 ? 0 : 1);
    }
}
