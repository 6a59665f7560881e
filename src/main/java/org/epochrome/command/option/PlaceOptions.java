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
                    "The observer's place: latitude (north positive), longitude (east positive, west negative), both in"
                            + " degrees, and height in metres, such as 46.2,8.5,480. With it the planet's altitude and what"
                            + " the atmosphere does to the colours are known.")
    private Site site;

    public Optional<Site> site() {
        return Optional.ofNullable(site);
    }
}
