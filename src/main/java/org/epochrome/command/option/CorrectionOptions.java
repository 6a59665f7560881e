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
            description = "The longitude system that the surface rotates with, or zonal: each latitude of Jupiter or"
                    + " Saturn at the speed of its winds, Venus in ultraviolet with its clouds. Default:"
                    + " zonal for these three; other planets have only one system.")
    private String system;

    @Option(
            names = "--rotation-period",
            paramLabel = "DAYS",
            description =
                    "Sidereal rotation period of the surface, in the direction of the planet's rotation, such as 4.2"
                            + " for the clouds of Venus.")
    private Double period;

    @Option(
            names = "--turn",
            negatable = true,
            description = "--no-turn aligns the frames without turning them, to show the difference.")
    private Boolean turn;

    @Option(
            names = "--dispersion",
            negatable = true,
            description = "--no-dispersion ignores how atmospheric dispersion blurs each band.")
    private Boolean dispersion;

    @Option(
            names = "--air-flattening",
            negatable = true,
            description =
                    "--no-air-flattening ignores that refraction flattens the disk vertically, for rendered scenes"
                            + " without an atmosphere.")
    private Boolean airFlattening;

    @Option(
            names = "--unsmear",
            negatable = true,
            description = "Remove the whole dispersion blur within each band: sharper blue low in the sky, but more"
                    + " noise. By default half of it is removed where it is long; --no-unsmear leaves it.")
    private Boolean unsmear;

    @Option(
            names = "--moons",
            negatable = true,
            description = "--no-moons turns moons and their shadows with the globe, as if they were markings on it.")
    private Boolean moons;

    @Option(
            names = "--light",
            paramLabel = "camera|sun|even",
            description = "Spectrum assumed within each passband when dispersion is computed: camera, the planet as a"
                    + " silicon camera records it through the atmosphere; sun, sunlight; even, equal at all"
                    + " wavelengths. Default: camera.")
    private Light light;

    @Option(
            names = "--response",
            paramLabel = "FILE.csv",
            description = "Quantum efficiency of the camera: a table with rows of wavelength (nm) and response, or"
                    + " comma-separated NM=RESPONSE; it replaces that of a typical silicon camera.")
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

    /** The corrections of a session, overridden by the options given. */
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
                    spec.commandLine(), "--rotation-period must be more than 0 days, not " + period + ".");
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
                    "'" + response + "' is not a response curve; write 400=0.5,500=0.8 and so on, or name a table.",
                    e);
        }
    }
}
