package org.epochrome.session;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.epochrome.disk.PassbandWidth;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;

/** Whether the smears of the frames are as long as dispersion within the assumed passbands makes them. */
final class PassbandCheck {
    /** Widths that contradict the passband by so many standard errors are told. */
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
     */
    static List<String> warnings(List<Band> bands, List<PassbandWidth> widths) {
        Map<Band, double[]> sums = new LinkedHashMap<>();
        for (int i = 0; i < widths.size(); i++) {
            PassbandWidth width = widths.get(i);
            if (width.known()) {
                double weight = 1 / (width.sigma() * width.sigma());
                double[] sum = sums.computeIfAbsent(bands.get(i), b -> new double[2]);
                sum[0] += weight;
                sum[1] += weight * width.widening();
            }
        }
        List<String> warnings = new ArrayList<>();
        sums.forEach((band, sum) -> {
            double widening = sum[1] / sum[0];
            if (Math.abs(widening) > CONTRADICTS * Math.hypot(1 / Math.sqrt(sum[0]), WIDTH_DOUBT)) {
                warnings.add(sentence(band, band.passband().widened(widening)));
            }
        });
        return warnings;
    }

    private static String sentence(Band band, Passband looksLike) {
        return String.format(
                Locale.ROOT,
                "By its dispersion %s looks like %.0f-%.0f nm rather than %.0f-%.0f nm; give its passband with --passband.",
                band.name(),
                looksLike.fromNm(),
                looksLike.toNm(),
                band.passband().fromNm(),
                band.passband().toNm());
    }
}
