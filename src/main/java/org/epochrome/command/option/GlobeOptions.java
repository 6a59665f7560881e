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
            description = "File for a map of the globe without its shading: longitude in --rotation-system,"
                    + " planetographic latitude, and coverage. .fits is linear, with world coordinates; .png is"
                    + " finished, with coverage as opacity.")
    private Path map;

    @Option(
            names = "--map-width",
            paramLabel = "PX",
            description = "Width of the map, an even number; its height is half of it. Default: the scale at the"
                    + " centre of the disk.")
    private Integer mapWidth;

    @Option(
            names = "--turning",
            paramLabel = "FILE",
            description = "File for a short animation of the rotating globe: .gif or .png (animated). Areas that"
                    + " were out of sight fade to the mean of their latitude.")
    private Path turning;

    @Option(
            names = "--turning-from",
            paramLabel = "UTC",
            converter = Texts.Utc.class,
            description = "Start of the animation. Default: 24 degrees of rotation before the epoch (Jupiter: 40"
                    + " minutes).")
    private Instant from;

    @Option(
            names = "--turning-until",
            paramLabel = "UTC",
            converter = Texts.Utc.class,
            description = "End of the animation. Default: equally long after the epoch.")
    private Instant until;

    @Option(
            names = "--turning-frames",
            paramLabel = "N",
            description = "Number of pictures in the animation. Default: 25.")
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
