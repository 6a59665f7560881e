package org.epochrome.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.colour.Framing;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Look;
import org.epochrome.colour.Sharpening;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.session.WhiteReference;
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
                            + " --white-gains or --white-frame, none as shot. Default: photometric.")
    private White white;

    @Option(
            names = "--white-gains",
            paramLabel = "R,G,B",
            converter = GainsText.class,
            description = "Factors for red, green and blue that make a sun-like star white, for --white solar.")
    private Gains gains;

    @Option(
            names = "--white-frame",
            paramLabel = "FILE",
            description =
                    "For --white solar: a sun-like star or a white target in sunlight, recorded like the planet; one"
                            + " colour frame, or three times a grey one in the order red, green, blue.")
    private List<Path> whiteFrames = new ArrayList<>();

    @Option(
            names = "--detail",
            paramLabel = "0..1",
            defaultValue = "0.5",
            description =
                    "How much detail is brought out in finished pictures; 0 leaves it as the cube has it. Default:"
                            + " ${DEFAULT-VALUE}.")
    private double detail;

    @Option(
            names = "--detail-scale",
            paramLabel = "PX",
            description =
                    "Size of the detail that is strengthened most, in pixels of the cube. Default: twice the blur.")
    private Double detailScale;

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

    @Option(
            names = "--orient",
            paramLabel = "as-shot|north-up|south-up",
            defaultValue = "as-shot",
            converter = OrientationText.class,
            description = "Which way is up in finished pictures; north-up and south-up also undo a mirror. Default:"
                    + " ${DEFAULT-VALUE}.")
    private Framing.Orientation orientation;

    @Option(
            names = "--margin",
            paramLabel = "RADII",
            description = "Crop finished pictures to the disk, rings included, and leave this margin, in equatorial"
                    + " radii. Default: the whole frame.")
    private Double margin;

    @Option(
            names = "--enlarge",
            paramLabel = "FACTOR",
            description =
                    "Enlarge finished pictures. Default: 1, or, with --margin and --canvas, what fills the canvas.")
    private Double enlarge;

    @Option(
            names = "--canvas",
            paramLabel = "WxH",
            converter = CanvasText.class,
            description = "Size of finished pictures in pixels, the disk in the middle. Default: what they take.")
    private Framing.Canvas canvas;

    @Option(
            names = "--caption",
            description = "Write below finished pictures what they show: planet, epoch, central meridian, diameter,"
                    + " altitude, bands.")
    private boolean caption;

    Look look() {
        try {
            return new Look(
                    balance(),
                    detailScale == null
                            ? Sharpening.ofStrength(detail)
                            : Sharpening.ofStrength(detail).peakingAt(detailScale),
                    new Tone(brightness, black, contrast, saturation),
                    new Framing(
                            orientation, optional(margin), optional(enlarge), Optional.ofNullable(canvas), caption));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private WhiteBalance balance() {
        boolean measured = gains != null || !whiteFrames.isEmpty();
        if (measured && white != null && white != White.SOLAR) {
            throw new IllegalArgumentException("--white-gains and --white-frame go with --white solar only.");
        }
        if (gains != null && !whiteFrames.isEmpty()) {
            throw new IllegalArgumentException("Give --white-gains or --white-frame, not both.");
        }
        if (!measured && white == White.SOLAR) {
            throw new IllegalArgumentException("--white solar needs --white-gains R,G,B or --white-frame FILE.");
        }
        if (measured) {
            return WhiteBalance.solar(gains != null ? gains : WhiteReference.gains(whiteFrames));
        }
        return WhiteBalance.of(white == null ? White.PHOTOMETRIC : white);
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** Which way is up. */
    static final class OrientationText implements ITypeConverter<Framing.Orientation> {
        @Override
        public Framing.Orientation convert(String text) {
            for (Framing.Orientation orientation : Framing.Orientation.values()) {
                if (orientation.name().equalsIgnoreCase(text.replace('-', '_'))) {
                    return orientation;
                }
            }
            throw new TypeConversionException("'" + text + "' is none of as-shot, north-up, south-up");
        }
    }

    /** Width and height. */
    static final class CanvasText implements ITypeConverter<Framing.Canvas> {
        @Override
        public Framing.Canvas convert(String text) {
            String[] parts = text.toLowerCase(Locale.ROOT).split("x", -1);
            try {
                if (parts.length == 2) {
                    return new Framing.Canvas(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
                }
            } catch (NumberFormatException e) {
                // said below
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
            throw new TypeConversionException("'" + text + "' is no size; write WxH such as 1200x900");
        }
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
