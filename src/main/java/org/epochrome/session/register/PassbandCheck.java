package org.epochrome.session.register;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.epochrome.disk.PassbandWidth;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.text.Message;

/**
 * Whether smears and places of the frames are as dispersion makes them with the assumed passbands.
 */
public final class PassbandCheck {
    /** A passband is reported if the dispersion contradicts it by this many standard errors. */
    private static final double CONTRADICTS = 3;

    /**
     * Part of the width that no frame tells: air and spectrum are not quite as assumed. Found on rendered scenes at 21 degrees of
     * altitude, where colder air than the standard atmosphere alone makes 0.03.
     */
    private static final double WIDTH_DOUBT = 0.04;

    private PassbandCheck() {}

    /**
     * A sentence for each band whose passband the frames contradict.
     *
     * @param bands of the frames
     * @param widths what their smears show, in the same order
     * @param middles what their places show, in the same order
     */
    public static List<Message> warnings(List<Band> bands, List<PassbandWidth> widths, List<PassbandMiddle> middles) {
        Map<Band, Estimate> width = new LinkedHashMap<>();
        Map<Band, Estimate> middle = new LinkedHashMap<>();
        for (int i = 0; i < bands.size(); i++) {
            Band band = bands.get(i);
            width.computeIfAbsent(band, b -> new Estimate())
                    .add(widths.get(i).widening(), widths.get(i).sigma());
            middle.computeIfAbsent(band, b -> new Estimate())
                    .add(middles.get(i).offsetNm(), middles.get(i).sigmaNm());
        }
        List<Message> warnings = new ArrayList<>();
        width.forEach((band, estimate) -> {
            Passband looksLike = band.passband();
            if (estimate.contradicts(WIDTH_DOUBT)) {
                looksLike = looksLike.widened(estimate.mean());
            }
            if (middle.get(band).contradicts(PredictedDispersion.MIDDLE_DOUBT_NM)) {
                looksLike = looksLike.movedBy(middle.get(band).mean());
            }
            if (!looksLike.equals(band.passband())) {
                warnings.add(sentence(band, looksLike));
            }
        });
        return warnings;
    }

    /** A weighted mean over frames; those without a measurement have an infinite standard error. */
    private static final class Estimate {
        private double weights;
        private double sum;

        void add(double value, double sigma) {
            weights += 1 / (sigma * sigma);
            sum += value / (sigma * sigma);
        }

        double mean() {
            return sum / weights;
        }

        /** Whether it is further from 0 than its standard error and a systematic error common to all frames allow. */
        boolean contradicts(double doubt) {
            return weights > 0 && Math.abs(mean()) > CONTRADICTS * Math.hypot(1 / Math.sqrt(weights), doubt);
        }
    }

    private static Message sentence(Band band, Passband looksLike) {
        return Message.of(
                "passband.other",
                band.name(),
                looksLike.fromNm(),
                looksLike.toNm(),
                band.passband().fromNm(),
                band.passband().toNm());
    }
}
