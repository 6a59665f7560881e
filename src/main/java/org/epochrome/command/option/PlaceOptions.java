package org.epochrome.command.option;

import java.util.Optional;
import org.epochrome.ephemeris.Site;
import picocli.CommandLine.Option;

/** Where the telescope stood. */
public final class PlaceOptions {
    @Option(names = "--site", paramLabel = "LAT,LON[,HEIGHT]", converter = SiteText.class)
    private Site site;

    public Optional<Site> site() {
        return Optional.ofNullable(site);
    }
}
