package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.epochrome.session.product.MapFile;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.TurningFile;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The combined globe as a map and as an animation. */
final class GlobeOptions {
    private final ChoiceOptions<MapFile> maps = new ChoiceOptions<>(MapFile.class);

    @Mixin
    final CommandSpec mapOptions = maps.spec();

    private final ChoiceOptions<TurningFile> animations = new ChoiceOptions<>(TurningFile.class);

    @Mixin
    final CommandSpec animationOptions = animations.spec();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** The map that was typed, on top of one that was wanted before. */
    Optional<MapFile> map(Optional<MapFile> before) {
        return checked(() -> before.or(() -> maps.given("map", Path.class).map(MapFile::usual))
                .map(maps::over));
    }

    /** The animation that was typed, on top of one that was wanted before. */
    Optional<TurningFile> turning(Optional<TurningFile> before) {
        return checked(
                () -> before.or(() -> animations.given("turning", Path.class).map(TurningFile::usual))
                        .map(animations::over));
    }

    /** The files of map and animation, where no others were typed. */
    List<Path> kept(Products before) {
        return Stream.concat(
                        before.map().map(MapFile::file).stream()
                                .filter(f -> maps.given("map", Path.class).isEmpty()),
                        before.turning().map(TurningFile::file).stream()
                                .filter(f ->
                                        animations.given("turning", Path.class).isEmpty()))
                .toList();
    }

    private <T> T checked(Supplier<T> made) {
        try {
            return made.get();
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }
}
