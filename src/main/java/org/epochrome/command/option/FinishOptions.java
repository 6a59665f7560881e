package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.epochrome.choice.RecordChoice;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.session.product.WhiteReference;
import picocli.CommandLine.Mixin;
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
    private Sharpening.DetailOf detailOf;

    private final ChoiceOptions<Tone> tones = new ChoiceOptions<>(Tone.class);

    @Mixin
    final CommandSpec toneOptions = tones.spec();

    private final ChoiceOptions<Framing> framings = new ChoiceOptions<>(Framing.class);

    @Mixin
    final CommandSpec framingOptions = framings.spec();

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
                    tones.over(before.tone()),
                    framings.over(before.framing()));
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
        Sharpening base = s;
        Sharpening result = RecordChoice.copy(
                base, choice -> choice.option().equals("detail-curve") ? point(choice, curve, base) : choice.of(base));
        if (!curve.isEmpty()) {
            throw new IllegalArgumentException("--detail-curve has no setting "
                    + curve.keySet().iterator().next()
                    + "; use deblur, iterations, smoothing, gain, octaves or threshold.");
        }
        return detailOf == null ? result : result.with(Sharpening::detailOf, detailOf);
    }

    /** A number of the sharpening, as it was typed or as before. */
    private static Object point(RecordChoice choice, Map<String, Double> typed, Sharpening before) {
        Double value = typed.remove(choice.key());
        if (value == null) {
            return choice.of(before);
        }
        return choice.type() == int.class ? (Object) value.intValue() : value;
    }
}
