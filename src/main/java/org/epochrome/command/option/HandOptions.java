package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.text.Message;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What is decided by hand about single frames. */
final class HandOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--disk", paramLabel = "FILE=X,Y,RADIUS[,NORTH]", converter = FileArgument.Text.class)
    private List<FileArgument> disks = new ArrayList<>();

    @Option(names = "--leave-out", paramLabel = "FILE")
    private List<Path> leftOut = new ArrayList<>();

    @Option(names = "--take-in", paramLabel = "FILE")
    private List<Path> takenIn = new ArrayList<>();

    /**
     * What was typed, on top of what was decided before.
     *
     * @throws org.epochrome.session.recipe.FramesRefused if a frame that is not left out cannot be used
     */
    Frames over(Frames before) {
        Map<Path, Path> files = Stream.concat(
                        before.all().stream().map(f -> f.head().file()),
                        before.absent().stream().map(a -> a.request().file()))
                .collect(Collectors.toMap(f -> f.toAbsolutePath().normalize(), f -> f, (a, b) -> a));
        Set<Path> out = new HashSet<>(before.leftOut());
        takenIn.forEach(file -> out.remove(files.get(FileArgument.among(file, files.keySet(), spec))));
        leftOut.forEach(file -> out.add(files.get(FileArgument.among(file, files.keySet(), spec))));
        Map<Path, ManualDisk> held = new HashMap<>(before.disks());
        disks.forEach(word -> held.put(files.get(word.among(files.keySet(), spec)), disk(word)));
        Frames frames = before.leavingOut(out).holding(held);
        frames.demandAll();
        if (frames.used().isEmpty()) {
            throw new ParameterException(spec.commandLine(), Message.text("option.allLeftOut"));
        }
        return frames;
    }

    private ManualDisk disk(FileArgument word) {
        String[] parts = word.word().split(",", -1);
        try {
            if (parts.length == 3 || parts.length == 4) {
                return new ManualDisk(
                        Double.parseDouble(parts[0]),
                        Double.parseDouble(parts[1]),
                        Double.parseDouble(parts[2]),
                        parts.length == 4 ? OptionalDouble.of(Double.parseDouble(parts[3])) : OptionalDouble.empty());
            }
        } catch (NumberFormatException e) {
            // refused below
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
        throw new ParameterException(spec.commandLine(), Message.text("option.disk", word.word()));
    }
}
