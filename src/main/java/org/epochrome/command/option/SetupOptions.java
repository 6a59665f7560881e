package org.epochrome.command.option;

import java.util.OptionalDouble;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Setup;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How the camera looked at the sky. */
final class SetupOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = {"-n", "--north"},
            paramLabel = "DEG|auto",
            converter = Texts.North.class,
            description = "North angle of the reference frame: from image up to the planet's north pole,"
                    + " counter-clockwise positive. With celestial north up and no mirroring it equals P, which the"
                    + " aspect command prints. auto: found from the disk of Jupiter, the rings of Saturn or, in"
                    + " frames over a quarter of an hour or more, the motion of the detail. Default: auto.")
    private OptionalDouble north;

    @Option(
            names = "--mirrored",
            paramLabel = "yes|no|auto",
            description =
                    "Whether the frames are mirrored (an odd number of reflections, as with a star diagonal). auto:"
                            + " found from the lit side or the direction of rotation if --north is given, otherwise"
                            + " no. Default: auto.")
    private Mirroring mirrored;

    @Option(
            names = "--scale",
            paramLabel = "ARCSEC",
            description =
                    "Plate scale in arcsec per pixel, if you know it more accurately than the disk gives it (a few"
                            + " hundredths of a per cent).")
    private Double scale;

    @Option(
            names = "--mount",
            paramLabel = "equatorial|altaz",
            description =
                    "equatorial: all frames have the same orientation; altaz: the field rotates from frame to frame,"
                            + " which needs --site. Default: equatorial.")
    private Mount mount;

    /** The setup of a session, overridden by the options given. */
    Setup over(Setup before) {
        if (scale != null && !(scale > 0)) {
            throw new ParameterException(spec.commandLine(), "--scale must be more than 0, not " + scale + ".");
        }
        return new Setup(
                north == null ? before.northDeg() : north,
                mirrored == null ? before.mirroring() : mirrored,
                scale == null ? before.scaleArcsecPerPx() : OptionalDouble.of(scale),
                mount == null ? before.mount() : mount);
    }
}
