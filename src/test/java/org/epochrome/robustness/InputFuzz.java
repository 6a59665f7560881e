package org.epochrome.robustness;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * What the profile {@code fuzz} calls with bytes that lead to new branches: the first byte chooses the kind of file, the
 * others are the file.
 */
public final class InputFuzz {
    private static final HostileInput[] KINDS = HostileInput.values();
    private static final Path FOLDER = folder();

    private InputFuzz() {}

    private static Path folder() {
        try {
            return Files.createTempDirectory("fuzz");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The name that the fuzzer looks for. */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        if (data.length < 2) {
            return;
        }
        HostileInput kind = KINDS[(data[0] & 0xff) % KINDS.length];
        Path file = FOLDER.resolve("fuzz" + kind.suffix());
        Files.write(file, Arrays.copyOfRange(data, 1, data.length));
        kind.answer(file).fault().ifPresent(fault -> {
            throw new IllegalStateException(kind + ": " + fault);
        });
    }

    /** Writes the sound files into a folder, the only argument, for the fuzzer to start from. */
    public static void main(String[] args) throws IOException {
        Path corpus = Files.createDirectories(Path.of(args[0]));
        for (int k = 0; k < KINDS.length; k++) {
            HostileInput kind = KINDS[k];
            int number = 0;
            for (byte[] seed : kind.seeds()) {
                byte[] bytes = new byte[seed.length + 1];
                bytes[0] = (byte) k;
                System.arraycopy(seed, 0, bytes, 1, seed.length);
                Files.write(corpus.resolve(kind + "-" + number++), bytes);
            }
        }
    }
}
