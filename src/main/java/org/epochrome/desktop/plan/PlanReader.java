package org.epochrome.desktop.plan;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.epochrome.atmosphere.Air;
import org.epochrome.desktop.panel.TypedValues;
import org.epochrome.desktop.state.PlanInputs;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.plan.PlanSettings;
import org.epochrome.plan.limit.Seeing;
import org.epochrome.plan.limit.Telescope;
import org.epochrome.plan.night.Feature;
import org.epochrome.plan.night.Horizon;
import org.epochrome.plan.night.SkyEvent;

/** Reads what is typed on the page that plans a night. */
final class PlanReader {
    private PlanReader() {}

    /**
     * What a plan is made for.
     *
     * @param date on which the night begins
     * @throws IllegalArgumentException with a sentence that names the field if something is missing or wrong
     */
    static PlanSettings settings(PlanInputs in, LocalDate date) {
        Body body = read(Texts.of("plan.planet"), in.planet(), PlanReader::body);
        Site site = new Site(
                read(Texts.of("plan.latitude"), in.latitude(), TypedValues::latitude),
                read(Texts.of("plan.longitude"), in.longitude(), TypedValues::longitude),
                in.height().isBlank() ? 0 : read(Texts.of("plan.height"), in.height(), Numbers::number));
        return new PlanSettings(
                body,
                site,
                date,
                in.offset().isBlank()
                        ? Optional.empty()
                        : Optional.of(read(Texts.of("plan.offset"), in.offset(), TypedValues::offset)),
                in.horizon().isBlank()
                        ? Horizon.level(0)
                        : read(Texts.of("plan.horizon"), in.horizon(), h -> Horizon.level(Numbers.number(h))),
                Air.standardAt(site.heightM()),
                telescope(in),
                read(Texts.of("plan.seeing"), in.seeing(), Numbers::optional).stream()
                        .mapToObj(Seeing::new)
                        .findFirst(),
                PlanSettings.USUAL_SMEAR_PART,
                read(Texts.of("plan.bands"), in.bands(), PlanReader::bands),
                read(Texts.of("plan.feature"), in.feature(), text -> features(text, body)),
                EnumSet.allOf(SkyEvent.Kind.class));
    }

    private static Telescope telescope(PlanInputs in) {
        return new Telescope(
                read(Texts.of("plan.aperture"), in.aperture(), Numbers::number),
                read(Texts.of("plan.obstruction"), in.obstruction(), Numbers::optional)
                                .orElse(0)
                        / 100,
                read(Texts.of("plan.focalLength"), in.focalLength(), Numbers::number),
                read(Texts.of("plan.pixel"), in.pixel(), Numbers::number));
    }

    private static Body body(String name) {
        return Body.named(name).orElseThrow(() -> new IllegalArgumentException(Texts.of("plan.planet.wrong")));
    }

    private static List<Feature> features(String text, Body body) {
        return text.isBlank() ? List.of() : List.of(Feature.parse(text, body));
    }

    private static List<Band> bands(String text) {
        return Arrays.stream(text.split("[,\\s]+"))
                .filter(name -> !name.isBlank())
                .map(name -> Band.known(name.toUpperCase(Locale.ROOT))
                        .orElseThrow(() -> new IllegalArgumentException(Texts.of("plan.bands.wrong", name))))
                .toList();
    }

    private static <T> T read(String title, String text, Function<String, T> reading) {
        try {
            return reading.apply(text.strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    text.isBlank() ? Texts.of("plan.missing", title) : Texts.of("plan.notANumber", title), e);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    text.isBlank() ? Texts.of("plan.missing", title) : Texts.of("plan.wrong", title, e.getMessage()),
                    e);
        }
    }
}
