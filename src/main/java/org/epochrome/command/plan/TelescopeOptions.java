package org.epochrome.command.plan;

import java.util.Optional;
import org.epochrome.plan.limit.Seeing;
import org.epochrome.plan.limit.Telescope;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Telescope, camera and seeing. */
public final class TelescopeOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--aperture", paramLabel = "MM", required = true)
    private double apertureMm;

    @Option(names = "--obstruction", paramLabel = "PART")
    private double obstruction;

    @Option(names = "--focal-length", paramLabel = "MM", required = true)
    private double focalLengthMm;

    @Option(names = "--pixel", paramLabel = "MICROMETRES", required = true)
    private double pixelUm;

    @Option(names = "--seeing", paramLabel = "ARCSEC")
    private Double seeingArcsec;

    Telescope telescope() {
        try {
            return new Telescope(apertureMm, obstruction, focalLengthMm, pixelUm);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage(), e);
        }
    }

    Optional<Seeing> seeing() {
        try {
            return Optional.ofNullable(seeingArcsec).map(Seeing::new);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage(), e);
        }
    }
}
