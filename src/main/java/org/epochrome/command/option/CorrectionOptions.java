package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.io.read.ResponseCurve;
import org.epochrome.session.recipe.Corrections;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What is corrected in the frames, and by which laws. */
final class CorrectionOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--rotation-system",
            paramLabel = "I|II|III|zonal",
            description =
                    "The longitude system that the surface turns with, or zonal: each latitude of Jupiter or Saturn at"
                            + " the rate of its winds, Venus in ultraviolet with its clouds. Default: zonal for these three, for"
                            + " other planets their only system.")
    private String system;

    @Option(
            names = "--rotation-period",
            paramLabel = "DAYS",
            description =
                    "Sidereal period that the surface turns with, in the sense of the planet's rotation, such as 4.2 for"
                            + " the clouds of Venus.")
    private Double period;

    @Option(
            names = "--turn",
            negatable = true,
            description = "--no-turn lays the frames on top of each other without turning them, to see the difference.")
    private Boolean turn;

    @Option(
            names = "--dispersion",
            negatable = true,
            description = "--no-dispersion leaves out of account how the atmosphere smears each band.")
    private Boolean dispersion;

    @Option(
            names = "--air-flattening",
            negatable = true,
            description =
                    "--no-air-flattening ignores that refraction shortens the vertical of each frame, as in rendered scenes"
                            + " without air.")
    private Boolean airFlattening;

    @Option(
            names = "--unsmear",
            negatable = true,
            description = "Undo all that dispersion draws out within a band: sharper blue low in the sky, more noise."
                    + " By default half of it is undone where it is long; --no-unsmear leaves it.")
    private Boolean unsmear;

    @Option(
            names = "--moons",
            negatable = true,
            description = "--no-moons lets moons and their shadows turn with the globe, as if they lay on it.")
    private Boolean moons;

    @Option(
            names = "--light",
            paramLabel = "camera|sun|even",
            description =
                    "How a band's light is spread over its passband, for the dispersion: as a silicon camera sees the"
                            + " planet through the air, as sunlight, or evenly. Default: camera.")
    private Light light;

    @Option(
            names = "--response",
            paramLabel = "FILE.csv",
            description =
                    "The camera's quantum efficiency, rows of wavelength (nm) and response, or the same as NM=RESPONSE"
                            + " with commas between; used in the place of a usual silicon camera's.")
    private String response;

    enum Light {
        CAMERA(Spectrum.CAMERA),
        SUN(Spectrum.SUNLIGHT),
        EVEN(Spectrum.EVEN);

        private final Spectrum spectrum;

        Light(Spectrum spectrum) {
            this.spectrum = spectrum;
        }
    }

    /** What was typed, on top of what was said before. */
    Corrections over(Corrections before, Body body) {
        return new Corrections(
                system == null ? before.system() : system(body),
                period(before),
                turn == null ? before.turn() : turn,
                dispersion == null ? before.dispersion() : dispersion,
                airFlattening == null ? before.airFlattening() : airFlattening,
                unsmear == null ? before.unsmear() : unsmear ? Extent.ALL : Extent.NONE,
                moons == null ? before.moons() : moons,
                spectrum(before.spectrum()));
    }

    /** A system that is typed now overrides a period of before. */
    private OptionalDouble period(Corrections before) {
        if (period == null) {
            return system == null ? before.rotationPeriodDays() : OptionalDouble.empty();
        }
        if (!(period > 0 && period < Double.POSITIVE_INFINITY)) {
            throw new ParameterException(
                    spec.commandLine(), "--rotation-period is a number of days above 0, not " + period + ".");
        }
        return OptionalDouble.of(period);
    }

    private Optional<RotationSystem> system(Body planet) {
        if (system.equalsIgnoreCase("zonal")) {
            return Optional.empty();
        }
        return Optional.of(planet.systems().stream()
                .filter(s -> s.key().equalsIgnoreCase(system))
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        planet.displayName() + " has no rotation system '" + system + "'; it has "
                                + planet.systems().stream()
                                        .map(RotationSystem::key)
                                        .collect(Collectors.joining(", "))
                                + ".")));
    }

    /** The table of the camera's response, if one was named. */
    Optional<Path> table() {
        return Optional.ofNullable(response).filter(r -> !r.contains("=")).map(Path::of);
    }

    private Spectrum spectrum(Spectrum before) {
        if (response != null) {
            return table().map(ResponseCurve::read).orElseGet(this::curve);
        }
        return light == null ? before : light.spectrum;
    }

    private Spectrum curve() {
        try {
            List<Spectrum.Point> points = new ArrayList<>();
            for (String point : response.split(",", -1)) {
                String[] pair = point.split("=", -1);
                points.add(new Spectrum.Point(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])));
            }
            return Spectrum.seenBy(points);
        } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
            throw new ParameterException(
                    spec.commandLine(),
                    "'" + response + "' is no response curve; write 400=0.5,500=0.8 and so on, or name a table.",
                    e);
        }
    }
}
