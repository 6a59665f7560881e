package org.epochrome.command;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.epochrome.session.Combination;
import org.epochrome.session.MapFile;
import org.epochrome.session.Outputs;
import org.epochrome.session.TurningFile;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The combined globe as a map and as an animation. */
final class GlobeOptions {
    private static final int MOST_STILLS = 200;
    private static final int MOST_WIDTH = 14_400;

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

    @Option(
            names = "--turning-frames",
            paramLabel = "N",
            defaultValue = "25",
            description = "How many pictures it has. Default: 25.")
    private int stills;

    /** What to write, checked. */
    record Files(Optional<MapFile> map, Optional<TurningFile> turning) {
        void check() {
            map.ifPresent(MapFile::check);
            turning.ifPresent(TurningFile::check);
        }

        void write(Combination combination, Outputs like, String version) {
            map.ifPresent(file -> file.write(combination, like, version));
            turning.ifPresent(file -> file.write(combination, like, version));
        }

        List<Path> paths() {
            return Stream.concat(map.map(MapFile::file).stream(), turning.map(TurningFile::file).stream())
                    .toList();
        }
    }

    /** The files that were asked for. */
    Files files(boolean overwrite) {
        if (mapWidth != null && (mapWidth < 2 || mapWidth % 2 != 0 || mapWidth > MOST_WIDTH)) {
            throw refused("--map-width must be an even number up to " + MOST_WIDTH + ", not " + mapWidth + ".");
        }
        if (stills < 2 || stills > MOST_STILLS) {
            throw refused("--turning-frames must be from 2 to " + MOST_STILLS + ", not " + stills + ".");
        }
        if (from != null && until != null && !from.isBefore(until)) {
            throw refused("--turning-from must lie before --turning-until.");
        }
        OptionalInt width = mapWidth == null ? OptionalInt.empty() : OptionalInt.of(mapWidth);
        return new Files(
                Optional.ofNullable(map).map(file -> new MapFile(file, width, overwrite)),
                Optional.ofNullable(turning)
                        .map(file -> new TurningFile(
                                file, Optional.ofNullable(from), Optional.ofNullable(until), stills, overwrite)));
    }

    private ParameterException refused(String problem) {
        return new ParameterException(spec.commandLine(), problem);
    }
}
