package org.epochrome.session.recipe;

import java.util.Optional;
import org.epochrome.atmosphere.Air;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.disk.AirFlattening;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Site;

/**
 * Where the telescope stood.
 *
 * @param site place of the observer, if known
 * @param air the air there, if known better than by the site's height
 */
public record Place(@Choice Optional<Site> site, @Choice Optional<Air> air) implements Choices<Place> {
    /** Nowhere that is known. */
    public static final Place UNKNOWN = new Place(Optional.empty(), Optional.empty());

    /** How refraction flattens the image of a body; not at all where the site is not known. */
    public AirFlattening flattening(Aspect aspect) {
        return site.map(s -> AirFlattening.of(aspect, airAt(s))).orElse(AirFlattening.NONE);
    }

    /** The air that is known, or that of the standard atmosphere at a site's height. */
    public Air airAt(Site where) {
        return air.orElseGet(() -> Air.standardAt(where.heightM()));
    }

    /** A site with its usual air. */
    public static Place at(Site site) {
        return new Place(Optional.of(site), Optional.empty());
    }
}
