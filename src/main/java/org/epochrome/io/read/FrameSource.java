package org.epochrome.io.read;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.identify.BandChoice;
import org.epochrome.io.identify.BandVocabulary;
import org.epochrome.io.identify.BandVocabulary.Meaning;
import org.epochrome.io.identify.FitsFilter;
import org.epochrome.io.identify.FitsTimes;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.NameTimes;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.Timing;
import org.epochrome.text.Message;

/**
 * Finds out band, times and body of frames. For each the first of these counts: the sheet, an option (for the band), the
 * FITS header, the file name. What stays open or ambiguous is refused, never guessed.
 */
public final class FrameSource {
    private static final Duration LONGEST_RECORDING = Duration.ofHours(24);

    private final NameClock clock;
    private final BandVocabulary words;
    private final ToDoubleFunction<Instant> taiMinusUtcSeconds;

    /**
     * A source of frames.
     *
     * @param clock the user's settings for bare instants
     * @param passbands the user's passbands by name of the band; a name that is not known makes a band of his own
     * @param taiMinusUtcSeconds the leap-second table: TAI - UTC in seconds at an instant of UTC
     */
    public FrameSource(NameClock clock, Map<String, Passband> passbands, ToDoubleFunction<Instant> taiMinusUtcSeconds) {
        this.clock = Objects.requireNonNull(clock);
        this.words = new BandVocabulary(passbands);
        this.taiMinusUtcSeconds = Objects.requireNonNull(taiMinusUtcSeconds);
    }

    /**
     * Reads the head of a file and finds out the rest, without decoding pixels.
     *
     * @throws FrameRefused if the file is no frame, or its band or times are ambiguous
     */
    public DatedFrame find(FrameRequest request) {
        FrameHead head = FrameReader.head(request.file());
        return new DatedFrame(request, head, band(request, head), timing(request, head), object(head));
    }

    /**
     * Finds out when a frame was recorded.
     *
     * @throws FrameRefused if it is missing or ambiguous
     */
    public Timing timing(FrameRequest request, FrameHead head) {
        Timing found = findTiming(request, head);
        if (found.span().duration().compareTo(LONGEST_RECORDING) > 0) {
            throw new FrameRefused(
                    head.file(),
                    Message.of("times.tooLong", found.span().duration().toHours(), found.source()));
        }
        return found;
    }

    private Timing findTiming(FrameRequest request, FrameHead head) {
        Optional<Timing> bySheet = request.row().flatMap(row -> row.span()
                .map(span -> new Timing(span, Message.of("source.given", row.source()), List.of())));
        if (bySheet.isPresent()) {
            return bySheet.get();
        }
        FitsTimes header = new FitsTimes(head.file(), head.header(), clock, taiMinusUtcSeconds);
        Optional<Timing> byHeader = header.find();
        if (byHeader.isPresent()) {
            return byHeader.get();
        }
        NameTimes.Stamp stamp = NameTimes.find(head.file(), clock.utcOffset())
                .orElseThrow(() -> new FrameRefused(head.file(), Message.of("times.none")));
        List<Message> notes = new ArrayList<>(header.notes());
        stamp.remark().ifPresent(notes::add);
        return clock.around(stamp.instant(), Message.of("source.fileName"), Optional.empty(), notes)
                .orElseThrow(() -> new FrameRefused(head.file(), Message.of("times.moment")));
    }

    /**
     * Finds out the band of a frame.
     *
     * @throws FrameRefused if it is missing or ambiguous
     */
    public BandChoice band(FrameRequest request, FrameHead head) {
        Optional<String> sheetWord = request.row().flatMap(SheetRow::band);
        if (sheetWord.isPresent()) {
            return ordered(head, sheetWord.get(), request.row().get().source());
        }
        if (request.band().isPresent()) {
            return ordered(head, request.band().get(), Message.text("source.option"));
        }
        List<Message> notes = new ArrayList<>();
        List<Meaning> inName = words.in(NameTimes.stem(head.file()));
        Optional<FitsFilter> filter = FitsFilter.in(head, words);
        if (filter.isPresent()) {
            Meaning meaning = filter.get().meaning();
            inName.stream()
                    .filter(m -> !m.name().equals(meaning.name()))
                    .findFirst()
                    .ifPresent(other -> notes.add(Message.of(
                            "band.headerAndName",
                            filter.get().keyword(),
                            meaning.name(),
                            other.name(),
                            filter.get().keyword())));
            return choice(
                    head, meaning, Message.text("source.header", filter.get().keyword()), notes);
        }
        if (inName.size() > 1) {
            throw new FrameRefused(
                    head.file(),
                    Message.of(
                            "band.twoInName",
                            inName.get(0).name(),
                            inName.get(1).name()));
        }
        if (inName.size() == 1) {
            return choice(head, inName.get(0), Message.text("source.fileName"), notes);
        }
        if (head.planeCount() == 3) {
            return choice(head, Meaning.COLOUR, Message.text("source.threePlanes"), notes);
        }
        throw new FrameRefused(head.file(), Message.of("band.none"));
    }

    private BandChoice ordered(FrameHead head, String word, String source) {
        Meaning meaning =
                words.of(word).orElseThrow(() -> new FrameRefused(head.file(), Message.of("band.unknown", word)));
        checkPlanes(head, meaning);
        return new BandChoice(planes(meaning), source, true, widthNote(meaning));
    }

    private BandChoice choice(FrameHead head, Meaning meaning, String source, List<Message> notes) {
        checkPlanes(head, meaning);
        List<Message> all = new ArrayList<>(notes);
        all.addAll(widthNote(meaning));
        return new BandChoice(planes(meaning), source, false, all);
    }

    private List<Band> planes(Meaning meaning) {
        return meaning.band().map(List::of).orElseGet(words::ofColourPlanes);
    }

    /** A remark on a passband of which only the wavelength is known. */
    private static List<Message> widthNote(Meaning meaning) {
        return meaning
                .band()
                .filter(b -> meaning.typicalWidth())
                .map(b -> Message.of(
                        "band.assumedWidth",
                        b.name(),
                        b.passband().fromNm(),
                        b.passband().toNm()))
                .stream()
                .toList();
    }

    private static void checkPlanes(FrameHead head, Meaning meaning) {
        if (meaning.band().isEmpty() && head.planeCount() != 3) {
            throw new FrameRefused(head.file(), Message.of("band.notColour"));
        }
    }

    /**
     * The body that the FITS keyword OBJECT names, also within more words or by its first three letters, or else TARGNAME.
     */
    public Optional<Body> object(FrameHead head) {
        return Stream.of("OBJECT", "TARGNAME")
                .flatMap(keyword -> head.header().text(keyword).stream())
                .flatMap(text -> body(text).stream())
                .findFirst();
    }

    /** A name in full counts before the first letters of one, which may be those of a month. */
    private static Optional<Body> body(String text) {
        List<String> words =
                Arrays.stream(text.toUpperCase(Locale.ROOT).split("[^A-Z]+")).toList();
        Set<Body> named =
                words.stream().flatMap(word -> Body.named(word).stream()).collect(Collectors.toSet());
        if (named.isEmpty()) {
            named = words.stream().flatMap(word -> abbreviated(word).stream()).collect(Collectors.toSet());
        }
        return named.size() == 1 ? Optional.of(named.iterator().next()) : Optional.empty();
    }

    private static Optional<Body> abbreviated(String word) {
        return Arrays.stream(Body.values())
                .filter(body -> word.length() == 3 && body.name().startsWith(word))
                .findFirst();
    }
}
