package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.session.product.WhiteReference;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How finished pictures look; none of it touches the linear cube. */
final class FinishOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--white",
            paramLabel = "photometric|disk|solar|none",
            description =
                    "Colour of the whole disk in finished pictures: photometric the planet's own (grey if other bands are assigned), disk grey, solar by"
                            + " --white-gains or --white-frame, none as shot. Default: photometric.")
    private White white;

    @Option(
            names = "--white-gains",
            paramLabel = "R,G,B",
            converter = FinishTexts.Factors.class,
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
            description =
                    "How much detail is brought out in finished pictures; 0 leaves it as the cube has it. Default: 0.5.")
    private Double detail;

    @Option(
            names = "--detail-scale",
            paramLabel = "PX|ARCSECarcsec",
            converter = FinishTexts.Scale.class,
            description = "Size of the detail that is strengthened most, in pixels of the cube (4.5) or in arcseconds"
                    + " (0.8arcsec). Default: twice the blur.")
    private UnaryOperator<Sharpening> detailScale;

    @Option(
            names = "--detail-curve",
            paramLabel = "KEY=VALUE",
            split = ",",
            description =
                    "Single settings of it (several with commas), as session files have them: deblur 0 to 0.8 of the"
                            + " blur, iterations, smoothing, gain, octaves, threshold.")
    private Map<String, Double> detailCurve = new LinkedHashMap<>();

    @Option(
            names = "--detail-of",
            paramLabel = "luminance|bands",
            description =
                    "Whether red, green and blue are strengthened all by the detail of luminance, which keeps hues, or"
                            + " each by its own, which brings out faint colour and its noise. Default: luminance.")
    private DetailOf detailOf;

    @Option(
            names = "--brightness",
            paramLabel = "0..1",
            description = "Where finished pictures show the brightest part of the disk. Default: 0.8.")
    private Double brightness;

    @Option(names = "--black", paramLabel = "0..1", description = "What finished pictures show black. Default: 0.")
    private Double black;

    @Option(
            names = "--contrast",
            paramLabel = "FACTOR",
            description = "Steepness of the middle tones of finished pictures. Default: 1.")
    private Double contrast;

    @Option(
            names = "--saturation",
            paramLabel = "FACTOR",
            description = "Strength of colours in finished pictures, 0 for grey. Default: 1.")
    private Double saturation;

    @Option(
            names = "--orient",
            paramLabel = "as-shot|north-up|south-up",
            converter = FinishTexts.WayUp.class,
            description = "Which way is up in finished pictures; north-up and south-up also undo a mirror. Default:"
                    + " as-shot.")
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
            converter = FinishTexts.Size.class,
            description = "Size of finished pictures in pixels, the disk in the middle. Default: what they take.")
    private Framing.Canvas canvas;

    @Option(
            names = "--caption",
            negatable = true,
            description = "Write below finished pictures what they show: planet, epoch, central meridian, diameter,"
                    + " altitude, bands.")
    private Boolean caption;

    enum DetailOf {
        LUMINANCE,
        BANDS
    }

    /** The files that the white balance is measured on. */
    List<Path> whiteFrames() {
        return List.copyOf(whiteFrames);
    }

    /** What was typed, on top of what was said before. */
    Look over(Look before) {
        try {
            return new Look(
                    balance(before.white()),
                    sharpening(before.sharpening()),
                    tone(before.tone()),
                    framing(before.framing()));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private WhiteBalance balance(WhiteBalance before) {
        boolean measured = gains != null || !whiteFrames.isEmpty();
        if (measured && white != null && white != White.SOLAR) {
            throw new IllegalArgumentException("--white-gains and --white-frame go with --white solar only.");
        }
        if (gains != null && !whiteFrames.isEmpty()) {
            throw new IllegalArgumentException("Give --white-gains or --white-frame, not both.");
        }
        if (measured) {
            return WhiteBalance.solar(gains != null ? gains : WhiteReference.gains(whiteFrames));
        }
        if (white == White.SOLAR && before.solar().isEmpty()) {
            throw new IllegalArgumentException("--white solar needs --white-gains R,G,B or --white-frame FILE.");
        }
        return white == null || white == White.SOLAR ? before : WhiteBalance.of(white);
    }

    private Sharpening sharpening(Sharpening before) {
        Sharpening s = detail == null ? before : Sharpening.ofStrength(detail);
        s = detailScale == null ? s : detailScale.apply(s);
        Map<String, Double> curve = new HashMap<>(detailCurve);
        Sharpening result = new Sharpening(
                taken(curve, "deblur", s.deblur()),
                (int) taken(curve, "iterations", s.iterations()),
                taken(curve, "smoothing", s.smoothing()),
                taken(curve, "gain", s.gain()),
                s.peakPx(),
                s.peakArcsec(),
                taken(curve, "octaves", s.octaves()),
                taken(curve, "threshold", s.threshold()),
                detailOf == null ? s.eachBand() : detailOf == DetailOf.BANDS);
        if (!curve.isEmpty()) {
            throw new IllegalArgumentException("--detail-curve does not know "
                    + curve.keySet().iterator().next()
                    + "; it knows deblur, iterations, smoothing, gain, octaves, threshold.");
        }
        return result;
    }

    private static double taken(Map<String, Double> curve, String key, double before) {
        Double value = curve.remove(key);
        return value == null ? before : value;
    }

    private Tone tone(Tone before) {
        return new Tone(
                brightness == null ? before.brightness() : brightness,
                black == null ? before.black() : black,
                contrast == null ? before.contrast() : contrast,
                saturation == null ? before.saturation() : saturation);
    }

    private Framing framing(Framing before) {
        return new Framing(
                orientation == null ? before.orientation() : orientation,
                margin == null ? before.margin() : OptionalDouble.of(margin),
                enlarge == null ? before.enlarge() : OptionalDouble.of(enlarge),
                Optional.ofNullable(canvas).or(before::canvas),
                caption == null ? before.caption() : caption);
    }
}
