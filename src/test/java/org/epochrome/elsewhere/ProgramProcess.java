package org.epochrome.elsewhere;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The program in a Java of its own, in a folder and with variables and properties of a test's choice. */
final class ProgramProcess {
    private final Path folder;
    private final String main;
    private final List<String> options = new ArrayList<>(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
    private final List<String> before = new ArrayList<>();
    private final Map<String, String> variables = new HashMap<>();

    /** What a process left. */
    record Result(int code, String out, String err) {}

    ProgramProcess(Path folder, String main) {
        this.folder = folder;
        this.main = main;
    }

    ProgramProcess option(String... more) {
        options.addAll(List.of(more));
        return this;
    }

    /** With a variable of the environment; an empty value removes it. */
    ProgramProcess variable(String name, String value) {
        variables.put(name, value);
        return this;
    }

    /** Started by another program, whose words come before. */
    ProgramProcess within(String... words) {
        before.addAll(List.of(words));
        return this;
    }

    Result run(String... args) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(before);
        words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        words.addAll(options);
        words.addAll(List.of("-cp", classPath(), main));
        words.addAll(List.of(args));
        ProcessBuilder builder = new ProcessBuilder(words).directory(folder.toFile());
        variables.forEach((name, value) -> {
            if (value.isEmpty()) {
                builder.environment().remove(name);
            } else {
                builder.environment().put(name, value);
            }
        });
        Path out = Files.createTempFile(folder, "out", ".log");
        Path err = Files.createTempFile(folder, "err", ".log");
        int code = builder.redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start()
                .waitFor();
        Result result = new Result(
                code,
                new String(Files.readAllBytes(out), StandardCharsets.UTF_8),
                new String(Files.readAllBytes(err), StandardCharsets.UTF_8));
        Files.delete(out);
        Files.delete(err);
        return result;
    }

    private static String classPath() {
        return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(p -> Path.of(p).toAbsolutePath().toString())
                .collect(Collectors.joining(File.pathSeparator));
    }
}
