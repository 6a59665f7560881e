package org.epochrome.io.identify;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.identify.BandVocabulary.Meaning;
import org.epochrome.text.Message;

/**
 * The filter that a FITS header names.
 *
 * @param keyword where it was found
 * @param meaning what it stands for
 */
public record FitsFilter(String keyword, Meaning meaning) {
    private static final Set<String> NO_FILTER = Set.of("NONE", "NO FILTER", "UNKNOWN", "N/A", "-");
    /** Keywords of instruments with several filter wheels, of which some stand at an empty place. */
    private static final List<String> WHEELS = List.of("FILTNAM1", "FILTNAM2", "FILTER1", "FILTER2");
    /** A header whose pivot wavelength differs by more from the filter's name speaks of something else. */
    private static final double SAME_FILTER = 0.05;

    private static final double NM_PER_ANGSTROM = 0.1;

    /**
     * The filter that a header names.
     *
     * @throws FrameRefused if its FILTER is not understood
     */
    public static Optional<FitsFilter> in(FrameHead head, BandVocabulary words) {
        FitsKeywords header = head.header();
        Optional<String> filter = header.text("FILTER").filter(f -> !NO_FILTER.contains(f.toUpperCase(Locale.ROOT)));
        if (filter.isPresent()) {
            return Optional.of(new FitsFilter("FILTER", measured(meaning(head, filter.get(), words), header)));
        }
        for (String wheel : WHEELS) {
            Optional<Meaning> meaning = header.text(wheel).flatMap(words::of);
            if (meaning.isPresent()) {
                return Optional.of(new FitsFilter(wheel, measured(meaning.get(), header)));
            }
        }
        return Optional.empty();
    }

    private static Meaning meaning(FrameHead head, String filter, BandVocabulary words) {
        List<Meaning> meanings = words.of(filter).map(List::of).orElseGet(() -> words.in(filter));
        if (meanings.size() != 1) {
            throw new FrameRefused(
                    head.file(), Message.of(meanings.isEmpty() ? "band.unknownFilter" : "band.filters", filter));
        }
        return meanings.get(0);
    }

    /**
     * A filter of typical width with the passband that the header measures it by: the pivot wavelength PHOTPLAM and the rms
     * width PHOTBW, in angstroms (STScI's photometric keywords). A top hat of rms width w is sqrt(12) w wide.
     */
    private static Meaning measured(Meaning meaning, FitsKeywords header) {
        Optional<Double> pivotNm = header.number("PHOTPLAM").map(FitsFilter::nm);
        Optional<Double> rmsNm = header.number("PHOTBW").map(FitsFilter::nm);
        if (!meaning.typicalWidth() || pivotNm.isEmpty() || rmsNm.isEmpty()) {
            return meaning;
        }
        Band band = meaning.band().orElseThrow();
        double half = 0.5 * Math.sqrt(12) * rmsNm.get();
        double from = pivotNm.get() - half;
        double to = pivotNm.get() + half;
        boolean same = Math.abs(pivotNm.get() / band.passband().effectiveNm() - 1) < SAME_FILTER;
        return same && Passband.isValid(from, to)
                ? new Meaning(Optional.of(band.through(new Passband(from, to))), false)
                : meaning;
    }

    private static double nm(BigDecimal angstrom) {
        return angstrom.doubleValue() * NM_PER_ANGSTROM;
    }
}
