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
import org.epochrome.colour.finish.Grading;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.session.product.WhiteReference;
import org.epochrome.text.Message;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How finished pictures look; none of it touches the linear cube. */
final class FinishOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--white", paramLabel = "photometric|disk|solar|none")
    private White white;

    @Option(names = "--white-gains", paramLabel = "R,G,B", converter = FinishTexts.Factors.class)
    private Gains gains;

    @Option(names = "--white-frame", paramLabel = "FILE")
    private List<Path> whiteFrames = new ArrayList<>();

    @Option(names = "--detail", paramLabel = "0..1")
    private Double detail;

    @Option(names = "--detail-scale", paramLabel = "PX|ARCSECarcsec", converter = FinishTexts.Scale.class)
    private UnaryOperator<Sharpening> detailScale;

    @Option(names = "--detail-curve", paramLabel = "KEY=VALUE", split = ",")
    private Map<String, Double> detailCurve = new LinkedHashMap<>();

    @Option(names = "--detail-of", paramLabel = "luminance|bands")
    private Sharpening.DetailOf detailOf;

    private final ChoiceOptions<Tone> tones = new ChoiceOptions<>(Tone.class);

    @Mixin
    final CommandSpec toneOptions = tones.spec();

    private final ChoiceOptions<Grading> gradings = new ChoiceOptions<>(Grading.class);

    @Mixin
    final CommandSpec gradingOptions = gradings.spec();

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
                    gradings.over(before.grading()),
                    framings.over(before.framing()));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private WhiteBalance balance(WhiteBalance before) {
        boolean measured = gains != null || !whiteFrames.isEmpty();
        if (measured && white != null && white != White.SOLAR) {
            throw new IllegalArgumentException(Message.text("option.whiteNotSolar"));
        }
        if (gains != null && !whiteFrames.isEmpty()) {
            throw new IllegalArgumentException(Message.text("option.whiteTwice"));
        }
        if (measured) {
            return WhiteBalance.solar(gains != null ? gains : WhiteReference.gains(whiteFrames));
        }
        if (white == White.SOLAR && before.solar().isEmpty()) {
            throw new IllegalArgumentException(Message.text("option.whiteSolar"));
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
            throw new IllegalArgumentException(
                    Message.text("option.detailCurve", curve.keySet().iterator().next()));
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
