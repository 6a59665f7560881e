package org.epochrome.session;

import java.util.Optional;
import org.epochrome.atmosphere.Air;
import org.epochrome.ephemeris.Site;

/**
 * Where the telescope stood.
 *
 * @param site place of the observer, if known
 * @param air the air there, if known better than by the site's height
 */
public record Place(Optional<Site> site, Optional<Air> air) {
    /** Nowhere that is known. */
    public static final Place UNKNOWN = new Place(Optional.empty(), Optional.empty());

    /** A site with its usual air. */
    public static Place at(Site site) {
        return new Place(Optional.of(site), Optional.empty());
    }
}
