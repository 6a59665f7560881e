package org.epochrome.io.identify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;

/**
 * Understands the words by which filters are called in headers, file names, sheets and options.
 *
 * @param passbands the user's passbands by name of the band, in any case; they may name bands of his own
 */
public record BandVocabulary(Map<String, Passband> passbands) {
    private static final Map<String, Band> WORDS = Map.ofEntries(
            Map.entry("RED", Band.R),
            Map.entry("GREEN", Band.G),
            Map.entry("BLUE", Band.B),
            Map.entry("LUM", Band.L),
            Map.entry("LUMINANCE", Band.L),
            Map.entry("INFRARED", Band.IR),
            Map.entry("ULTRAVIOLET", Band.UV),
            Map.entry("METHANE", Band.CH4));
    /** Anything but letters, digits and the point within a number. */
    private static final Pattern BETWEEN_WORDS = Pattern.compile("(?:[^\\p{L}\\p{Nd}.]|(?<!\\d)\\.|\\.(?!\\d))+");

    private static final List<String> COLOUR = List.of("RGB", "COLOUR", "COLOR", "OSC");
    /** The most words that the name of one filter has: H alpha 656 7nm. */
    private static final int MOST_WORDS = 4;

    public BandVocabulary {
        Map<String, Passband> byName = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        byName.putAll(passbands);
        passbands = byName;
    }

    /**
     * The meaning of a word: a band, or the three of a one-shot-colour camera.
     *
     * @param band empty for the three of a one-shot-colour camera
     * @param typicalWidth whether the word gives a wavelength but no width, so that the one of its kind was used
     */
    public record Meaning(Optional<Band> band, boolean typicalWidth) {
        public static final Meaning COLOUR = new Meaning(Optional.empty(), false);

        public String name() {
            return band.map(Band::name).orElse("colour");
        }
    }

    /**
     * The meaning of one word or filter name, if it is a known band, a band that the user gave a passband, a filter called by
     * its wavelength, or colour.
     */
    public Optional<Meaning> of(String word) {
        String wanted = word.strip().toUpperCase(Locale.ROOT);
        if (COLOUR.contains(wanted)) {
            return Optional.of(Meaning.COLOUR);
        }
        Optional<Band> known = Band.known(wanted).or(() -> Optional.ofNullable(WORDS.get(wanted)));
        if (known.isPresent()) {
            return known.map(band -> new Meaning(Optional.of(asTheUserHasIt(band)), false));
        }
        if (passbands.containsKey(wanted)) {
            return Optional.of(new Meaning(Optional.of(new Band(word.strip(), passbands.get(wanted))), false));
        }
        return FilterName.of(word)
                .map(filter -> new Meaning(
                        Optional.of(asTheUserHasIt(filter.band())),
                        !filter.widthStated()
                                && !passbands.containsKey(filter.band().name())));
    }

    /**
     * The different meanings of all the words in a text, words being runs of letters and digits. Words that name one filter
     * together count as one: Ha 7nm. More than one meaning means that the text is ambiguous.
     */
    public List<Meaning> in(String text) {
        Map<String, Meaning> found = new LinkedHashMap<>();
        String[] words = BETWEEN_WORDS.split(text, -1);
        for (int i = 0; i < words.length; ) {
            int used = 1;
            for (int count = Math.min(MOST_WORDS, words.length - i); count > 0; count--) {
                Optional<Meaning> meaning =
                        of(String.join(" ", Arrays.asList(words).subList(i, i + count)));
                if (meaning.isPresent()) {
                    found.putIfAbsent(meaning.get().name(), meaning.get());
                    used = count;
                    break;
                }
            }
            i += used;
        }
        return new ArrayList<>(found.values());
    }

    /** The bands of a one-shot-colour frame's planes, with the user's passbands. */
    public List<Band> ofColourPlanes() {
        return Stream.of(Band.R, Band.G, Band.B).map(this::asTheUserHasIt).toList();
    }

    private Band asTheUserHasIt(Band band) {
        return passbands.containsKey(band.name()) ? band.through(passbands.get(band.name())) : band;
    }
}
