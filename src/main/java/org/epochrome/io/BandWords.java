package org.epochrome.io;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;

/**
 * Understands the words by which filters are called in headers, file names, sheets and options.
 *
 * @param passbands the user's passbands by name of the band, in any case; they may name bands of his own
 */
record BandWords(Map<String, Passband> passbands) {
    private static final Map<String, Band> WORDS = Map.ofEntries(
            Map.entry("RED", Band.R),
            Map.entry("GREEN", Band.G),
            Map.entry("BLUE", Band.B),
            Map.entry("LUM", Band.L),
            Map.entry("LUMINANCE", Band.L),
            Map.entry("INFRARED", Band.IR),
            Map.entry("ULTRAVIOLET", Band.UV),
            Map.entry("METHANE", Band.CH4));
    private static final List<String> COLOUR = List.of("RGB", "COLOUR", "COLOR", "OSC");
    /** An infrared long-pass filter called by its edge: IR807. */
    private static final Pattern INFRARED_EDGE = Pattern.compile("IR([678]\\d\\d)");

    BandWords {
        Map<String, Passband> byName = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        byName.putAll(passbands);
        passbands = byName;
    }

    /** What a word says: a band, or the three of a one-shot-colour camera. */
    record Meaning(Optional<Band> band) {
        static final Meaning COLOUR = new Meaning(Optional.empty());

        String name() {
            return band.map(Band::name).orElse("colour");
        }
    }

    /** The meaning of one word, if it is a known band, a band that the user gave a passband, or colour. */
    Optional<Meaning> of(String word) {
        String wanted = word.strip().toUpperCase(Locale.ROOT);
        if (COLOUR.contains(wanted)) {
            return Optional.of(Meaning.COLOUR);
        }
        Optional<Band> band = Band.known(wanted)
                .or(() -> Optional.ofNullable(WORDS.get(wanted)))
                .or(() -> longPass(wanted))
                .map(this::asTheUserHasIt);
        if (band.isEmpty() && passbands.containsKey(wanted)) {
            band = Optional.of(new Band(word.strip(), passbands.get(wanted)));
        }
        return band.map(b -> new Meaning(Optional.of(b)));
    }

    /**
     * The different meanings of all the words in a text, words being runs of letters and digits. More than one means that
     * the text is ambiguous.
     */
    List<Meaning> in(String text) {
        Map<String, Meaning> found = new LinkedHashMap<>();
        for (String word : text.split("[^\\p{Alnum}]+", -1)) {
            of(word).ifPresent(meaning -> found.putIfAbsent(meaning.name(), meaning));
        }
        return new ArrayList<>(found.values());
    }

    private Band asTheUserHasIt(Band band) {
        return passbands.containsKey(band.name()) ? band.through(passbands.get(band.name())) : band;
    }

    private static Optional<Band> longPass(String word) {
        Matcher matcher = INFRARED_EDGE.matcher(word);
        return matcher.matches()
                ? Optional.of(Band.IR.through(new Passband(
                        Integer.parseInt(matcher.group(1)), Band.IR.passband().toNm())))
                : Optional.empty();
    }
}
