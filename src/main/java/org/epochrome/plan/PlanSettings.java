package org.epochrome.plan;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.epochrome.atmosphere.Air;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.plan.limit.AirAbove;
import org.epochrome.plan.limit.Resolution;
import org.epochrome.plan.limit.Seeing;
import org.epochrome.plan.limit.Telescope;
import org.epochrome.plan.night.Feature;
import org.epochrome.plan.night.Horizon;
import org.epochrome.plan.night.Night;
import org.epochrome.plan.night.SkyEvent;
import org.epochrome.text.Message;

/**
 * What a plan is made for.
 *
 * @param body the planet
 * @param site where
 * @param date local date on which the night begins
 * @param offset of the clock that times are shown by; empty: times in UTC, the date by mean solar time
 * @param horizon what obstructs the view
 * @param air at the site
 * @param telescope with its camera
 * @param seeing empty if unknown: then limits are those of diffraction alone
 * @param smearPart part of the resolution by which rotation may smear a recording, 0.05 to 2
 * @param bands to be recorded, at least one, each once
 * @param features whose passages over the central meridian are wanted
 * @param kinds of events that are wanted
 */
public record PlanSettings(
        Body body,
        Site site,
        LocalDate date,
        Optional<ZoneOffset> offset,
        Horizon horizon,
        Air air,
        Telescope telescope,
        Optional<Seeing> seeing,
        double smearPart,
        List<Band> bands,
        List<Feature> features,
        Set<SkyEvent.Kind> kinds) {
    /** Half of the resolution takes 10 % of the contrast of fine detail. */
    public static final double USUAL_SMEAR_PART = 0.5;

    public PlanSettings {
        bands = List.copyOf(bands);
        features = List.copyOf(features);
        kinds = Set.copyOf(kinds);
        if (bands.isEmpty() || bands.stream().map(Band::name).distinct().count() < bands.size()) {
            throw new IllegalArgumentException(Message.text("value.bands"));
        }
        if (!(smearPart >= 0.05 && smearPart <= 2)) {
            throw new IllegalArgumentException(Message.text("value.smearPart", smearPart));
        }
    }

    /** The clock that times are shown by. */
    public ZoneOffset clock() {
        return offset.orElse(ZoneOffset.UTC);
    }

    AirAbove airAbove() {
        return new AirAbove(body, air, new Resolution(telescope, seeing.orElse(Seeing.NONE)));
    }

    Night night() {
        return Night.of(body, site, date, offset.orElseGet(() -> Night.solarOffset(site)), horizon);
    }
}
