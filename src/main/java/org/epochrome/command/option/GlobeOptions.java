package org.epochrome.command.option;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.TurningFile;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The combined globe as a map and as an animation. */
final class GlobeOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--map",
            paramLabel = "FILE",
            description = "File to write a map of the globe to, shading taken off: longitude by --rotation-system and"
                    + " planetographic latitude, with the coverage. .fits linear with world coordinates, .png finished with"
                    + " the coverage as opacity.")
    private Path map;

    @Option(
            names = "--map-width",
            paramLabel = "PX",
            description = "Width of the map, even; its height is half of it. Default: the scale of the disk's middle.")
    private Integer mapWidth;

    @Option(
            names = "--turning",
            paramLabel = "FILE",
            description = "File to write a short animation of the turning globe to: .gif or .png (animated). What was"
                    + " out of sight fades to the mean of its latitude.")
    private Path turning;

    @Option(
            names = "--turning-from",
            paramLabel = "UTC",
            converter = Texts.Utc.class,
            description = "When it begins. Default: 24 degrees of turning before the epoch (Jupiter: 40 minutes).")
    private Instant from;

    @Option(
            names = "--turning-until",
            paramLabel = "UTC",
            converter = Texts.Utc.class,
            description = "When it ends. Default: as long after the epoch.")
    private Instant until;

    @Option(names = "--turning-frames", paramLabel = "N", description = "How many pictures it has. Default: 25.")
    private Integer stills;

    /** The map that was typed, on top of one that was wanted before. */
    Optional<MapFile> map(Optional<MapFile> before) {
        OptionalInt width =
                mapWidth == null ? before.map(MapFile::width).orElse(OptionalInt.empty()) : OptionalInt.of(mapWidth);
        return checked(() ->
                Optional.ofNullable(map).or(() -> before.map(MapFile::file)).map(file -> new MapFile(file, width)));
    }

    /** The animation that was typed, on top of one that was wanted before. */
    Optional<TurningFile> turning(Optional<TurningFile> before) {
        return checked(() -> Optional.ofNullable(turning)
                .or(() -> before.map(TurningFile::file))
                .map(file -> new TurningFile(
                        file,
                        Optional.ofNullable(from).or(() -> before.flatMap(TurningFile::from)),
                        Optional.ofNullable(until).or(() -> before.flatMap(TurningFile::until)),
                        Optional.ofNullable(stills)
                                .or(() -> before.map(TurningFile::count))
                                .orElse(TurningFile.USUAL_COUNT))));
    }

    private <T> T checked(Supplier<T> made) {
        try {
            return made.get();
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }
}
