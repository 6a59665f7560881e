package org.epochrome.command;

import java.util.Optional;
import org.epochrome.ephemeris.Site;
import picocli.CommandLine.Option;

/** Where the telescope stood. */
final class PlaceOptions {
    @Option(
            names = "--site",
            paramLabel = "LAT,LON[,HEIGHT]",
            converter = SiteText.class,
            description =
                    "The observer's place: degrees, east positive, metres. With it altitude, parallactic angle and"
                            + " the atmosphere's dispersion are known.")
    private Site site;

    Optional<Site> site() {
        return Optional.ofNullable(site);
    }
}
