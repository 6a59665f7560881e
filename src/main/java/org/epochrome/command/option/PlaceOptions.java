package org.epochrome.command.option;

import java.util.Optional;
import org.epochrome.ephemeris.Site;
import picocli.CommandLine.Option;

/** Where the telescope stood. */
public final class PlaceOptions {
    @Option(
            names = "--site",
            paramLabel = "LAT,LON[,HEIGHT]",
            converter = SiteText.class,
            description =
                    "The observer's site: latitude (north positive) and longitude (east positive, west negative) in"
                            + " degrees, and height in metres, such as 46.2,8.5,480. It is needed to compute the"
                            + " planet's altitude and atmospheric dispersion.")
    private Site site;

    public Optional<Site> site() {
        return Optional.ofNullable(site);
    }
}
