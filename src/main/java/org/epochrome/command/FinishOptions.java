package org.epochrome.command;

import java.util.Optional;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Look;
import org.epochrome.colour.Sharpening;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** How finished pictures look; none of it touches the linear cube. */
final class FinishOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--white",
            paramLabel = "photometric|disk|solar|none",
            description =
                    "Colour of the whole disk in finished pictures: photometric the planet's own, disk grey, solar by"
                            + " --white-gains, none as shot. Default: photometric.")
    private White white;

    @Option(
            names = "--white-gains",
            paramLabel = "R,G,B",
            converter = GainsText.class,
            description = "Factors for red, green and blue that make a sun-like star white, for --white solar.")
    private Gains gains;

    @Option(
            names = "--detail",
            paramLabel = "0..1",
            defaultValue = "0.5",
            description =
                    "How much detail is brought out in finished pictures; 0 leaves it as the cube has it. Default:"
                            + " ${DEFAULT-VALUE}.")
    private double detail;

    @Option(
            names = "--brightness",
            paramLabel = "0..1",
            defaultValue = "0.8",
            description = "Where finished pictures show the brightest part of the disk. Default: ${DEFAULT-VALUE}.")
    private double brightness;

    @Option(
            names = "--black",
            paramLabel = "0..1",
            defaultValue = "0",
            description = "What finished pictures show black. Default: ${DEFAULT-VALUE}.")
    private double black;

    @Option(
            names = "--contrast",
            paramLabel = "FACTOR",
            defaultValue = "1",
            description = "Steepness of the middle tones of finished pictures. Default: ${DEFAULT-VALUE}.")
    private double contrast;

    @Option(
            names = "--saturation",
            paramLabel = "FACTOR",
            defaultValue = "1",
            description = "Strength of colours in finished pictures, 0 for grey. Default: ${DEFAULT-VALUE}.")
    private double saturation;

    Look look() {
        try {
            return new Look(
                    balance(), Sharpening.ofStrength(detail), new Tone(brightness, black, contrast, saturation));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private WhiteBalance balance() {
        Optional<Gains> measured = Optional.ofNullable(gains);
        if (measured.isPresent() && white != null && white != White.SOLAR) {
            throw new IllegalArgumentException("--white-gains goes with --white solar only.");
        }
        if (measured.isEmpty() && white == White.SOLAR) {
            throw new IllegalArgumentException("--white solar needs --white-gains R,G,B.");
        }
        return measured.map(WhiteBalance::solar)
                .orElseGet(() -> WhiteBalance.of(white == null ? White.PHOTOMETRIC : white));
    }

    /** Three factors. */
    static final class GainsText implements ITypeConverter<Gains> {
        @Override
        public Gains convert(String text) {
            String[] parts = text.split(",", -1);
            try {
                if (parts.length == 3) {
                    return new Gains(
                            Double.parseDouble(parts[0]), Double.parseDouble(parts[1]), Double.parseDouble(parts[2]));
                }
            } catch (NumberFormatException e) {
                // said below
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
            throw new TypeConversionException("'" + text + "' are no gains; write R,G,B such as 1.3,1,1.7");
        }
    }
}
