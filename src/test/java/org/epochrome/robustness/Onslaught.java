package org.epochrome.robustness;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * Many damaged files of one kind, read one after the other.
 *
 * @param files how many
 * @param refused how many were refused by a sentence; the others were read
 * @param longestS processor time of the slowest, in seconds
 * @param mostBytes most memory that one of them took, freed or not
 * @param faults anything but a value or a sentence, or more than the budget, with the seed that makes the file again
 */
record Onslaught(int files, int refused, double longestS, long mostBytes, List<String> faults) {
    private static final double HANGS_S = 5;
    private static final long MOST_BYTES = 500L << 20;
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    /**
     * Reads damaged files.
     *
     * @param firstSeed of the first; each file has the next
     * @param folder where each lies while it is read
     */
    static Onslaught of(HostileInput kind, long firstSeed, int files, Path folder) throws IOException {
        List<byte[]> seeds = kind.seeds();
        // The name tells what a header may lack.
        Path file = folder.resolve("2031-05-02-211405-R" + kind.suffix());
        List<String> faults = new ArrayList<>();
        int refused = 0;
        long longestNs = 0;
        long mostBytes = 0;
        for (long seed = firstSeed; seed < firstSeed + files; seed++) {
            byte[] whole = seeds.get((int) Math.floorMod(seed, (long) seeds.size()));
            byte[] other = seeds.get((int) Math.floorMod(seed / seeds.size(), (long) seeds.size()));
            byte[] bytes = new Mutator(seed).mutated(whole, other);
            Files.write(file, bytes);
            long cpu = THREADS.getCurrentThreadCpuTime();
            long memory = THREADS.getCurrentThreadAllocatedBytes();
            HostileInput.Answer answer = kind.answer(file);
            long took = THREADS.getCurrentThreadCpuTime() - cpu;
            long allocated = THREADS.getCurrentThreadAllocatedBytes() - memory;
            longestNs = Math.max(longestNs, took);
            mostBytes = Math.max(mostBytes, allocated);
            refused += answer.refused() ? 1 : 0;
            Optional<String> fault = answer.fault();
            if (took > HANGS_S * 1e9) {
                fault = Optional.of("took " + took / 1e9 + " s");
            } else if (allocated > MOST_BYTES) {
                fault = Optional.of("took " + (allocated >> 20) + " MB");
            }
            int number = (int) (seed - firstSeed);
            fault.ifPresent(f -> faults.add(kind + " " + (firstSeed + number) + ": " + f
                    + (bytes.length < 200 ? " " + HexFormat.of().formatHex(bytes) : "")));
        }
        Files.deleteIfExists(file);
        return new Onslaught(files, refused, longestNs / 1e9, mostBytes, faults);
    }
}
