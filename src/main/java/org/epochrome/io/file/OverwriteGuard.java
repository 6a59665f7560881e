package org.epochrome.io.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.epochrome.text.Message;

/** Keeps what is made apart from what it is made from: no output may be an input, nor may two outputs be one file. */
public final class OverwriteGuard {
    private OverwriteGuard() {}

    /**
     * Refuses before any work outputs that are inputs, whichever way their paths are written and whatever may be replaced;
     * also outputs that are named twice, and those that are there but are no regular files.
     *
     * @throws OutputRefused for the first such output
     */
    public static void check(Collection<Path> outputs, Collection<Path> inputs) {
        List<Path> before = new ArrayList<>();
        for (Path output : outputs) {
            AtomicFile.checkKind(output);
            if (inputs.stream().anyMatch(input -> same(output, input))) {
                throw new OutputRefused(output, Message.of("output.isInput"));
            }
            if (before.stream().anyMatch(other -> same(output, other))) {
                throw new OutputRefused(output, Message.of("output.twice"));
            }
            before.add(output);
        }
    }

    /**
     * The first output that would be written neither into a folder nor into one below it, links followed.
     *
     * @throws OutputRefused if the folder of an output cannot be read
     */
    public static Optional<Path> firstOutside(Collection<Path> outputs, Path folder) {
        return outputs.stream().filter(output -> !isWithin(output, folder)).findFirst();
    }

    private static boolean isWithin(Path output, Path folder) {
        try {
            return real(output).startsWith(real(folder));
        } catch (IOException e) {
            throw new OutputRefused(output, Message.of("output.folderNotReadable"), e);
        }
    }

    private static boolean same(Path a, Path b) {
        try {
            return real(a).equals(real(b)) || (Files.exists(a) && Files.exists(b) && Files.isSameFile(a, b));
        } catch (IOException e) {
            throw new OutputRefused(a, Message.of("output.folderNotReadable"), e);
        }
    }

    /** Where a path leads, links followed as far as it exists. */
    private static Path real(Path path) throws IOException {
        Path whole = path.toAbsolutePath();
        Path there = whole;
        while (!Files.exists(there)) {
            there = there.getParent();
        }
        return there.toRealPath().resolve(there.relativize(whole)).normalize();
    }
}
