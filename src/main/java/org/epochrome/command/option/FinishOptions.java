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
            description = "White balance of finished pictures: photometric, the planet's measured colour (grey if other"
                    + " bands are assigned); disk, the whole disk grey; solar, by --white-gains or"
                    + " --white-frame; none, as recorded. Default: photometric.")
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
                    "For --white solar: an image of a sun-like star or a white target in sunlight, recorded like the"
                            + " planet; one colour frame, or three grey frames in the order red, green, blue.")
    private List<Path> whiteFrames = new ArrayList<>();

    @Option(
            names = "--detail",
            paramLabel = "0..1",
            description =
                    "Strength of sharpening in finished pictures; 0 leaves the detail as it is in the cube. Default:"
                            + " 0.5.")
    private Double detail;

    @Option(
            names = "--detail-scale",
            paramLabel = "PX|ARCSECarcsec",
            converter = FinishTexts.Scale.class,
            description = "Size of the detail that is sharpened most, in pixels of the cube (4.5) or in arcseconds"
                    + " (0.8arcsec). Default: twice the blur.")
    private UnaryOperator<Sharpening> detailScale;

    @Option(
            names = "--detail-curve",
            paramLabel = "KEY=VALUE",
            split = ",",
            description =
                    "Individual sharpening settings (comma-separated), as in session files: deblur (0 to 0.8 of the"
                            + " blur), iterations, smoothing, gain, octaves, threshold.")
    private Map<String, Double> detailCurve = new LinkedHashMap<>();

    @Option(
            names = "--detail-of",
            paramLabel = "luminance|bands",
            description =
                    "What red, green and blue are sharpened by: luminance, all by the detail of the luminance, which"
                            + " keeps hues; bands, each by its own, which brings out faint colours and their noise."
                            + " Default: luminance.")
    private DetailOf detailOf;

    @Option(
            names = "--brightness",
            paramLabel = "0..1",
            description = "Level of the brightest part of the disk in finished pictures. Default: 0.8.")
    private Double brightness;

    @Option(
            names = "--black",
            paramLabel = "0..1",
            description = "Level that finished pictures show as black. Default: 0.")
    private Double black;

    @Option(
            names = "--contrast",
            paramLabel = "FACTOR",
            description = "Contrast of the midtones in finished pictures. Default: 1.")
    private Double contrast;

    @Option(
            names = "--saturation",
            paramLabel = "FACTOR",
            description = "Colour saturation of finished pictures; 0 gives grey. Default: 1.")
    private Double saturation;

    @Option(
            names = "--orient",
            paramLabel = "as-shot|north-up|south-up",
            converter = FinishTexts.WayUp.class,
            description = "Orientation of finished pictures; north-up and south-up also undo mirroring. Default:"
                    + " as-shot.")
    private Framing.Orientation orientation;

    @Option(
            names = "--margin",
            paramLabel = "RADII",
            description = "Crop finished pictures to the disk and its rings with this margin, in equatorial radii."
                    + " Default: the whole frame.")
    private Double margin;

    @Option(
            names = "--enlarge",
            paramLabel = "FACTOR",
            description =
                    "Enlargement factor of finished pictures. Default: 1 or, with --margin and --canvas, the factor"
                            + " that fills the canvas.")
    private Double enlarge;

    @Option(
            names = "--canvas",
            paramLabel = "WxH",
            converter = FinishTexts.Size.class,
            description = "Size of finished pictures in pixels, with the disk in the centre. Default: automatic.")
    private Framing.Canvas canvas;

    @Option(
            names = "--caption",
            negatable = true,
            description = "Add a caption below finished pictures: planet, epoch, central meridian, diameter,"
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

    /** The look of a session, overridden by the options given. */
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
            throw new IllegalArgumentException("--white-gains and --white-frame can only be used with --white solar.");
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
            throw new IllegalArgumentException("--detail-curve has no setting "
                    + curve.keySet().iterator().next()
                    + "; use deblur, iterations, smoothing, gain, octaves or threshold.");
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
